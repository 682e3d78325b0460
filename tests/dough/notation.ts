import {
  type Formula,
  finalDoughOf,
  type Line,
  type Meaning,
  newId,
  type Stage,
  usualFlourWeight,
} from '../../src/dough/document/formula.js'

let count = 0

/**
 * A formula in a few lines of text: a stage is a line ending in `:`, a line is `ingredient = amount`.
 * The last stage is the final dough.
 */
export function formulaOf(
  text: string,
  fields: { flourWeight?: number; meanings?: readonly Meaning[] } = {},
): Formula {
  const stages: { id: string; name: string; lines: Line[] }[] = []
  for (const row of text
    .split('\n')
    .map(r => r.trim())
    .filter(Boolean)) {
    if (row.endsWith(':')) {
      stages.push({ id: `stage${count++}`, name: row.slice(0, -1), lines: [] })
      continue
    }
    const [ingredient, amount] = [
      row.slice(0, row.indexOf('=')).trim(),
      row.slice(row.indexOf('=') + 1).trim(),
    ]
    stages.at(-1)!.lines.push({ id: `line${count++}`, ingredient, amount, note: '' })
  }
  return {
    id: newId(),
    name: 'Test',
    note: '',
    flourWeight: fields.flourWeight ?? usualFlourWeight,
    stages,
    meanings: fields.meanings ?? [],
    keptSettings: [],
  }
}

/** The same formula with some fields of its stages changed, by stage name. */
export function withStages(formula: Formula, change: (stage: Stage) => Stage): Formula {
  return { ...formula, stages: formula.stages.map(change) }
}

export const lineOf = (formula: Formula, stage: string, ingredient: string): Line =>
  (formula.stages.find(s => s.name === stage) ?? finalDoughOf(formula)).lines.find(
    l => l.ingredient === ingredient,
  )!

/** A mill loaf in grams with one levain build, some of it left over. */
export const workedCheck = `
  Levain:
    ripe starter = 40 g
    bread flour = 100 g
    water = 80 g
  Final dough:
    bread flour = 820 g
    wholemeal spelt = 180 g
    water = 690 g
    salt = 21 g
    levain = 210 g`

import { parse } from '../../engine/index.js'
import { usualFlourWeight } from '../document/formula.js'
import { cellOf } from '../outline/names.js'
import { type Count, ingredientKey, type LinePlan, type Outline } from '../outline/outline.js'
import type { CellWriter } from './cell-writer.js'

const expressions = new Map(
  ['part / flour', '(part - soaked) / flour', 'part / lines', 'part'].map(
    text => [text, parse(text, { percentOf: null })] as const,
  ),
)

/** What the final dough's flour weighs while nothing else says it. */
export function writeFlourWeight(out: CellWriter, { formula }: Outline): void {
  out.input(cellOf.flourWeight, 'flour weight', formula.flourWeight || usualFlourWeight)
}

/** The readings of a dough, each an expression over its totals, and the whole-dough percentages. */
export function writeReadings(out: CellWriter, outline: Outline): void {
  const { final } = outline
  const total = (count: Count) => cellOf.count(final, count)
  const reading = (name: string, words: string, text: string, part: string) => {
    const of: Readonly<Record<string, string>> = {
      part,
      soaked: total('soaked'),
      flour: total('flour'),
      lines: cellOf.lines(final, 'flour'),
    }
    out.belonging({ of: 'reading', id: name }, () =>
      out.expression(cellOf.reading(name), words, expressions.get(text)!, n => of[n]!),
    )
  }
  reading('trueHydration', 'true hydration', 'part / flour', total('water'))
  reading('moistureHydration', 'moisture hydration', 'part / flour', total('moisture'))
  reading('hydrationWithoutSoakers', 'hydration without soakers', '(part - soaked) / flour', total('water'))
  reading('salt', 'salt', 'part / flour', total('salt'))
  reading('prefermentedFlour', 'prefermented flour', 'part / flour', total('prefermented'))
  for (const count of ['fat', 'sugar', 'egg', 'milk'] as const)
    reading(count, count, 'part / flour', total(count))
  reading('listedHydration', 'listed hydration', 'part / lines', cellOf.lines(final, 'water'))
  reading('levainOnFlour', 'levain on flour', 'part / lines', cellOf.lines(final, 'levain'))
  reading('totalFlour', 'total flour', 'part', total('flour'))
  reading('totalWater', 'total water', 'part', total('water'))
  reading('doughWeight', 'dough weight', 'part', cellOf.stageWeight(final))
  for (const [last, lines] of linesByIngredient(outline)) {
    const of = [total('flour'), ...lines.flatMap(l => [cellOf.weight(l), cellOf.carried(l.stage)])]
    const words = `${last.line.ingredient} in the whole dough`
    out.belonging({ of: 'line', id: last.line.id }, () =>
      out.compute(cellOf.wholeDough(last), words, 'whole', of, ([flour, ...parts]) => {
        let weight = 0
        for (let i = 0; i < parts.length; i += 2) weight += parts[i]! * parts[i + 1]!
        return weight / flour!
      }),
    )
  }
}

/** The lines of each ingredient through all stages, by the last of them. */
function linesByIngredient(outline: Outline): Map<LinePlan, LinePlan[]> {
  const groups = new Map<string, LinePlan[]>()
  for (const stage of outline.stages) {
    for (const line of stage.lines) {
      if (line.source || !line.line.ingredient) continue
      const lines = groups.get(ingredientKey(line))
      if (lines) lines.push(line)
      else groups.set(ingredientKey(line), [line])
    }
  }
  return new Map([...groups.values()].map(lines => [lines.at(-1)!, lines]))
}

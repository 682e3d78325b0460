import type { Formula } from '../../src/dough/document/formula.js'
import type { Transaction, Workbook } from '../../src/dough/document/workbook.js'

/** A formula with these lines in its final dough: `loaf('Miche', 'flour 100%', 'salt 2%')`. Its id is its name. */
export function loaf(name: string, ...lines: readonly string[]): Formula {
  const stage = {
    id: `${name}-dough`,
    name: 'Final dough',
    lines: lines.map(text => {
      const [ingredient = '', amount = ''] = text.split(' ')
      return { id: `${name}-${ingredient}`, ingredient, amount, note: '' }
    }),
  }
  return { id: name, name, note: '', flourWeight: 1000, stages: [stage], meanings: [], keptSettings: [] }
}

export const workbookOf = (...formulas: readonly Formula[]): Workbook => ({
  name: 'Bakehouse',
  formulas,
  larder: [],
})

export const put = (formula: Formula): Transaction => ({
  label: `Change ${formula.name}`,
  changes: [{ of: 'formula', id: formula.id, value: formula }],
})

export const withFormula = (workbook: Workbook, formula: Formula): Workbook => {
  const known = workbook.formulas.some(f => f.id === formula.id)
  const formulas = known
    ? workbook.formulas.map(f => (f.id === formula.id ? formula : f))
    : [...workbook.formulas, formula]
  return { ...workbook, formulas }
}

/** `Miche flour 100% salt 2%; Baguette flour 100%`: the workbook in words, for comparing. */
export const inWords = (workbook: Workbook): string =>
  workbook.formulas
    .map(f => [f.name, ...f.stages.flatMap(s => s.lines.map(l => `${l.ingredient} ${l.amount}`))].join(' '))
    .join('; ')

import type { Formula } from '../../src/dough/document/formula.js'
import type { NumberStyle } from '../base/numbers.js'
import type { Read } from './intake.js'
import { sumWords } from './words.js'

/** What was understood, in a few words over it all; `formulas` as they would be added. */
export function sumInWords({ arrived }: Read, formulas: readonly Formula[], numbers: NumberStyle): string {
  if (arrived.as !== 'workbook') {
    const lines = formulas.flatMap(f => f.stages).reduce((sum, stage) => sum + stage.lines.length, 0)
    return formulas.length ? sumWords.formulas(formulas.length, lines) : sumWords.noFormula
  }
  if (!arrived.workbook) return sumWords.noWorkbook
  const { name, formulas: all, larder, days = [], bakes = [] } = arrived.workbook
  const saved = new Date(arrived.savedAt ?? '')
  const words = sumWords.workbook(name, all.length, larder.length, days.length, bakes.length)
  return Number.isNaN(saved.getTime())
    ? words
    : sumWords.saved(
        words,
        saved.toLocaleString(numbers.language, { dateStyle: 'medium', timeStyle: 'short' }),
      )
}

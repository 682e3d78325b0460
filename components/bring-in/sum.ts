import type { Formula } from '../../src/dough/document/formula.js'
import type { NumberStyle } from '../base/numbers.js'
import type { Read } from './intake.js'
import { counted } from './plan/bring-in-plan.js'

/** What was understood, in a few words over it all; `formulas` as they would be added. */
export function sumInWords({ arrived }: Read, formulas: readonly Formula[], numbers: NumberStyle): string {
  if (arrived.as !== 'workbook') {
    const lines = formulas.flatMap(f => f.stages).reduce((sum, stage) => sum + stage.lines.length, 0)
    return formulas.length
      ? `${counted(formulas.length, 'formula')} and ${counted(lines, 'line')} understood`
      : 'No formula understood'
  }
  if (!arrived.workbook) return 'No workbook understood'
  const { name, larder } = arrived.workbook
  const saved = new Date(arrived.savedAt ?? '')
  const when = Number.isNaN(saved.getTime())
    ? ''
    : `, saved ${saved.toLocaleString(numbers.language, { dateStyle: 'medium', timeStyle: 'short' })}`
  const holds = [
    counted(arrived.workbook.formulas.length, 'formula'),
    ...(larder.length > 0 ? [`${counted(larder.length, 'ingredient')} of the larder`] : []),
  ]
  return `${name || 'A workbook'}: ${holds.join(' and ')}${when}`
}

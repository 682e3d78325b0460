import { nameKey } from '../dough/formula.js'
import { isStageSetting } from './columns.js'
import { type DecimalMark, type PlainNumbers, plainNumbers } from './decimals.js'
import { type FormulaDraft, markBase, type StageDraft } from './draft.js'
import { holdsNumbers, isBlank, quoted, type Row } from './row.js'

interface Aside {
  readonly numbers?: PlainNumbers
  readonly remark?: string // to follow `Row 5 `
}

/** A setting of a stage that has to be there for it. */
export interface StageSetting extends Aside {
  readonly kind: 'ferments' | 'base'
  readonly ingredient?: string
  /** False when the stage has nothing this could be said of. `which` is the line to mark as base. */
  use(stage: StageDraft, which: 'last' | 'first'): boolean
}

/** What a row that sets something does, or why it cannot (to follow `Row 5 `). */
export type Setting =
  | { readonly kind: 'refused'; readonly why: string }
  | StageSetting
  | (Aside & { readonly kind: 'formula'; use(formula: FormulaDraft): void })

const gramsIn: Readonly<Record<string, number>> = { g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 }
const yesOrNo: Readonly<Record<string, boolean>> = { yes: true, no: false, true: true, false: false }
const refused = (why: string): Setting => ({ kind: 'refused', why })

function ferments(row: Row, stage: string): Setting {
  const value = yesOrNo[nameKey(row.amount)]
  if (value === undefined)
    return refused(`says ${quoted(row.amount)} where only yes or no tells whether ${stage} ferments.`)
  return {
    kind: 'ferments',
    use(there) {
      there.ferments = value
      return true
    },
  }
}

function flourWeight(row: Row, mark: DecimalMark): Setting {
  const numbers = plainNumbers(row.amount, mark)
  const parts = /^\s*([\d.]+(?:e[+-]?\d+)?)\s*(g|kg|oz|lb)?\s*$/i.exec(numbers.text)
  const grams = Number(parts?.[1]) * gramsIn[parts?.[2]?.toLowerCase() ?? 'g']!
  if (!(grams > 0 && grams < Infinity))
    return refused(`gives ${quoted(row.amount)} as flour weight. Write a weight, like 1000 g.`)
  return {
    kind: 'formula',
    numbers,
    use(formula) {
      formula.flourWeight = grams
    },
  }
}

function ownNote(row: Row): Setting {
  const note = row.amount === '' ? row.note : row.amount
  if (note === '') return refused('is a note without words. Write it in the amount column.')
  return {
    kind: 'formula',
    use(formula) {
      formula.note = note
    },
  }
}

function kept({ setting, amount, note }: Row, stage: string, mark: DecimalMark): Setting {
  const numbers = holdsNumbers(stage, setting) ? plainNumbers(amount, mark) : undefined
  return {
    kind: 'formula',
    ...(numbers ? { numbers } : { remark: `sets ${quoted(setting)}, which is not known here. It is kept.` }),
    use(formula) {
      formula.keptSettings.push({ stage, setting, amount: numbers?.text ?? amount, note })
    },
  }
}

/** What a setting row says. `stage` is the row's own, or that of a file with only one. */
export function readSetting(row: Row, stage: string, mark: DecimalMark): Setting {
  const key = nameKey(row.setting)
  const named = key === 'base' && isBlank(row.amount) ? row.ingredient : row.amount // a base may stand in either
  if (!isBlank(row.ingredient) && named !== row.ingredient)
    return refused('has both an ingredient and a setting and was left out. Put them in two rows.')
  if (isStageSetting(key) && isBlank(stage))
    return refused(`sets ${quoted(row.setting)} without saying for which stage. Name the stage.`)
  if (key === 'base')
    return isBlank(named)
      ? refused('marks no ingredient as base. Name one in the amount column.')
      : aside(row, { kind: 'base', ingredient: named, use: (there, which) => markBase(there, named, which) })
  if (key === 'ferments') return aside(row, ferments(row, stage))
  if (key === 'flour weight')
    return isBlank(stage)
      ? aside(row, flourWeight(row, mark))
      : refused('sets the flour weight of a stage. It is the formula’s own: leave the stage empty.')
  if (key === 'note' && isBlank(stage)) return aside(row, ownNote(row))
  return kept(row, stage, mark)
}

/** Settings that are used have no room for a note beside their value. */
function aside(row: Row, setting: Setting): Setting {
  return setting.kind === 'refused' || isBlank(row.note) || isBlank(row.amount)
    ? setting
    : { ...setting, remark: `has a note on ${quoted(row.setting)}, which is not kept.` }
}

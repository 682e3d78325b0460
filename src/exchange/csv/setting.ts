import { type KeptSetting, nameKey } from '../../dough/document/formula.js'
import { isWeightReading } from '../../dough/document/words.js'
import { readMake } from '../values/batch-text.js'
import type { DecimalMark, PlainNumbers } from '../values/decimals.js'
import { heldBy, readHoldValue } from '../values/hold-text.js'
import { readGrams, readPercent } from '../values/written-weights.js'
import { isFormulaSetting, isHoldSetting, isJottingSetting, isStageSetting } from './columns.js'
import { type FormulaDraft, markBase, type StageDraft } from './formula-draft.js'
import { holdsNumbers, isBlank, quoted, type Row, settingNumbers } from './row.js'

interface Aside {
  readonly numbers?: PlainNumbers
  readonly remark?: string // to follow `Row 5 `
  readonly kept?: KeptSetting // what is kept, with a warning, where it turns out that it cannot be used
}

/** A setting of a stage that has to be there for it. */
export interface StageSetting extends Aside {
  readonly kind: 'stage' | 'base'
  readonly ingredient?: string
  /** False when the stage has nothing this could be said of. `which` is the line to mark as base. */
  use(stage: StageDraft, which: 'last' | 'first'): boolean
}

/** A setting that speaks of what is known only when all rows are read. Says why it cannot be. */
export interface FinalSetting extends Aside {
  readonly kind: 'final'
  use(formula: FormulaDraft): string | undefined
}

/** What a row that sets something does, or why it cannot (to follow `Row 5 `). */
export type Setting =
  | { readonly kind: 'refused'; readonly why: string }
  | StageSetting
  | FinalSetting
  | (Aside & { readonly kind: 'formula'; use(formula: FormulaDraft): void })
  | (Aside & { readonly kind: 'kept'; readonly kept: KeptSetting; readonly why?: string })

const yesOrNo: Readonly<Record<string, boolean>> = { yes: true, no: false, true: true, false: false }
const refused = (why: string): Setting => ({ kind: 'refused', why })

/** A row that sets something, with its value in plain numbers where it has some. */
class SettingRow {
  readonly key: string
  readonly numbers: PlainNumbers | undefined

  constructor(
    readonly row: Row,
    readonly stage: string, // the row's own, or that of a file with only one
    mark: DecimalMark,
  ) {
    this.key = nameKey(row.setting)
    this.numbers = holdsNumbers(stage, row.setting)
      ? settingNumbers(row.setting, row.amount, mark)
      : undefined
  }

  get text(): string {
    return this.numbers?.text ?? this.row.amount
  }

  get kept(): KeptSetting {
    const { stage, row, text } = this
    const { setting, note, ingredient } = row
    return { stage, setting, amount: text, note, ...(isBlank(ingredient) ? {} : { ingredient }) }
  }

  get aside(): Aside {
    return this.numbers ? { numbers: this.numbers } : {}
  }

  /** Kept as it is, with a warning that says what to write. */
  keep(why: string): Setting {
    return { kind: 'kept', kept: this.kept, why, ...this.aside }
  }

  ferments(): Setting {
    const value = yesOrNo[nameKey(this.text)]
    if (value === undefined)
      return refused(`says ${quoted(this.text)} where only yes or no tells whether ${this.stage} ferments.`)
    return this.#ofStage({ ferments: value })
  }

  keepBack(): Setting {
    const keepBack = nameKey(this.text) === 'seed' ? 'seed' : readGrams(this.text)
    if (keepBack === undefined || keepBack === Infinity)
      return this.keep(`gives ${quoted(this.row.amount)} as keep-back. Write a weight, like 50 g, or seed.`)
    return { ...this.#ofStage({ keepBack }), kept: this.kept }
  }

  loss(use: 'stage' | 'loss' | 'bakeLoss'): Setting {
    const loss = readPercent(this.text)
    if (loss === undefined || !(loss < 1))
      return this.keep(
        `gives ${quoted(this.row.amount)} as ${this.key}. Write a percentage from 0 to below 100, like 2%.`,
      )
    if (use !== 'stage') return this.#ofFormula({ [use]: loss })
    return { ...this.#ofStage({ loss }), kept: this.kept }
  }

  flourWeight(): Setting {
    const grams = readGrams(this.text) ?? 0
    if (!(grams > 0 && grams < Infinity))
      return refused(`gives ${quoted(this.row.amount)} as flour weight. Write a weight, like 1000 g.`)
    return this.#ofFormula({ flourWeight: grams })
  }

  make(): Setting {
    const batch = readMake(this.text)
    if (!batch)
      return this.keep(
        `says to make ${quoted(this.row.amount)}, which is not understood. Write 6 × 900 g, 5400 g dough, 1000 g flour, all of 310 g Levain, or 2.5 times.`,
      )
    return this.#ofFormula({ make: batch })
  }

  hold(): Setting {
    const { row, key, text } = this
    const reading = heldBy(key)
    if (!reading)
      return this.keep(`holds ${quoted(key.slice('hold '.length))}, which is no reading known here.`)
    const value = readHoldValue(reading, text)
    if (value === undefined) {
      const like = isWeightReading(reading) ? 'a weight, like 2000 g' : 'a percentage, like 75%'
      return this.keep(`has ${quoted(row.amount)} for ${quoted(row.setting)}. Write ${like}.`)
    }
    if (isBlank(row.ingredient))
      return this.keep(`does not say which line of the final dough gives. Name its ingredient.`)
    const use = (formula: FormulaDraft) => formula.hold(reading, value, row.ingredient)
    return { kind: 'final', use, kept: this.kept, ...this.aside }
  }

  jotting(): Setting {
    const { text } = this
    const name = this.row.setting.trim().replace(/^jotting\s+/i, '')
    const use = (formula: FormulaDraft) => formula.jot(name, text)
    return { kind: 'final', use, kept: this.kept, ...this.aside }
  }

  note(): Setting {
    const note = this.text === '' ? this.row.note : this.text
    if (note === '') return refused('is a note without words. Write it in the amount column.')
    return this.#ofFormula({ note })
  }

  base(): Setting {
    const { amount, ingredient } = this.row
    const named = isBlank(amount) ? ingredient : amount // it may stand in either
    if (isBlank(named)) return refused('marks no ingredient as base. Name one in the amount column.')
    return { kind: 'base', ingredient: named, use: (there, which) => markBase(there, named, which) }
  }

  unknown(): Setting {
    const remark = `sets ${quoted(this.row.setting)}, which is not known here. It is kept.`
    return { kind: 'kept', kept: this.kept, ...(this.numbers ? this.aside : { remark }) }
  }

  #ofStage(fields: Partial<Pick<StageDraft, 'ferments' | 'keepBack' | 'loss'>>): StageSetting {
    return {
      kind: 'stage',
      ...this.aside,
      use(there) {
        Object.assign(there, fields)
        return true
      },
    }
  }

  #ofFormula(
    fields: Partial<Pick<FormulaDraft, 'note' | 'flourWeight' | 'make' | 'loss' | 'bakeLoss'>>,
  ): Setting {
    return { kind: 'formula', use: formula => void Object.assign(formula, fields), ...this.aside }
  }
}

function read(said: SettingRow): Setting {
  const { key, stage, row } = said
  const mayName =
    isHoldSetting(key) || (key === 'base' && (isBlank(row.amount) || row.amount === row.ingredient))
  if (!isBlank(row.ingredient) && !mayName)
    return refused('has both an ingredient and a setting and was left out. Put them in two rows.')
  if (isStageSetting(key) && !isFormulaSetting(key) && isBlank(stage))
    return refused(`sets ${quoted(row.setting)} without saying for which stage. Name the stage.`)
  if (!isBlank(stage)) {
    if (key === 'base') return said.base()
    if (key === 'ferments') return said.ferments()
    if (key === 'keep-back') return said.keepBack()
    if (key === 'loss') return said.loss('stage')
    if (key === 'flour weight')
      return refused('sets the flour weight of a stage. It is the formula’s own: leave the stage empty.')
    if (key !== 'note' && isFormulaSetting(key))
      return said.keep(
        `sets ${quoted(row.setting)} of a stage. It is the formula’s own: leave the stage empty.`,
      )
    return said.unknown()
  }
  if (key === 'flour weight') return said.flourWeight()
  if (key === 'note') return said.note()
  if (key === 'make') return said.make()
  if (key === 'loss') return said.loss('loss')
  if (key === 'bake loss') return said.loss('bakeLoss')
  if (isJottingSetting(key)) return said.jotting()
  return isHoldSetting(key) ? said.hold() : said.unknown()
}

/** What a setting row says. `stage` is the row's own, or that of a file with only one. */
export function readSetting(row: Row, stage: string, mark: DecimalMark): Setting {
  const setting = read(new SettingRow(row, stage, mark))
  if (setting.kind === 'refused' || setting.kind === 'kept') return setting
  // Settings that are used have no room for a note beside their value.
  if (isBlank(row.note) || isBlank(row.amount)) return setting
  return { ...setting, remark: `has a note on ${quoted(row.setting)}, which is not kept.` }
}

import { type KeptSetting, nameKey, newId } from '../../dough/document/formula.js'
import { isWeightReading } from '../../dough/document/words.js'
import { readMake } from '../values/batch-text.js'
import type { DecimalMark, PlainNumbers } from '../values/decimals.js'
import { heldBy, readHoldValue } from '../values/hold-text.js'
import { readGrams, readPercent } from '../values/written-weights.js'
import { isFormulaSetting, isHoldSetting, isJottingSetting, isStageSetting } from './columns.js'
import { type FormulaDraft, markBase, type StageDraft } from './formula-draft.js'
import { holdsNumbers, isBlank, type Row, settingNumbers } from './row.js'
import type { SettingDiagnostic } from './words.js'

interface Aside {
  readonly numbers?: PlainNumbers
  readonly remark?: SettingDiagnostic
  readonly kept?: KeptSetting // what is kept, with a warning, where it turns out that it cannot be used
}

/** A setting of a stage that has to be there for it. */
export interface StageSetting extends Aside {
  readonly kind: 'stage' | 'base'
  readonly ingredient?: string
  readonly many?: true // a stage may have several
  /** False when the stage has nothing this could be said of. `which` is the line to mark as base. */
  use(stage: StageDraft, which: 'last' | 'first'): boolean
}

/** A setting that speaks of what is known only when all rows are read. Says why it cannot be. */
export interface FinalSetting extends Aside {
  readonly kind: 'final'
  use(formula: FormulaDraft): SettingDiagnostic | undefined
}

/** What a row that sets something does, or why it cannot. */
export type Setting =
  | { readonly kind: 'refused'; readonly why: SettingDiagnostic }
  | StageSetting
  | FinalSetting
  | (Aside & { readonly kind: 'formula'; use(formula: FormulaDraft): void })
  | (Aside & {
      readonly kind: 'kept'
      readonly kept: KeptSetting
      readonly why?: SettingDiagnostic & { readonly severity: 'warning' | 'remark' }
    })

const yesOrNo: Readonly<Record<string, boolean>> = { yes: true, no: false, true: true, false: false }
const refused = (why: SettingDiagnostic): Setting => ({ kind: 'refused', why })

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
  keep(why: SettingDiagnostic): Setting {
    return { kind: 'kept', kept: this.kept, why: { ...why, severity: 'warning' }, ...this.aside }
  }

  ferments(): Setting {
    const value = yesOrNo[nameKey(this.text)]
    if (value === undefined)
      return refused({ code: 'fermentsNotUnderstood', amount: this.text, stage: this.stage })
    return this.#ofStage({ ferments: value })
  }

  keepBack(): Setting {
    const keepBack = nameKey(this.text) === 'seed' ? 'seed' : readGrams(this.text)
    if (keepBack === undefined || keepBack === Infinity)
      return this.keep({ code: 'keepBackNotUnderstood', amount: this.row.amount })
    return { ...this.#ofStage({ keepBack }), kept: this.kept }
  }

  step(): Setting {
    const { ingredient, amount, note } = this.row
    const kind = nameKey(this.row['counts as'])
    if (kind !== 'hands' && kind !== 'wait' && kind !== 'bake')
      return refused({ code: 'stepOfNoKind', kind: this.row['counts as'] })
    const step = { id: newId(), does: ingredient, kind, text: amount, note } as const
    return {
      kind: 'stage',
      many: true,
      use(there) {
        there.method.push(step)
        return true
      },
    }
  }

  loss(use: 'stage' | 'loss' | 'bakeLoss'): Setting {
    const loss = readPercent(this.text)
    if (loss === undefined || !(loss < 1))
      return this.keep({ code: 'lossNotUnderstood', amount: this.row.amount, setting: this.key })
    if (use !== 'stage') return this.#ofFormula({ [use]: loss })
    return { ...this.#ofStage({ loss }), kept: this.kept }
  }

  flourWeight(): Setting {
    const grams = readGrams(this.text) ?? 0
    if (!(grams > 0 && grams < Infinity))
      return refused({ code: 'flourWeightNotUnderstood', amount: this.row.amount })
    return this.#ofFormula({ flourWeight: grams })
  }

  make(): Setting {
    const batch = readMake(this.text)
    if (!batch) return this.keep({ code: 'makeNotUnderstood', amount: this.row.amount })
    return this.#ofFormula({ make: batch })
  }

  hold(): Setting {
    const { row, key, text } = this
    const reading = heldBy(key)
    if (!reading) return this.keep({ code: 'holdOfNoReading', reading: key.slice('hold '.length) })
    const value = readHoldValue(reading, text)
    if (value === undefined) {
      const measures = isWeightReading(reading) ? 'weight' : 'percentage'
      return this.keep({ code: 'holdNotUnderstood', amount: row.amount, setting: row.setting, measures })
    }
    if (isBlank(row.ingredient) && reading !== 'doughWeight') return this.keep({ code: 'holdWithoutGiver' })
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
    if (note === '') return refused({ code: 'noteWithoutWords' })
    return this.#ofFormula({ note })
  }

  group(): Setting {
    const group = this.text
    return isBlank(group) ? refused({ code: 'groupWithoutName' }) : this.#ofFormula({ group })
  }

  build(): Setting {
    const build = this.row.amount.trim()
    return build ? this.#ofStage({ build }) : refused({ code: 'buildWithoutName' })
  }

  base(): Setting {
    const { amount, ingredient } = this.row
    const named = isBlank(amount) ? ingredient : amount // it may stand in either
    if (isBlank(named)) return refused({ code: 'baseWithoutName' })
    return { kind: 'base', ingredient: named, use: (there, which) => markBase(there, named, which) }
  }

  unknown(): Setting {
    const why = { code: 'settingUnknown', setting: this.row.setting, severity: 'remark' } as const
    return { kind: 'kept', kept: this.kept, ...(this.numbers ? this.aside : { why }) }
  }

  #ofStage(fields: Partial<Pick<StageDraft, 'ferments' | 'keepBack' | 'loss' | 'build'>>): StageSetting {
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
    fields: Partial<Pick<FormulaDraft, 'note' | 'group' | 'flourWeight' | 'make' | 'loss' | 'bakeLoss'>>,
  ): Setting {
    return { kind: 'formula', use: formula => void Object.assign(formula, fields), ...this.aside }
  }
}

function read(said: SettingRow): Setting {
  const { key, stage, row } = said
  const mayName =
    isHoldSetting(key) ||
    key === 'step' ||
    (key === 'base' && (isBlank(row.amount) || row.amount === row.ingredient))
  if (!isBlank(row.ingredient) && !mayName) return refused({ code: 'settingAndIngredient' })
  if (isStageSetting(key) && !isFormulaSetting(key) && isBlank(stage))
    return refused({ code: 'settingWithoutStage', setting: row.setting })
  if (!isBlank(stage)) {
    if (key === 'base') return said.base()
    if (key === 'ferments') return said.ferments()
    if (key === 'keep-back') return said.keepBack()
    if (key === 'loss') return said.loss('stage')
    if (key === 'build') return said.build()
    if (key === 'step') return said.step()
    if (key === 'flour weight') return refused({ code: 'flourWeightOfStage' })
    if (key !== 'note' && isFormulaSetting(key))
      return said.keep({ code: 'settingOfFormula', setting: row.setting })
    return said.unknown()
  }
  if (key === 'flour weight') return said.flourWeight()
  if (key === 'note') return said.note()
  if (key === 'group') return said.group()
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
  if (isBlank(row.note) || isBlank(row.amount) || ('many' in setting && setting.many)) return setting
  return { ...setting, remark: { code: 'settingNoteNotKept', setting: row.setting } }
}

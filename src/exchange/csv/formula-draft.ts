import { jottingNameAsKept, jottingNameProblem } from '../../dough/amounts/jotting-names.js'
import type { Batch, KeepBack } from '../../dough/document/batch.js'
import {
  type CountsAs,
  type Formula,
  type Hold,
  type Jotting,
  type KeptSetting,
  type Line,
  nameKey,
  newId,
  type Step,
  usualFlourWeight,
} from '../../dough/document/formula.js'
import { distinct } from '../values/distinct.js'
import { unnamed } from './columns.js'
import { settingKey } from './row.js'
import type { SettingDiagnostic } from './words.js'

/** A stage while its rows are being read. */
export interface StageDraft {
  readonly id: string
  readonly name: string
  readonly order: number // among the stages of its formula, by first appearance
  ferments?: boolean
  keepBack?: KeepBack
  loss?: number
  build?: string
  readonly lines: Line[]
  readonly method: Step[]
  readonly unmarked: Map<string, number[]> // name key of an ingredient → its lines not marked as base
}

/** Adds a line to a stage. */
export function addLine(stage: StageDraft, line: Line): void {
  const key = nameKey(line.ingredient)
  const unmarked = stage.unmarked.get(key)
  if (unmarked) unmarked.push(stage.lines.length)
  else stage.unmarked.set(key, [stage.lines.length])
  stage.lines.push(line)
}

/** Marks the last, or else the first, line of an ingredient that is not marked yet; false when there is none. */
export function markBase(stage: StageDraft, ingredient: string, which: 'last' | 'first'): boolean {
  const unmarked = stage.unmarked.get(nameKey(ingredient))
  const at = which === 'last' ? unmarked?.pop() : unmarked?.shift()
  if (at === undefined) return false
  stage.lines[at] = { ...stage.lines[at]!, base: true }
  return true
}

/** A formula while its rows, which may stand among those of other formulas, are being read. */
export class FormulaDraft {
  readonly id = newId()
  note: string | undefined
  group: string | undefined
  flourWeight: number | undefined
  make: Batch | undefined // without its losses
  loss: number | undefined
  bakeLoss: number | undefined
  readonly #holds: Hold[] = []
  readonly #jottings: Jotting[] = []
  readonly #kept: { readonly row: number; readonly setting: KeptSetting }[] = []
  readonly #stages = new Map<string, StageDraft>() // by name key, in the order of first appearance
  readonly #meanings = new Map<string, { ingredient: string; countsAs: CountsAs | undefined }>()
  readonly #settings = new Set<string>()

  constructor(readonly name: string) {}

  stage(name: string): StageDraft {
    const key = nameKey(name)
    let stage = this.#stages.get(key)
    if (!stage) {
      stage = { id: newId(), name, order: this.#stages.size, lines: [], method: [], unmarked: new Map() }
      this.#stages.set(key, stage)
    }
    return stage
  }

  findStage(name: string): StageDraft | undefined {
    return this.#stages.get(nameKey(name))
  }

  /** Is this the name of a stage that came before the given one? */
  isStageBefore(name: string, stage: StageDraft): boolean {
    const found = this.#stages.get(nameKey(name))
    return found !== undefined && found.order < stage.order
  }

  /** Keeps a setting that is not used, in the order of the rows. */
  keep(row: number, setting: KeptSetting): void {
    this.#kept.push({ row, setting })
  }

  /**
   * Has a line of the final dough give for a reading; the second of an ingredient is called `Water (2)`; without one every
   * line gives, which only the dough's weight is held by. Says why where it cannot. To be called when all stages are there.
   */
  hold(reading: Hold['reading'], value: number, ingredient: string): SettingDiagnostic | undefined {
    if (ingredient.trim() === '') {
      this.#holds.push({ reading, value, line: '' })
      return undefined
    }
    const lines = [...this.#stages.values()].at(-1)?.lines ?? []
    const names = distinct(lines.map(line => line.ingredient))
    const line = lines[names.findIndex(name => nameKey(name) === nameKey(ingredient))]
    if (!line) return { code: 'giverNotFound', ingredient }
    if (this.#holds.some(hold => hold.line === line.id)) return { code: 'giverGivesAlready', ingredient }
    this.#holds.push({ reading, value, line: line.id })
    return undefined
  }

  /** Jots a calculation down, or says why its name cannot be. To be called when all stages are there. */
  jot(name: string, text: string): SettingDiagnostic | undefined {
    const problem = jottingNameProblem(name, this.finish())
    if (problem) return { code: 'jottingRefused', why: problem.message }
    this.#jottings.push({ id: newId(), name: jottingNameAsKept(name), text })
    return undefined
  }

  /** True the first time a setting is given, false after. */
  isNewSetting(stage: string, setting: string, ingredient: string): boolean {
    const key = settingKey(stage, setting, ingredient)
    if (this.#settings.has(key)) return false
    this.#settings.add(key)
    return true
  }

  /** What the file said this ingredient counts as before; undefined when this is the first word on it. */
  saidOf(ingredient: string): { countsAs: CountsAs | undefined } | undefined {
    return this.#meanings.get(nameKey(ingredient))
  }

  /** `countsAs` is left undefined where the larder says the same. */
  mean(ingredient: string, countsAs: CountsAs | undefined): void {
    this.#meanings.set(nameKey(ingredient), { ingredient, countsAs })
  }

  finish(): Formula {
    if (this.#stages.size === 0) this.stage(unnamed.stage)
    return {
      id: this.id,
      name: this.name,
      note: this.note ?? '',
      flourWeight: this.flourWeight ?? usualFlourWeight,
      stages: [...this.#stages.values()].map(
        ({ id, name, ferments, lines, method, keepBack, loss, build }) => ({
          id,
          name,
          ...(ferments === undefined ? {} : { ferments }),
          lines,
          ...(keepBack ? { keepBack } : {}),
          ...(loss ? { loss } : {}),
          ...(method.length ? { method } : {}),
          ...(build ? { build } : {}),
        }),
      ),
      meanings: [...this.#meanings.values()].flatMap(({ ingredient, countsAs }) =>
        countsAs ? [{ ingredient, countsAs }] : [],
      ),
      keptSettings: this.#kept.sort((a, b) => a.row - b.row).map(({ setting }) => setting),
      ...(this.#holds.length ? { holds: this.#holds } : {}),
      ...this.#batch(),
      ...(this.#jottings.length ? { jottings: [...this.#jottings] } : {}),
      ...(this.group ? { group: this.group } : {}),
    }
  }

  #batch(): { batch?: Batch } {
    const { make = { make: 'as written' }, loss, bakeLoss } = this
    if (make.make === 'as written' && !loss && !bakeLoss) return {}
    return { batch: { ...make, ...(loss ? { loss } : {}), ...(bakeLoss ? { bakeLoss } : {}) } }
  }
}

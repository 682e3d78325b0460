import type { Problem } from '../../src/dough/document/formula.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { ArrivalKind, Arrived, Way } from '../../src/exchange/arriving/arriving.js'
import { columnsToRemember } from '../../src/exchange/arriving/remembered-columns.js'
import type { PhotographsInFile } from '../../src/exchange/data/photographs-in-file.js'
import { formulaFromLink } from '../../src/exchange/index.js'
import type { Mapping } from '../../src/exchange/tables/index.js'
import { remembered } from '../../src/storage/disk/remembered.js'
import { type Progress, Reading } from './reading.js'
import { type FileSource, sourceOfFile, sourceOfText } from './source-of-file.js'
import { originWords, refusalWords } from './words.js'

/** What was read, and where it came from. */
export interface Read {
  readonly from: Origin
  readonly arrived: Exclude<Arrived, { as: 'refused' }>
  readonly remark?: string
}

/** Where something came from: a file of that name, or what was pasted, or the page's own address. */
export type Origin = { readonly file: string } | keyof typeof originWords

export const originInWords = (from: Origin): string =>
  typeof from === 'string' ? originWords[from] : from.file

/** Takes in a file, a text or a link, one at a time, and reads it, as often as it is said to be something else. */
export class Intake {
  read: Read | undefined
  from: Origin | undefined // of what is being read
  progress: Progress | 'begun' | undefined // while it is being read
  refusal = '' // why nothing was read
  photographs: PhotographsInFile | undefined // that a workbook file has besides
  #reading: Reading | undefined
  #turn = 0 // goes up with each thing taken in: what comes late for an earlier one is dropped
  readonly #columns = remembered('columns')

  /** `changed` is called whenever something above has; `ready` when there is something to see for the first time. */
  constructor(
    readonly changed: () => void,
    readonly ready: () => void,
  ) {}

  /** Whether it can be said what the text is: not of a link, nor of what could not be opened. */
  get canBeReadOtherwise(): boolean {
    return this.#reading !== undefined
  }

  /** Forgets what was taken in, and stops what is under way. */
  clear(): void {
    this.#turn += 1
    this.#reading?.stop()
    this.#reading = undefined
    this.read = undefined
    this.from = undefined
    this.progress = undefined
    this.refusal = ''
    this.photographs = undefined
    this.changed()
  }

  async file(file: File, larder: Larder, language: string): Promise<void> {
    this.clear()
    this.from = { file: file.name }
    this.progress = 'begun'
    const turn = this.#turn
    const source = await sourceOfFile(file, language)
    if (this.#turn === turn) await this.#begin(source, larder)
  }

  async text(text: string, larder: Larder): Promise<void> {
    this.clear()
    const link = /^\s*\S*?(#formula=\S+)\s*$/.exec(text.slice(0, 10_000))?.[1]
    if (link) return this.link(link, 'pasted link')
    this.from = 'text'
    await this.#begin(sourceOfText(text), larder)
  }

  async link(fragment: string, from: Origin = 'link'): Promise<void> {
    this.clear()
    this.from = from
    const turn = this.#turn
    const came = await formulaFromLink(fragment)
    if (this.#turn !== turn) return
    if ('problem' in came) this.#refuse(came.problem.message)
    else {
      const problems = came.remarks.map((remark): Problem => ({ ...remark, where: {}, severity: 'warning' }))
      this.read = { from, arrived: { as: 'formulas', formulas: [came.formula], problems } }
      this.changed()
      this.ready()
    }
  }

  /** Reads it as what it is said to be. */
  readAs = (as: ArrivalKind): Promise<boolean> => this.#readAgain({ as })

  /** Reads a table with its columns as said. */
  readWith = (mapping: Mapping): Promise<boolean> => this.#readAgain({ as: 'table', mapping })

  /** Keeps what was said of the columns of the table, for the next one with these headings. */
  rememberColumns(): void {
    if (this.read?.arrived.as !== 'table') return
    const { key, mapping, guessed } = this.read.arrived.look
    const kept = columnsToRemember(mapping)
    if (JSON.stringify(kept) === JSON.stringify(columnsToRemember(guessed))) this.#columns.forget(key)
    else this.#columns.put(key, kept)
  }

  #refuse(why: string): void {
    this.progress = undefined
    this.refusal = why
    this.changed()
  }

  async #begin(came: FileSource | { readonly refusal: string }, larder: Larder): Promise<void> {
    if ('refusal' in came) return this.#refuse(came.refusal)
    const { source } = came
    this.photographs = came.photographs
    this.#reading = new Reading(source, larder, this.#columns.all(), progress => {
      this.progress = progress
      this.changed()
    })
    if (await this.#readAgain({})) this.ready()
  }

  /** True when there is something to see. */
  async #readAgain(way: Way): Promise<boolean> {
    const reading = this.#reading
    if (!reading) return false
    this.refusal = ''
    this.progress = 'begun'
    this.changed()
    const outcome = await reading.read(way)
    if (this.#reading !== reading || !outcome) return false // something else by now, or stopped
    const { arrived, ...more } = outcome
    if (arrived.as === 'refused') {
      this.read = undefined
      this.#refuse(
        typeof this.from === 'object' ? refusalWords.ofFile(this.from.file, arrived.why) : arrived.why,
      )
      return false
    }
    this.progress = undefined
    this.read = { from: this.from!, arrived, ...more }
    this.changed()
    return true
  }
}

import type { TypedText } from '../../src/storage/index.js'
import { BeingTyped, type Restored } from './being-typed.js'
import type { KeptDesk } from './kept-desk.js'

/** What is told of texts that were left in fields when the page went away. */
export interface TypedTold {
  readonly again: readonly string[] // labels of the fields in which they stand again
  readonly lost: readonly TypedText[] // those whose field is no more
  readonly elsewhere: readonly { readonly formula: string; readonly name: string }[] // formulas and days with others; by id
}

export const nothingTyped: TypedTold = { again: [], lost: [], elsewhere: [] }

/** Keeps what is being typed on the page with the desk, and brings back what the page before left. */
export class TypedAgain {
  told: TypedTold = nothingTyped
  readonly #kept: KeptDesk
  readonly #typing: BeingTyped
  readonly #refresh: () => void
  #restored: readonly Restored[] = []

  /** `early`: the fields that something was typed in before this was there. */
  constructor(
    page: HTMLElement,
    kept: KeptDesk,
    early: Iterable<EventTarget>,
    refresh: () => void,
    signal: AbortSignal,
  ) {
    this.#kept = kept
    this.#refresh = refresh
    const open = () => kept.desk?.formula?.id ?? ''
    this.#typing = new BeingTyped({ page, open, told: texts => kept.type(texts) }, kept.left, early, signal)
    // What is not saved yet is written as the page goes; this is for when that is not to be hoped for.
    const ask = (event: BeforeUnloadEvent): void => {
      this.#typing.check()
      if (kept.atRisk) event.preventDefault()
    }
    window.addEventListener('beforeunload', ask, { signal })
  }

  check(): void {
    this.#typing.check()
  }

  /** Puts back what belongs to the open formula; to be called again when another one was gone to for it. */
  async restore(): Promise<void> {
    if (this.#kept.readOnly) return
    this.#restored = [...this.#restored, ...(await this.#typing.restore())]
    this.#tell()
  }

  /** The notice of the fields has been read. */
  seen(): void {
    this.#restored = this.#restored.filter(({ label }) => label === undefined)
    this.#tell()
  }

  forget(text: TypedText): void {
    this.#restored = this.#restored.filter(restored => restored.text !== text)
    this.#typing.forget(text)
    this.#tell()
  }

  #tell(): void {
    const { formulas = [], days = [] } = this.#kept.desk?.workbook ?? {}
    const places = [...formulas, ...days]
    const there = new Set(this.#typing.elsewhere.map(({ formula }) => formula))
    this.told = {
      again: this.#restored.flatMap(({ label }) => label ?? []),
      lost: [
        ...this.#restored.filter(({ label }) => label === undefined).map(({ text }) => text),
        ...this.#typing.elsewhere.filter(({ formula }) => !places.some(({ id }) => id === formula)),
      ],
      elsewhere: places.filter(({ id }) => there.has(id)).map(({ id, name }) => ({ formula: id, name })),
    }
    this.#refresh()
  }
}

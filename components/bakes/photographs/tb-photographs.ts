import { css, html, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import type { Photograph } from '../../../src/day/bench/photograph.js'
import { dateText } from '../../../src/day/out/day-text.js'
import { newId } from '../../../src/dough/document/formula.js'
import {
  databasePhotographs,
  hasRoomFor,
  type Photographs,
} from '../../../src/storage/photographs/photographs.js'
import { databaseOfPage } from '../../base/asked-of-page.js'
import { BaseElement } from '../../base/base-element.js'
import { say } from '../../base/events.js'
import { mostBytes, preparePicture } from './prepared-picture.js'
import './tb-photograph.js'
import { photographWords } from './words.js'

/** A photograph with the address of its picture, for as long as it is shown. */
interface Shown {
  readonly photograph: Photograph
  readonly url: string
}

/** The photographs of a bake: taken, chosen, looked at large, described, deleted. */
export class TbPhotographs extends BaseElement {
  static override properties = {
    bake: {},
    shown: { state: true },
    working: { state: true },
    fault: { state: true },
  }

  declare bake: string // id
  declare private shown: readonly Shown[]
  declare private working: boolean
  declare private fault: string

  #store: Photographs | undefined
  #looked = '' // id of the one that is looked at large

  constructor() {
    super()
    this.shown = []
    this.working = false
    this.fault = ''
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.#forget()
    this.#store?.close()
    this.#store = undefined
  }

  override connectedCallback(): void {
    super.connectedCallback()
    if (this.hasUpdated) void this.#read()
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('bake')) void this.#read()
  }

  get #photographs(): Photographs {
    this.#store ??= databasePhotographs(databaseOfPage())
    return this.#store
  }

  #forget(): void {
    for (const { url } of this.shown) URL.revokeObjectURL(url)
    this.shown = []
  }

  async #read(): Promise<void> {
    const { bake } = this
    try {
      const all = await this.#photographs.of(bake)
      const pictures = await Promise.all(all.map(one => this.#photographs.picture(one)))
      if (bake !== this.bake || !this.isConnected) return
      this.#forget()
      this.shown = all.flatMap((photograph, i) => {
        const picture = pictures[i]
        return picture ? [{ photograph, url: URL.createObjectURL(picture) }] : []
      })
      this.fault = ''
    } catch {
      this.fault = photographWords.notRead
    }
  }

  override render() {
    const { shown, working, fault, readOnly } = this
    if (readOnly && shown.length === 0) return nothing
    return html`<h2 id="photographs">${photographWords.heading}</h2>
      ${
        shown.length
          ? html`<ul aria-labelledby="photographs">
              ${repeat(
                shown,
                ({ photograph }) => photograph.id,
                (one, i) => this.#small(one, i + 1),
              )}
            </ul>`
          : nothing
      }
      ${
        readOnly
          ? nothing
          : html`<div class="do">
                <label class="lined"
                  >${photographWords.take}<input type="file" accept="image/*" capture="environment" @change=${this.#chosen}
                /></label>
                <label class="lined"
                  >${photographWords.choose}<input type="file" accept="image/*" multiple @change=${this.#chosen}
                /></label>
              </div>
              <p class="soft">${photographWords.hint}</p>`
      }
      <p role="status" class=${fault ? 'fault' : ''}>${fault || (working ? photographWords.working : '')}</p>
      <tb-photograph
        .numbers=${this.numbers}
        ?readOnly=${readOnly}
        @tb-described=${this.#described}
        @tb-deleted=${this.#deleted}
      ></tb-photograph>`
  }

  #small({ photograph, url }: Shown, number: number): TemplateResult {
    const { described } = photograph
    return html`<li>
      <button
        aria-label=${photographWords.look(described, number, this.shown.length)}
        @click=${() => this.#look(number)}
      >
        <img src=${url} alt="" loading="lazy" />
      </button>
    </li>`
  }

  #look(number: number): void {
    const one = this.shown[number - 1]
    if (!one) return
    const date = dateText(one.photograph.taken.slice(0, 10), this.numbers.language)
    const looked = { ...one, number, of: this.shown.length, taken: photographWords.taken(date) }
    this.#looked = one.photograph.id
    this.renderRoot.querySelector('tb-photograph')!.show(looked)
  }

  #chosen = async (event: Event): Promise<void> => {
    const input = event.target as HTMLInputElement
    const files = [...(input.files ?? [])]
    input.value = '' // the same one can be chosen again
    if (files.length === 0) return
    this.working = true
    this.fault = ''
    let kept = 0
    for (const file of files) {
      this.fault = (await this.#keep(file)) ?? ''
      if (this.fault) break
      kept += 1
    }
    this.working = false
    if (kept) say(this, photographWords.kept(kept))
    const { fault } = this
    await this.#read()
    this.fault ||= fault
  }

  /** Keeps a picture; the sentence that says why not. */
  async #keep(file: File): Promise<string | undefined> {
    const { bake } = this
    if (!(await hasRoomFor(mostBytes))) return photographWords.full
    const prepared = await preparePicture(file).catch(() => undefined)
    if (!prepared) return photographWords.notAPicture(file.name)
    const { picture, width, height } = prepared
    const about = { id: newId(), bake, taken: new Date().toISOString(), described: '', width, height }
    try {
      await this.#photographs.put(about, picture)
      return undefined
    } catch (error) {
      const isFull = error instanceof DOMException && error.name === 'QuotaExceededError'
      return isFull ? photographWords.full : photographWords.notKept
    }
  }

  #described = async ({ detail }: CustomEvent<{ photograph: Photograph; words: string }>): Promise<void> => {
    const { photograph, words } = detail
    await this.#photographs.describe(photograph, words).catch(() => {
      this.fault = photographWords.notKept
    })
    await this.#read()
    if (this.#looked === photograph.id)
      this.#look(this.shown.findIndex(one => one.photograph.id === photograph.id) + 1)
  }

  #deleted = async ({ detail }: CustomEvent<{ photograph: Photograph }>): Promise<void> => {
    this.#looked = ''
    await this.#photographs.remove(detail.photograph).catch(() => {})
    say(this, photographWords.removed)
    await this.#read()
  }

  static override styles = css`
    :host {
      display: block;
    }
    h2 {
      margin: 26px 0 4px;
      font-size: var(--size-lead);
      font-weight: 640;
    }
    ul {
      display: grid;
      grid-template-columns: repeat(auto-fill, minmax(132px, 1fr));
      gap: 10px;
      margin: 8px 0 12px;
      padding: 0;
      list-style: none;
    }
    li button {
      display: block;
      width: 100%;
      padding: 0;
      overflow: hidden;
      border: 1px solid var(--rule);
      border-radius: var(--radius);
    }
    li img {
      display: block;
      width: 100%;
      aspect-ratio: 1;
      object-fit: cover;
    }
    .do {
      display: flex;
      flex-wrap: wrap;
      gap: 10px;
    }
    .do label {
      display: inline-flex;
      align-items: center;
      min-height: 48px;
      padding: 6px 16px;
      border: 1px solid var(--rule-strong);
      border-radius: var(--radius);
      cursor: pointer;
    }
    .do label:focus-within {
      outline: 2px solid var(--accent);
      outline-offset: 2px;
    }
    .do input {
      position: absolute;
      width: 1px;
      height: 1px;
      min-height: 0;
      overflow: hidden;
      clip-path: inset(50%);
    }
    p {
      margin: 6px 0 0;
    }
    .soft {
      color: var(--ink-soft);
      font-size: var(--size-small);
    }
    .fault {
      padding: 8px 12px;
      background: var(--warn-wash);
      border-left: 3px solid var(--warn);
    }
    @media print {
      .do,
      .soft {
        display: none;
      }
    }
  `
}
customElements.define('tb-photographs', TbPhotographs)

declare global {
  interface HTMLElementTagNameMap {
    'tb-photographs': TbPhotographs
  }
}

import { html, nothing, type PropertyValues, type TemplateResult } from 'lit'
import type { CountsAs } from '../../../src/dough/document/formula.js'
import { BaseElement } from '../../base/base-element.js'
import { showNumber } from '../../base/numbers.js'
import { countsAsWords } from '../../larder/counts-as-words.js'
import { readNumber } from '../../typed/typed-numbers.js'
import { type MeaningsSaid, meaningOf, type NotInLarder } from './not-in-larder.js'
import { unknownStyles } from './unknown-styles.js'
import { unknownWords, whyWords } from './words.js'

const atFirst = 12
const moreAtOnce = 100

type Kind = CountsAs['kind']
const kinds = Object.keys(countsAsWords) as Kind[]

/** What each ingredient that is not in the larder counts as: guessed from its name, and the baker's to say. */
export class TbUnknown extends BaseElement {
  static override properties = {
    names: { attribute: false },
    said: { attribute: false },
    shown: { state: true },
    wrong: { state: true },
  }

  declare names: readonly NotInLarder[]
  declare said: MeaningsSaid
  declare private shown: number
  declare private wrong: string // key of the name whose hydration is no number

  constructor() {
    super()
    this.shown = atFirst
    this.wrong = ''
  }

  #tell({ key }: NotInLarder, countsAs: CountsAs | 'not known'): void {
    this.wrong = ''
    this.dispatchEvent(new CustomEvent('tb-counts-as', { detail: { key, countsAs } }))
  }

  #kind(one: NotInLarder, kind: string): void {
    const is = kinds.find(known => known === kind)
    this.#tell(
      one,
      is === undefined ? 'not known' : is === 'starter' ? { kind: is, hydration: 1 } : { kind: is },
    )
  }

  #hydration(one: NotInLarder, typed: string): void {
    const percent = readNumber(typed, this.numbers)
    if (percent === undefined || percent < 10 || percent > 1000) this.wrong = one.key
    else this.#tell(one, { kind: 'starter', hydration: percent / 100 })
  }

  #more = async (): Promise<void> => {
    const first = this.shown
    this.shown += moreAtOnce
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>(`#as-${first}`)?.focus()
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('names') && changed.get('names') && this.names.length <= atFirst) this.shown = atFirst
  }

  override render() {
    const { names, said, shown } = this
    const open = names.filter(one => !meaningOf(one, said)).length
    const rest = names.slice(shown)
    return html`<section class=${open > 0 ? 'open' : ''} aria-labelledby="heading">
      <h3 id="heading">${unknownWords.notInLarder} <span class="count">${names.length}</span></h3>
      <p>${unknownWords.guessed(names.length)}</p>
      <ul>
        ${names.slice(0, shown).map((one, at) => this.#one(one, at))}
      </ul>
      ${
        rest.length > 0
          ? html`<p class="rest">${unknownWords.rest(rest.length, this.#kindsOf(rest))}</p>
              <button class="lined" @click=${this.#more}>
                ${rest.length > moreAtOnce ? unknownWords.showNext(moreAtOnce) : unknownWords.showRest(rest.length)}
              </button>`
          : nothing
      }
    </section>`
  }

  /** `2,900 flour`, `88 not known`. */
  #kindsOf(names: readonly NotInLarder[]): string[] {
    const counts = new Map<Kind | 'not known', number>()
    for (const one of names) {
      const kind = meaningOf(one, this.said)?.kind ?? 'not known'
      counts.set(kind, (counts.get(kind) ?? 0) + 1)
    }
    return ([...kinds, 'not known'] as const).flatMap(kind => {
      const count = counts.get(kind)
      const called = kind === 'not known' ? unknownWords.notKnown : countsAsWords[kind].name
      return count ? [unknownWords.ofKind(count, called.toLowerCase())] : []
    })
  }

  #one(one: NotInLarder, at: number): TemplateResult {
    const meaning = meaningOf(one, this.said)
    const chosen = meaning?.kind ?? 'not known'
    return html`<li>
      <label for="as-${at}">${one.name}</label>
      <select
        id="as-${at}"
        aria-describedby="why-${at}"
        .value=${chosen}
        @change=${(e: Event) => this.#kind(one, (e.target as HTMLSelectElement).value)}
      >
        ${kinds.map(kind => html`<option value=${kind} ?selected=${kind === chosen}>${countsAsWords[kind].name}</option>`)}
        <option value="not known" ?selected=${chosen === 'not known'}>${unknownWords.notKnown}</option>
      </select>
      <div class="why">
        ${meaning?.kind === 'starter' ? this.#starter(one, at, meaning.hydration) : nothing}
        <span id="why-${at}">${this.#why(one, meaning)}</span>
      </div>
    </li>`
  }

  #starter(one: NotInLarder, at: number, hydration: number): TemplateResult {
    const isWrong = this.wrong === one.key
    return html`<span class="hydration">
      <label for="hydration-${at}"><span class="unseen">${unknownWords.hydrationOf(one.name)}</span><span aria-hidden="true">${unknownWords.at}</span></label>
      <input
        id="hydration-${at}"
        inputmode="decimal"
        autocomplete="off"
        aria-invalid=${isWrong ? 'true' : 'false'}
        aria-describedby="wrong-${at}"
        .value=${showNumber(Math.round(hydration * 1e4) / 100, this.numbers)}
        @change=${(e: Event) => this.#hydration(one, (e.target as HTMLInputElement).value)}
      />
      %<span class="error" id="wrong-${at}" role="alert">${isWrong ? ` ${unknownWords.notAHydration}` : nothing}</span>
    </span>`
  }

  #why({ key, isStage }: NotInLarder, meaning: CountsAs | undefined): string {
    if (this.said.has(key)) return meaning ? whyWords.said : whyWords.saidNotKnown
    if (meaning) return whyWords.guessed
    return isStage ? whyWords.isStage : whyWords.notKnown
  }

  static override styles = unknownStyles
}
customElements.define('tb-unknown', TbUnknown)

declare global {
  interface HTMLElementTagNameMap {
    'tb-unknown': TbUnknown
  }
}

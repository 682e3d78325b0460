import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import type { MadeBuild, MadeLine } from '../../src/day/trade/builds-made.js'
import { BaseElement } from '../base/base-element.js'
import { Ticks } from './ticks.js'
import { sayScale } from './trade-figures.js'
import { weighListStyles } from './weigh-list-styles.js'
import { weighWords } from './words.js'

/** A build to be weighed, with what is said of it. */
export interface ListedBuild {
  readonly build: MadeBuild
  readonly name: string // `Levain`; of a dough that of its bread
  readonly about: string // what it is for, and when it is mixed
}

const few = 4 // that two columns of a printed page have room for

const tickOf = ({ key }: MadeBuild, line: MadeLine): string => `${key} ${line.key} ${line.grams ?? ''}`

/** The weighing lists of a day, dough by dough, each line with a box to tick off. */
export class TbWeighLists extends BaseElement {
  static override properties: PropertyDeclarations = {
    of: {},
    builds: { attribute: false },
    ticked: { state: true },
  }

  declare of: string // id of the day or the formula
  declare builds: readonly ListedBuild[]
  declare private ticked: number // goes up with each tick

  #ticks = new Ticks('')
  #shown = ''

  constructor() {
    super()
    this.of = ''
    this.builds = []
    this.ticked = 0
  }

  protected override willUpdate(): void {
    if (this.of === this.#shown) return
    this.#shown = this.of
    this.#ticks = new Ticks(this.of)
  }

  override render() {
    const all = this.builds.flatMap(({ build }) => build.lines.map(line => tickOf(build, line)))
    const done = all.filter(line => this.#ticks.has(line)).length
    return html`<p class="how ${done ? 'some' : ''}" role="status">
        ${done ? weighWords.ticked(done, all.length) : nothing}
        ${done ? html`<button @click=${this.#clear}>${weighWords.clear}</button>` : nothing}
      </p>
      <div class="lists ${this.builds.length > few ? 'many' : ''}">
        ${repeat(
          this.builds,
          ({ build }) => build.key,
          listed => this.#list(listed),
        )}
      </div>`
  }

  #list({ build, name, about }: ListedBuild): TemplateResult {
    const { numbers } = this
    return html`<section aria-label=${[name, about].filter(Boolean).join(', ')}>
      <h3>${name}</h3>
      ${about ? html`<p class="about">${about}</p>` : nothing}
      <ul>
        ${build.lines.map(line => this.#line(build, line))}
      </ul>
      <p class="total">
        <span>${weighWords.total}</span>
        <b>${build.total === undefined ? weighWords.unknown : sayScale(build.total, numbers)}</b>
      </p>
    </section>`
  }

  #line(build: MadeBuild, line: MadeLine): TemplateResult {
    const key = tickOf(build, line)
    return html`<li>
      <label>
        <input
          type="checkbox"
          .checked=${this.#ticks.has(key)}
          @change=${(event: Event) => this.#tick(key, (event.target as HTMLInputElement).checked)}
        />
        <span>${line.ingredient}${line.note ? html`<small>${line.note}</small>` : nothing}</span>
        <b>${line.grams === undefined ? weighWords.unknown : sayScale(line.grams, this.numbers)}</b>
      </label>
    </li>`
  }

  #tick(key: string, isTicked: boolean): void {
    this.#ticks.put(key, isTicked)
    this.ticked += 1
  }

  #clear = async (): Promise<void> => {
    this.#ticks.clear()
    this.ticked += 1
    await this.updateComplete
    this.renderRoot.querySelector('input')?.focus()
  }

  static override styles = weighListStyles
}
customElements.define('tb-weigh-lists', TbWeighLists)

declare global {
  interface HTMLElementTagNameMap {
    'tb-weigh-lists': TbWeighLists
  }
}

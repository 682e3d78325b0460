import { css, html, nothing, type TemplateResult } from 'lit'
import { type Reminder, reminders } from '../../src/storage/outside/copy-notes.js'
import type { OutsideCopy } from '../../src/storage/outside/outside-copy.js'
import { BaseElement } from '../base/base-element.js'
import { canKeepFile, copyOutside, nameFile } from '../desk/outside-desk.js'
import { outsideWords, reminderWords } from './outside-words.js'

/** The copy of the workbook in a file that is kept up to date, or how often to be reminded of taking one. */
export class TbOutsideCopy extends BaseElement {
  static override properties = { file: {}, told: { state: true } }

  declare file: string // its name as it is proposed
  declare told: string
  #copy: OutsideCopy | undefined

  constructor() {
    super()
    this.file = ''
    this.told = ''
  }

  readonly #changed = (): void => this.requestUpdate()

  override connectedCallback(): void {
    super.connectedCallback()
    this.#copy = copyOutside()
    addEventListener('tb-copy-changed', this.#changed)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    removeEventListener('tb-copy-changed', this.#changed)
  }

  override render() {
    const copy = this.#copy
    if (!copy) return nothing
    return html`<section aria-labelledby="heading">
      <h3 id="heading">${outsideWords.heading}</h3>
      ${copy.notes.file ? this.#kept(copy, copy.notes.file.name) : this.#none(copy)}
      <p role="status">${this.told}</p>
    </section>`
  }

  #kept(copy: OutsideCopy, name: string): TemplateResult {
    const { wrote } = copy.notes
    return html`<p>${copy.problem?.message ?? (wrote ? outsideWords.kept(name, this.#moment(wrote.at)) : outsideWords.waits(name))}</p>
      <div class="row">
        ${
          copy.isUpToDate || copy.problem?.code === 'copyFileOther'
            ? nothing
            : html`<button class="lined" @click=${() => copy.flush({ ask: true })}>${outsideWords.writeNow}</button>`
        }
        <button class="lined" @click=${this.#name}>${outsideWords.nameAnother}</button>
        <button @click=${() => this.#stop(name)}>${outsideWords.stop}</button>
      </div>`
  }

  #none(copy: OutsideCopy): TemplateResult {
    const { every = 'month', taken } = copy.notes
    return html`<p>${canKeepFile() ? outsideWords.how : outsideWords.cannot}</p>
      <div class="row">
        ${canKeepFile() ? html`<button class="lined" @click=${this.#name}>${outsideWords.name}</button>` : nothing}
        <label>
          ${outsideWords.remind}
          <select @change=${(e: Event) => copy.remind((e.target as HTMLSelectElement).value as Reminder)}>
            ${reminders.map(
              one => html`<option value=${one} ?selected=${one === every}>${reminderWords[one]}</option>`,
            )}
          </select>
        </label>
        <span class="quiet">${taken ? outsideWords.taken(this.#moment(taken)) : outsideWords.notTaken}</span>
      </div>`
  }

  #moment(iso: string): string {
    const format = new Intl.DateTimeFormat(this.numbers.language, { dateStyle: 'medium', timeStyle: 'short' })
    return format.format(new Date(iso))
  }

  #name = async (): Promise<void> => {
    this.told = ''
    const file = await nameFile(this.file)
    if (file) await this.#copy?.keepIn(file)
  }

  async #stop(name: string): Promise<void> {
    this.#copy?.stop()
    this.told = outsideWords.stopped(name)
    await this.updateComplete
    this.renderRoot.querySelector('button')?.focus()
  }

  static override styles = css`
    section {
      margin: 18px 0;
      padding-top: 14px;
      border-top: 1px solid var(--rule);
    }
    h3 {
      margin: 0 0 6px;
      font-size: var(--size-text);
      font-weight: 640;
    }
    p {
      margin: 0 0 8px;
      max-width: 66ch;
      overflow-wrap: anywhere;
    }
    p:empty {
      margin: 0;
    }
    .row {
      display: flex;
      flex-wrap: wrap;
      align-items: center;
      gap: 8px 12px;
    }
    .quiet {
      font-size: var(--size-small);
    }
  `
}
customElements.define('tb-outside-copy', TbOutsideCopy)

declare global {
  interface HTMLElementTagNameMap {
    'tb-outside-copy': TbOutsideCopy
  }
}

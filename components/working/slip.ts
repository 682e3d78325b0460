import { html, nothing, type TemplateResult } from 'lit'
import { copyText } from '../base/copy-text.js'
import { say } from '../base/events.js'
import { workingWords } from './words.js'

/** A slip that shows how a figure came about. */
export interface Slip {
  readonly way: readonly string[] // titles of those it was followed from, the first first
  readonly title: string
  readonly describedBy: string // ids
  readonly body: TemplateResult
  readonly text: string | undefined // to be copied
  /** Goes back to one of the way. */
  back(index: number): void
  close(): void
}

/** The frame of a slip: the way to it, its title, what it shows, and what is done with it. */
export function slip(
  host: HTMLElement,
  { way, title, describedBy, body, text, back, close }: Slip,
): TemplateResult {
  const copy = async (copied: string) =>
    say(host, (await copyText(copied)) ? workingWords.copied : workingWords.notCopied)
  return html`<section aria-labelledby="title">
    <div class="top">
      <div>
        ${
          way.length
            ? html`<ol class="way" aria-label=${workingWords.followedFrom}>
              ${way.map((before, i) => html`<li><button @click=${() => back(i)}>${before}</button></li>`)}
            </ol>`
            : nothing
        }
        <h3 id="title" tabindex="-1" aria-describedby=${describedBy}>${title}</h3>
      </div>
      <button class="close" aria-label=${workingWords.closeThis} title=${workingWords.close} @click=${close}>
        <span aria-hidden="true">✕</span>
      </button>
    </div>
    ${body}
    <div class="do">
      ${way.length ? html`<button class="back" @click=${() => back(way.length - 1)}>${workingWords.back}</button>` : nothing}
      ${text === undefined ? nothing : html`<button @click=${() => copy(text)}>${workingWords.copy}</button>`}
    </div>
  </section>`
}

/** Hears Escape in a slip. */
export const onEscape =
  (close: () => void) =>
  (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || event.isComposing || event.defaultPrevented) return
    event.preventDefault()
    event.stopPropagation()
    close()
  }

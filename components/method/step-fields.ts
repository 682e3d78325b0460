import { html, nothing, type TemplateResult } from 'lit'
import type { Completion } from '../controls/completion.js'
import type { StepDrag } from './step-drag.js'
import { methodWords } from './words.js'

/** What of a step is typed. */
export type TextField = 'does' | 'text' | 'note'

interface Shown {
  readonly of: string // stage and step, by their ids
  readonly value: string
  readonly label: string // for those who listen
  readonly hint: string // while it is empty; '' for none
}

/** A field of a step, as high as what is in it. */
export const plainField = ({
  of,
  field,
  value,
  label,
  hint,
  readOnly,
}: Shown & {
  readonly field: TextField
  readonly readOnly: boolean
}): TemplateResult => html`<span class=${`grow ${field}`} data-text=${`${value || hint} `}
    ><textarea
      rows="1"
      data-field=${field}
      data-typed="step ${of} ${field}"
      .defaultValue=${value}
      aria-label=${label}
      placeholder=${hint || nothing}
      autocomplete="off"
      spellcheck="false"
      enterkeyhint="next"
      .value=${value}
      ?readonly=${readOnly}
      @input=${grown}
    ></textarea
  ></span>`

// A hidden copy of the text gives the field its size: `field-sizing: content` is not in Firefox yet.
const grown = ({ target }: Event): void => fit(target as HTMLTextAreaElement)

function fit(field: HTMLInputElement | HTMLTextAreaElement): void {
  const { parentElement, value, placeholder } = field
  if (parentElement?.dataset.text !== undefined) parentElement.dataset.text = `${value || placeholder} `
}

/** Puts a text into a field, which is as high as that wants. */
export function putInto(field: HTMLInputElement, text: string): void {
  field.value = text
  fit(field)
}

/** What is done, with words offered while it is typed. */
export function wordsField({
  of,
  value,
  label,
  hint,
  all,
  words,
  input,
}: Shown & {
  readonly all: readonly string[]
  readonly words: Completion
  readonly input: () => HTMLInputElement | null
}): TemplateResult {
  const isOpen = words.of === of && words.names.length > 0
  return html`<div class="does">
    <input
      data-field="does"
      data-typed="step ${of} does"
      .defaultValue=${value}
      role="combobox"
      aria-autocomplete="list"
      aria-haspopup="listbox"
      aria-expanded=${isOpen}
      aria-controls=${isOpen ? 'names' : nothing}
      aria-activedescendant=${isOpen && words.at >= 0 ? `name-${words.at}` : nothing}
      aria-label=${label}
      placeholder=${hint || nothing}
      autocomplete="off"
      enterkeyhint="next"
      .value=${value}
      @input=${(event: InputEvent) => words.look(event.target as HTMLInputElement, of, all)}
    />
    ${words.list(of, input)}
  </div>`
}

/** What a step is dragged by; keys and the menu move it as well. */
export const dragHandle = (does: string, drag: StepDrag): TemplateResult => html`<span
    class="handle"
    aria-hidden="true"
    title=${methodWords.moveHere(does)}
    @pointerdown=${drag.begin}
    @pointermove=${drag.move}
    @pointerup=${drag.end}
    @pointercancel=${drag.cancel}
  ><svg width="10" height="16" fill="currentColor">
    <circle cx="2" cy="3" r="1.4" /><circle cx="8" cy="3" r="1.4" /><circle cx="2" cy="8" r="1.4" />
    <circle cx="8" cy="8" r="1.4" /><circle cx="2" cy="13" r="1.4" /><circle cx="8" cy="13" r="1.4" />
  </svg></span>`

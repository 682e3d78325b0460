import { html, nothing, type TemplateResult } from 'lit'
import { type Formula, hasBatch } from '../../src/dough/document/formula.js'
import type { Completion } from '../controls/completion.js'
import { jottingWords, weightsAsWritten, whatAJottingIs } from './words.js'

/** What the two fields of a jotting show, and what is done with their keys. */
export interface JottingFields {
  readonly id: string // '' for the line on which the next is written
  readonly name: string
  readonly text: string // with the baker's decimal sign
  readonly readOnly: boolean
  readonly nameFaulty: boolean
  readonly textFaulty: boolean
  readonly hints: readonly [name: string, text: string] // what an empty line shows
  readonly completion: Completion
  readonly field: () => HTMLInputElement | null // of the calculation
  readonly typedName: (event: InputEvent) => void
  readonly typedText: (event: Event) => void
  readonly key: (event: KeyboardEvent) => void
}

/** The fields of a jotting: its name, and its calculation with the names that go on from what is typed. */
export function jottingFields(of: JottingFields): TemplateResult {
  const { id, name, readOnly, completion } = of
  const isOpen = completion.of === id && completion.names.length > 0
  return html`<input
      class="name"
      data-of=${id}
      data-field="name"
      data-typed="jotting ${id} name"
      aria-label=${jottingWords.nameOf(name)}
      aria-describedby=${`error-${id}`}
      aria-invalid=${of.nameFaulty}
      placeholder=${name ? nothing : of.hints[0]}
      autocapitalize="none"
      autocomplete="off"
      spellcheck="false"
      enterkeyhint="next"
      ?readonly=${readOnly}
      .defaultValue=${name}
      .value=${name}
      @input=${of.typedName}
      @keydown=${of.key}
    /><span class="is" aria-hidden="true">=</span
    ><span class="calculation"
      ><input
        data-of=${id}
        data-field="text"
        data-typed="jotting ${id} text"
        role="combobox"
        aria-autocomplete="list"
        aria-haspopup="listbox"
        aria-expanded=${isOpen}
        aria-controls=${isOpen ? 'names' : nothing}
        aria-activedescendant=${isOpen && completion.at >= 0 ? `name-${completion.at}` : nothing}
        aria-label=${jottingWords.calculationOf(name)}
        aria-describedby=${`error-${id}`}
        aria-invalid=${of.textFaulty}
        placeholder=${name ? nothing : of.hints[1]}
        autocapitalize="none"
        autocomplete="off"
        spellcheck="false"
        enterkeyhint="done"
        ?readonly=${readOnly}
        .defaultValue=${of.text}
        .value=${of.text}
        @input=${of.typedText}
        @keydown=${of.key}
      />${completion.list(id, of.field)}</span
    >`
}

/** What a jotting is, before there is one; and whose weights it speaks of, where those of a batch stand beside them. */
export function jottingHint(formula: Formula, readOnly: boolean): TemplateResult | typeof nothing {
  const isFirst = !formula.jottings?.length && !readOnly
  if (!isFirst && !hasBatch(formula)) return nothing
  return html`<p class="hint">${isFirst ? html`${whatAJottingIs()} ` : nothing}${weightsAsWritten()}</p>`
}

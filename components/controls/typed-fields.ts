import { html, nothing, type ReactiveControllerHost, type TemplateResult } from 'lit'
import { live } from 'lit/directives/live.js'

/** A field within a sentence, for a number. */
export interface TypedField {
  readonly name: string // its own among those of the element
  readonly label: string // for those who hear the field apart from its sentence
  readonly kept: string // what it shows unless something else is being typed
  readonly pending?: string // shown in its place: typed, and waiting for another field before it is kept
  readonly unit?: string // after it
  readonly hint?: string // in it while it is empty
  readonly short?: boolean // two or three digits are usual
  readonly keys?: 'text' // that a phone shows; left out: those of numbers
  readonly isReadOnly?: boolean
  readonly typedAs?: string // what its text is kept under while it is not taken, where that is not its name
  /** Takes what was typed, or says in a sentence why not. */
  take(typed: string): string | undefined
}

interface Fault {
  readonly typed: string
  readonly why: string
}

/**
 * Fields that hold what was typed until it is taken: what is not understood stays, with the reason beneath,
 * and Escape brings back what is kept. Leaving the field or Enter takes it.
 */
export class TypedFields {
  readonly #host: ReactiveControllerHost
  readonly #of: () => string
  readonly #faults = new Map<string, Fault>()

  /** `of`: what begins the names under which texts are kept while they are not taken. */
  constructor(host: ReactiveControllerHost, of: () => string = () => 'batch') {
    this.#host = host
    this.#of = of
  }

  /** Forgets what was typed and not taken. */
  forget(): void {
    this.#faults.clear()
  }

  field(field: TypedField): TemplateResult {
    const fault = this.#faults.get(field.name)
    return html`<span class="typed"><input
      id=${field.name}
      data-typed="${this.#of()} ${field.typedAs ?? field.name}"
      class=${field.short ? 'short' : ''}
      inputmode=${field.keys ?? 'decimal'}
      enterkeyhint="done"
      autocomplete="off"
      placeholder=${field.hint ?? nothing}
      aria-label=${field.label}
      aria-invalid=${fault ? 'true' : nothing}
      aria-describedby=${fault ? `${field.name}-fault` : nothing}
      .defaultValue=${field.kept}
      .value=${live(fault?.typed ?? field.pending ?? field.kept)}
      ?readonly=${field.isReadOnly ?? false}
      @focus=${(event: FocusEvent) => (event.target as HTMLInputElement).select()}
      @change=${(event: Event) => this.#take(field, (event.target as HTMLInputElement).value)}
      @keydown=${(event: KeyboardEvent) => this.#key(event, field)}
    />${field.unit ? html`<span aria-hidden="true">\u00a0${field.unit}</span>` : nothing}</span>`
  }

  /** Why what stands in these fields was not taken; to be put beneath them. */
  faults(...names: readonly string[]) {
    return names.map(name => {
      const fault = this.#faults.get(name)
      return fault ? html`<p class="fault" id="${name}-fault" role="alert">${fault.why}</p>` : nothing
    })
  }

  #take(field: TypedField, typed: string): void {
    const why = typed === (field.pending ?? field.kept) ? undefined : field.take(typed)
    if (why) this.#faults.set(field.name, { typed, why })
    else this.#faults.delete(field.name)
    this.#host.requestUpdate()
  }

  #key(event: KeyboardEvent, { name, kept }: TypedField): void {
    const input = event.target as HTMLInputElement
    if (event.key !== 'Escape' || event.isComposing || event.keyCode === 229) return // Safari: ends a composition
    if (input.value === kept && !this.#faults.has(name)) return
    event.stopPropagation()
    this.#faults.delete(name)
    input.value = kept
    input.select()
    this.#host.requestUpdate()
  }
}

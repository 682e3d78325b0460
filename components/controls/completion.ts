import { html, nothing, type TemplateResult } from 'lit'

/** What is completed in a field. */
export interface Completing {
  readonly label: string // of the list, for those who listen
  readonly most: number // names that are offered at once
  /** What is being typed of a name, and where it begins; undefined where the field holds none. */
  readonly wordIn: (field: HTMLInputElement) => { readonly text: string; readonly from: number } | undefined
}

/** The names that go on from what is being typed in a field, and the one of them that is chosen. */
export class Completion {
  names: readonly string[] = [] // none: the list is closed
  at = -1 // of the chosen one; -1 for none
  of = '' // what the field is of
  #from = 0 // where the name being typed begins

  /** `changed` is called when the list is to be drawn anew. */
  constructor(
    private readonly changed: () => void,
    private readonly how: Completing,
  ) {}

  /** Looks at a field after something was typed in it. */
  look(field: HTMLInputElement, of: string, all: readonly string[]): void {
    const typed = this.how.wordIn(field)
    const wanted = typed?.text.toLowerCase() ?? ''
    const begins = (name: string) => name.toLowerCase().startsWith(wanted)
    const meets = (name: string) =>
      begins(name) || ['_', '.', ' '].some(gap => name.toLowerCase().includes(`${gap}${wanted}`))
    const found = wanted ? all.filter(name => name.toLowerCase() !== wanted && meets(name)) : []
    // What begins so stands first.
    const [first, rest] = [found.filter(begins), found.filter(name => !begins(name))]
    this.#show([...first, ...rest].slice(0, this.how.most), of, typed?.from ?? 0)
  }

  /** Offers all of them, in a field where nothing is typed yet. */
  offer(of: string, all: readonly string[]): void {
    this.#show(all, of, 0)
  }

  #show(names: readonly string[], of: string, from: number): void {
    this.names = names
    this.of = of
    this.#from = from
    this.at = -1
    this.changed()
  }

  close(): void {
    if (!this.names.length) return
    this.names = []
    this.at = -1
    this.changed()
  }

  /** Takes a key that is the list's; false when it is the field's own. */
  key(event: KeyboardEvent, field: HTMLInputElement): boolean {
    const { length } = this.names
    if (!length) return false
    if (event.key === 'ArrowDown') this.at = this.at + 1 < length ? this.at + 1 : 0
    else if (event.key === 'ArrowUp') this.at = this.at > 0 ? this.at - 1 : length - 1
    else if (event.key === 'Escape') this.close()
    else if ((event.key === 'Enter' || event.key === 'Tab') && this.at >= 0) this.take(this.at, field)
    else return false
    this.changed()
    return true
  }

  /** Writes a name in place of what was typed of it. */
  take(at: number, field: HTMLInputElement): void {
    const end = field.selectionStart ?? field.value.length
    field.setRangeText(this.names[at]!, this.#from, end, 'end')
    this.close()
  }

  /** The list, to stand beside the field in the same shadow root. */
  list(of: string, field: () => HTMLInputElement | null): TemplateResult | typeof nothing {
    if (of !== this.of || !this.names.length) return nothing
    const take = (event: Event, at: number) => {
      event.preventDefault() // the field keeps the focus
      const there = field()
      if (there) this.take(at, there)
    }
    return html`<ul class="names" role="listbox" id="names" aria-label=${this.how.label}>
      ${this.names.map(
        (name, at) => html`<li
          role="option"
          id=${`name-${at}`}
          aria-selected=${at === this.at}
          @pointerdown=${(event: Event) => take(event, at)}
        >${name}</li>`,
      )}
    </ul>`
  }
}

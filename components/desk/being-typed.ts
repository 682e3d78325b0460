import type { TypedText } from '../../src/storage/index.js'
import { wish } from '../base/events.js'
import { goTo } from '../base/hash.js'
import { focusedIn } from '../typed/focused-in.js'

type Field = HTMLInputElement | HTMLTextAreaElement

type Place = Omit<TypedText, 'text'>

/** A text that stands in its field again, or one whose field is no more. */
export interface Restored {
  readonly text: TypedText
  readonly label: string | undefined // of the field; undefined where there is none
}

/** What the page tells, and is told, of what is being typed. */
export interface TypingPage {
  readonly page: HTMLElement // all fields are in it
  readonly open: () => string // id of the open formula
  readonly told: (texts: readonly TypedText[]) => void // all that stands in fields and is not entered
}

/** Kinds of fields that are of no formula. */
const ofNone = new Set(['bake', 'workbook', 'shelf', 'ingredient', 'pasted'])
const holdersOnDay = ['tb-day', 'tb-by-clock', 'tb-day-breads', 'tb-water', 'tb-day-feedings'] // of fields that are not always there
const longest = 100 // steps of waiting for a field to be there, 50 milliseconds each

/**
 * What is being typed, in whatever field of the page: one with `data-typed` whose value is not its default value, which is
 * what is kept. It is entered or let go when the two are the same again, or the field is gone.
 */
export class BeingTyped {
  readonly #of: TypingPage
  readonly #fields = new Map<Field, Place>()
  readonly #since = new Set<string>() // where something was typed since the page began, entered or not
  readonly #again = new Set<Field>() // filled here, so that the browser sees no change to tell of
  #waiting: readonly TypedText[] // whose field is not there yet, or not any more

  /** `left`: what stood in fields when the page went away; to be put back by `restore`. `early`: what was typed in since. */
  constructor(of: TypingPage, left: readonly TypedText[], early: Iterable<EventTarget>, signal: AbortSignal) {
    this.#of = of
    this.#waiting = left
    for (const field of early) if (isField(field)) this.#since.add(nameOf(this.#placeOf(field)))
    const { page } = of
    page.addEventListener('input', this.#input, { signal })
    page.addEventListener('change', event => this.#again.delete(event.composedPath()[0] as Field), { signal })
    page.addEventListener('focusout', event => this.#enter(event.composedPath()[0]), { signal })
    page.addEventListener('keydown', this.#key, { signal })
    page.addEventListener('click', this.#soon, { signal })
    this.#typed(focusedIn(page)) // before anything listened
  }

  /** To be called whenever the page was updated. */
  check(): void {
    for (const field of this.#fields.keys())
      if (!field.isConnected || field.value === field.defaultValue) this.#fields.delete(field)
    for (const field of this.#again) if (!this.#fields.has(field)) this.#again.delete(field)
    this.#of.told([...this.#waiting, ...this.#texts()])
  }

  /**
   * Puts what was left back into the fields of the open formula or day and into those of none. A field that was typed in since
   * stays as it is, also where that is entered by now, and what was left of it is told once, as of one that is no more: kept on,
   * it would come back over what is entered there.
   */
  async restore(): Promise<readonly Restored[]> {
    const restored: Restored[] = []
    for (const text of this.#waiting.toReversed()) {
      if (!this.#isHere(text)) continue
      const field = await this.#reveal(text.field)
      const isFree = field?.value === field?.defaultValue && !this.#since.has(nameOf(text))
      const free = isFree ? field : undefined
      if (free) this.#fill(free, text)
      else if (field) this.#supersede(field, text)
      restored.push({ text, label: free && labelOf(free) })
    }
    this.check()
    return restored
  }

  /** What waits for another formula or day to be opened. */
  get elsewhere(): readonly TypedText[] {
    return this.#waiting.filter(text => !this.#isHere(text))
  }

  #isHere({ formula, field }: TypedText): boolean {
    const [, day] = field.startsWith('day ') ? (/^#days\/?(.*)$/.exec(location.hash) ?? []) : []
    if (field.startsWith('day ')) return day === '' || day === formula
    if (field.startsWith('order ')) return location.hash.endsWith(`/${formula}`) // of the day, or of what to order for it
    return formula === '' || formula === this.#of.open()
  }

  /** Lets go of a text that has no field. */
  forget(text: TypedText): void {
    this.#waiting = this.#waiting.filter(other => other !== text)
    this.check()
  }

  #texts(): TypedText[] {
    return [...this.#fields].map(([field, place]) => ({ ...place, text: field.value }))
  }

  #placeOf(target: Field): Place {
    const field = target.dataset.typed!
    const [kind, day] = field.split(' ')
    const formula = ofNone.has(kind!) ? '' : kind === 'day' || kind === 'order' ? day! : this.#of.open()
    return { formula, field }
  }

  readonly #input = (event: Event): void => {
    const [target] = event.composedPath()
    if (isField(target)) this.#since.add(nameOf(this.#placeOf(target)))
    this.#typed(target)
  }

  #typed(target: EventTarget | null | undefined): void {
    if (!isField(target) || target.readOnly) return
    if (!this.#fields.has(target)) this.#fields.set(target, this.#placeOf(target))
    this.check()
  }

  readonly #soon = (): void => void setTimeout(() => this.check())

  /** A field that was filled here is entered like one that was typed in: the browser tells only of that. */
  #enter(target: EventTarget | undefined): void {
    if (isField(target) && this.#again.delete(target) && target.value !== target.defaultValue)
      target.dispatchEvent(new Event('change', { bubbles: true }))
    this.#soon()
  }

  readonly #key = (event: KeyboardEvent): void => {
    const [target] = event.composedPath()
    if (event.key === 'Enter' && target instanceof HTMLInputElement && !target.form && !event.isComposing)
      setTimeout(() => this.#enter(target))
    this.#soon()
  }

  #supersede(field: Field, text: TypedText): void {
    this.#waiting = this.#waiting.filter(other => other !== text)
    this.#typed(field)
  }

  #fill(field: Field, text: TypedText): void {
    this.#waiting = this.#waiting.filter(other => other !== text)
    if (field.value === text.text) return
    field.value = text.text
    this.#again.add(field)
    field.dispatchEvent(new Event('input', { bubbles: true, composed: true }))
    const at = focusedIn(this.#of.page)
    if (isField(at) && at !== field && at.value !== at.defaultValue) return // somebody types there, or did last
    field.focus({ preventScroll: true })
    field.setSelectionRange(text.text.length, text.text.length) // to go on, not to type over it
    field.scrollIntoView({ block: 'nearest' })
  }

  /** The field of that name, opened where it lies in something closed. */
  async #reveal(name: string): Promise<Field | undefined> {
    const { page } = this.#of
    const [kind, second, ...rest] = name.split(' ')
    for (let step = 0; step < longest; step++) {
      const field = findIn(page, `[data-typed="${CSS.escape(name)}"]`)
      if (isField(field)) return field
      if (step === 0) this.#openFor(kind!, second ?? '', rest.join(' '))
      const holders = { batch: ['tb-batch-fields'], day: holdersOnDay }[kind!] ?? []
      for (const holder of holders) findIn<OpensField>(page, holder)?.openField?.(second!, rest.join(' '))
      // What lies beneath the sheet is fetched when it is in sight.
      const beneath = { jotting: 'tb-jottings', step: 'tb-method' }[kind!]
      if (beneath) findIn(page, beneath)?.scrollIntoView({ block: 'nearest' })
      await new Promise(resolve => setTimeout(resolve, 50))
    }
    return undefined
  }

  #openFor(kind: string, second: string, rest: string): void {
    const { page } = this.#of
    if (kind === 'pasted') wish(page, { want: 'bring-in' })
    else if (kind === 'ingredient') wish(page, { want: 'define', ingredient: rest })
    else if (kind === 'day') goTo(`days/${second}`)
    else if (kind === 'order') goTo(`order/${second}`)
    else if (kind === 'bake') goTo(`bench/bake/${second}`)
    else if (kind === 'cell' || kind === 'shelf')
      findIn<OpensField>(page, kind === 'cell' ? 'tb-grid' : 'tb-shelf')?.openField?.(second, rest)
    else {
      const opens =
        kind === 'hold' ? `[data-hold="${CSS.escape(second)}"]` : `[data-opens="${CSS.escape(kind)}"]`
      const opener = findIn(page, opens)
      ;(opener?.shadowRoot?.querySelector('button') ?? opener)?.click()
    }
  }
}

/** An element with fields that are there only while they are typed in. */
interface OpensField extends HTMLElement {
  openField?(name: string, of: string): void
}

const nameOf = ({ formula, field }: Place): string => `${formula} ${field}`

const isField = (target: EventTarget | null | undefined): target is Field =>
  (target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement) &&
  Boolean(target.dataset.typed)

const labelOf = (field: Field): string =>
  field.getAttribute('aria-label') ?? field.labels?.[0]?.textContent?.trim() ?? ''

/** The first element that matches, through all shadow roots. */
function findIn<E extends HTMLElement = HTMLElement>(root: ParentNode, selector: string): E | undefined {
  const here = root.querySelector<E>(selector)
  if (here) return here
  const shadow = root instanceof Element ? root.shadowRoot : null
  for (const inner of [...(shadow ? [shadow] : []), ...root.querySelectorAll('*')]) {
    const next = inner instanceof Element ? inner.shadowRoot : inner
    const found = next && findIn<E>(next, selector)
    if (found) return found
  }
  return undefined
}

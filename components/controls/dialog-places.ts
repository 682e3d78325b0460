import { newId } from '../../src/dough/document/formula.js'
import type { Wish } from '../base/events.js'
import type { OverPage } from './over-page.js'

/** A dialog that is wanted, with what it is to show. */
export type DialogWish =
  | Extract<
      Wish,
      {
        readonly want:
          | 'larder'
          | 'cleared'
          | 'help'
          | 'bring-in'
          | 'send-out'
          | 'beside'
          | 'card'
          | 'label'
          | 'handout'
          | 'define'
      }
    >
  | {
      readonly want: 'bring-in'
      readonly file?: File
      readonly text?: string
      readonly link?: string // fragment of the address
      readonly open?: string | undefined // id of the formula that is open beneath
    }

/** Of an entry of the browser's history that is the place of something over the page. */
interface Mark {
  readonly over: string // its own, unlike all others
  readonly wish?: DialogWish // by which it is opened again; left out: it is not
  readonly spent?: true // it was closed here, and the page beneath is in sight
}

interface Open extends OverPage {
  readonly element: EventTarget
  readonly mark: Mark
  readonly address: string
}

const markHere = (): Mark | undefined =>
  (history.state as Partial<Mark> | null)?.over !== undefined ? (history.state as Mark) : undefined

/** What can be kept with an entry: a file or a text is not brought in twice. */
function wishToKeep(wish: DialogWish | undefined): DialogWish | undefined {
  if (wish?.want !== 'bring-in') return wish
  return 'link' in wish ? undefined : { want: 'bring-in' }
}

/**
 * Dialogs and printed pages as places in the browser's history: one that opens has an entry, Back leaves it as Escape does
 * and changes nothing of what is beneath, Forward and a page loaded anew open it again, fresh.
 *
 * One that is closed otherwise leaves its entry where it is, spent: the next one takes it, and so does the next place that is
 * gone to (`goTo`). Going back from it at once would be a journey under way, into which clicks and reloads fall.
 */
export class DialogPlaces {
  readonly #show: (wish: DialogWish) => Promise<void>
  #open: readonly Open[] = [] // the last lies over the others
  #wish: DialogWish | undefined // by which one is being opened
  #last: { readonly mark: Mark | undefined; readonly address: string } // where the history was last

  constructor(show: (wish: DialogWish) => Promise<void>, signal: AbortSignal) {
    this.#show = show
    this.#last = this.#here()
    addEventListener('tb-over', this.#told as EventListener, { signal })
    addEventListener('popstate', this.#moved, { signal })
    addEventListener('hashchange', () => this.#look(), { signal })
  }

  #here() {
    return { mark: markHere(), address: location.href }
  }

  #look(): void {
    this.#last = this.#here()
  }

  isOpen(element: EventTarget | null): boolean {
    return this.#open.some(open => open.element === element)
  }

  /** Opens what an entry is the place of, when the page begins there. */
  async resume(): Promise<void> {
    const mark = markHere()
    if (mark && !mark.spent && this.#open.length === 0) await this.#openAgain(mark)
  }

  /** Has `open` open what is wished, which tells of it while it does. */
  opening(wish: DialogWish, open: () => void): void {
    this.#wish = wish
    open()
    this.#wish = undefined
  }

  readonly #told = (event: CustomEvent<OverPage | null>): void => {
    const [element] = event.composedPath()
    if (event.detail) this.#opened(element!, event.detail)
    else this.#closed(element!)
    this.#look()
  }

  #opened(element: EventTarget, { leave }: OverPage): void {
    if (this.isOpen(element)) return
    const here = markHere()
    const isAgain = here && !here.spent && !this.#open.some(({ mark }) => mark.over === here.over)
    const wish = wishToKeep(this.#wish)
    const mark: Mark = isAgain ? here : { over: newId(), ...(wish && { wish }) }
    const isLink = this.#wish?.want === 'bring-in' && 'link' in this.#wish // its address is its place
    if (!isAgain) {
      if (isLink || here?.spent) history.replaceState(mark, '')
      else history.pushState(mark, '')
    }
    this.#open = [...this.#open, { element, leave, mark, address: location.href }]
  }

  #closed(element: EventTarget): void {
    const closed = this.#open.find(open => open.element === element)
    this.#open = this.#open.filter(open => open !== closed)
    if (closed && markHere()?.over === closed.mark.over) this.#spend(closed.mark)
  }

  #spend(mark: Mark): void {
    history.replaceState({ ...mark, spent: true }, '')
  }

  readonly #moved = (): void => {
    const before = this.#last
    this.#look()
    const { mark, address } = this.#last
    if (before.mark?.spent && mark?.over !== before.mark.over && address === before.address) {
      history.back() // from where nothing is to be seen
      return
    }
    for (let open = this.#open.at(-1); open && open.mark.over !== mark?.over; open = this.#open.at(-1)) {
      if (open.leave()) continue
      // What was typed is in it: there it stays, and so does the history.
      if (address === open.address) history.forward()
      else history.pushState(open.mark, '', open.address)
      this.#look()
      return
    }
    if (mark && !mark.spent && this.#open.length === 0) void this.#openAgain(mark)
  }

  async #openAgain(mark: Mark): Promise<void> {
    if (mark.wish) await this.#show(mark.wish).catch(() => {})
    const isOpen = this.#open.some(open => open.mark.over === mark.over)
    if (!isOpen && markHere()?.over === mark.over) this.#spend(mark)
    this.#look()
  }
}

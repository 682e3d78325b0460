import type { ReactiveController, ReactiveControllerHost } from 'lit'

/** A step under the pointer, and before which place of its method it would go: `count` for the end. */
export interface Dragged {
  readonly step: string
  readonly from: number
  readonly to: number
}

const least = 4 // px that a press has to move before it is a drag

/** Moves a step of a list by its handle: a mark shows where it would go, Escape leaves all as it was. */
export class StepDrag implements ReactiveController {
  dragged: Dragged | undefined
  #begun: { readonly pointer: number; readonly y: number; readonly item: HTMLElement } | undefined

  /** `drop` is called when a step was let go elsewhere than it stands. */
  constructor(
    private readonly host: ReactiveControllerHost,
    private readonly drop: (step: string, from: number, to: number) => void,
  ) {
    host.addController(this)
  }

  hostDisconnected(): void {
    this.#end()
  }

  /** For the handle's `pointerdown`. */
  begin = (event: PointerEvent): void => {
    const handle = event.currentTarget as HTMLElement
    const item = handle.closest('li')
    if (event.button !== 0 || !item) return
    event.preventDefault() // no text is selected on the way
    this.#begun = { pointer: event.pointerId, y: event.clientY, item }
    handle.setPointerCapture(event.pointerId)
    document.addEventListener('keydown', this.#key, true)
  }

  /** For its `pointermove`. */
  move = (event: PointerEvent): void => {
    const { pointer, y, item } = this.#begun ?? {}
    if (pointer !== event.pointerId || !item || (!this.dragged && Math.abs(event.clientY - y!) < least))
      return
    const items = [...item.parentElement!.querySelectorAll<HTMLElement>(':scope > li[data-step]')].filter(
      ({ dataset }) => dataset.step,
    )
    const from = items.indexOf(item)
    const before = items.findIndex(one => event.clientY < middle(one))
    const to = before < 0 ? items.length : before
    if (this.dragged?.to !== to) {
      this.dragged = { step: item.dataset.step!, from, to }
      this.host.requestUpdate()
    }
    items[Math.min(to, items.length - 1)]!.scrollIntoView({ block: 'nearest' })
  }

  /** For its `pointerup`. */
  end = (event: PointerEvent): void => {
    if (this.#begun?.pointer !== event.pointerId) return
    const { dragged } = this
    this.#end()
    if (!dragged) return
    const { step, from, to } = dragged
    const place = to > from ? to - 1 : to // without the step itself
    if (place !== from) this.drop(step, from, place)
  }

  /** For its `pointercancel`. */
  cancel = (): void => this.#end()

  #key = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return
    event.preventDefault()
    event.stopPropagation()
    this.#end()
  }

  #end(): void {
    this.#begun = undefined
    document.removeEventListener('keydown', this.#key, true)
    if (!this.dragged) return
    this.dragged = undefined
    this.host.requestUpdate()
  }
}

function middle(item: HTMLElement): number {
  const { top, height } = item.getBoundingClientRect()
  return top + height / 2
}

import { afterPaint } from './after-paint.js'
import { SheetElement } from './base-element.js'

/** One that was a single stop of the Tab key until it was fetched: where the focus is there, it goes to the first field. */
export class FetchedElement extends SheetElement {
  protected override firstUpdated(): void {
    const isHere = this.matches(':focus')
    for (const name of ['tabindex', 'role', 'aria-label']) this.removeAttribute(name)
    if (isHere) this.renderRoot.querySelector('input')?.focus()
  }
}

/** One that renders when what stands before it has been painted: it says more of it, and can follow. */
export class LateElement extends SheetElement {
  protected override async scheduleUpdate(): Promise<void> {
    await afterPaint()
    super.scheduleUpdate()
  }
}

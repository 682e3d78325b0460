import { afterPaint } from './after-paint.js'
import { SheetElement } from './elements.js'

/** An element that renders when what stands before it has been painted: it says more of it, and can follow. */
export class LateElement extends SheetElement {
  protected override async scheduleUpdate(): Promise<void> {
    await afterPaint()
    super.scheduleUpdate()
  }
}

import { LitElement } from 'lit'
import { afterPaint } from './after-paint.js'

/** An element that renders when what stands before it has been painted: it says more of it, and can follow. */
export class LateElement extends LitElement {
  protected override async scheduleUpdate(): Promise<void> {
    await afterPaint()
    super.scheduleUpdate()
  }
}

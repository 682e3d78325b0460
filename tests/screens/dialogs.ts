import { emulateMedia, sendMouse, setViewport } from '@web/test-runner-commands'
import type { NumberStyle } from '../../components/base/numbers'
import type { TbDialog } from '../../components/controls/tb-dialog'
import type { Workbook } from '../../src/dough/document/workbook'
import { larderWith } from '../../src/dough/larder/usual-larder'
import { ok, waitUntil } from '../assert'
import { Around, english, passesAxe, passesAxeInBoth, textOf } from './mount'

/** A dialog on the page, beside the button it was opened from. */
export class Opened<D extends TbDialog> {
  readonly around: Around
  readonly opener = document.createElement('button')

  constructor(
    readonly dialog: D,
    workbook: Partial<Workbook> = {},
    numbers: NumberStyle = english,
  ) {
    this.around = new Around(workbook)
    this.opener.textContent = 'Open'
    document.body.append(this.opener)
    const give = (now: Workbook) =>
      Object.assign(this.dialog, { workbook: now, larder: larderWith(now.larder), numbers })
    this.around.onEdit = give
    give(this.around.history.workbook)
    this.around.hold(this.dialog)
    this.opener.focus()
  }

  /** Everything in the dialog's own shadow root. */
  get root(): ShadowRoot {
    return this.dialog.shadowRoot!
  }

  get isOpen(): boolean {
    return this.root.querySelector('dialog')?.open ?? false
  }

  async whenOpen(): Promise<void> {
    await waitUntil(() => this.isOpen, 'the dialog is open')
  }

  /** Open no more, and the focus back where it was. */
  async whenClosed(): Promise<void> {
    await waitUntil(() => !this.isOpen, 'the dialog is closed')
    ok(document.activeElement === this.opener, 'the focus is back on the opener')
  }

  /** The first element that matches and has the words in it, in the dialog or the form inside it. */
  find<E extends HTMLElement = HTMLElement>(selector: string, words = ''): E {
    const roots = [this.root, ...[...this.root.querySelectorAll('*')].flatMap(e => e.shadowRoot ?? [])]
    for (const root of roots) {
      const found = [...root.querySelectorAll<E>(selector)].find(e => textOf(e).includes(words))
      if (found) return found
    }
    throw new Error(`nothing here is ${selector} with “${words}”`)
  }

  /** Brings an element into view and presses the mouse on it. */
  async click(selector: string, words = ''): Promise<void> {
    const element = this.find(selector, words)
    // What is fetched late may move it from under the pointer; then it is clicked where it is now.
    let hit = false
    const look = (event: Event) => {
      hit = event.composedPath().includes(element)
    }
    addEventListener('pointerdown', look, true)
    for (let tries = 0; !hit && tries < 3; tries++) {
      element.scrollIntoView({ block: 'center' })
      const { left, top, width, height } = element.getBoundingClientRect()
      await sendMouse({
        type: 'click',
        position: [Math.round(left + Math.min(width / 2, 40)), Math.round(top + height / 2)],
      })
    }
    removeEventListener('pointerdown', look, true)
    await this.dialog.updateComplete
  }

  remove(): void {
    this.dialog.remove()
    this.opener.remove()
  }
}

export const sizes = [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
] as const

/**
 * Nothing sticks out to the side and every target is 24 px, at both sizes; nor does axe find anything there, in one
 * engine: colours in the dark, which do not go by the size, at the first.
 */
export async function holdsUp(opened: Opened<TbDialog>): Promise<void> {
  for (const size of sizes) {
    await setViewport(size)
    if (size === sizes[0]) await passesAxeInBoth(opened.dialog)
    else await passesAxe(opened.dialog)
    const at = `${size.width} px wide`
    const body = opened.find('.body')
    ok(body.scrollWidth <= body.clientWidth, `nothing sticks out, ${at}`)
    ok(opened.find('dialog').getBoundingClientRect().right <= innerWidth, `the dialog fits, ${at}`)
    const form = opened.root.querySelector('tb-ingredient')?.shadowRoot
    const targets = [opened.root, ...(form ? [form] : [])].flatMap(root => [
      ...root.querySelectorAll<HTMLElement>('button:not(.unseen), a, select, input, summary, textarea'),
    ])
    for (const target of targets) {
      const label = target instanceof HTMLInputElement ? target.closest('label') : null
      const { width, height } = (label ?? target).getBoundingClientRect()
      ok(width >= 24 && height >= 24, `${target.localName} ${textOf(target)} is big enough, ${at}`)
    }
  }
  await emulateMedia({ colorScheme: 'light' })
  await setViewport(sizes[0])
}

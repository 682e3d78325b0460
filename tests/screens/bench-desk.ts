import '../../components/bench/tb-bench'
import type { TbBench } from '../../components/bench/tb-bench'
import type { Bake } from '../../src/day/bench/bake'
import { bakesIn } from '../../src/day/bench/bake-data'
import type { Workbook } from '../../src/dough/document/workbook'
import { larderWith } from '../../src/dough/larder/usual-larder'
import { ok, waitUntil } from '../assert'
import { Around, dressPage, english, textOf } from './mount'

/** A bench on the page, as the app has it. */
export class BenchOpened {
  readonly around: Around
  readonly bench: TbBench = document.createElement('tb-bench')

  constructor(workbook: Partial<Workbook>, key: string) {
    dressPage()
    this.around = new Around(workbook)
    this.bench.style.cssText = '--edge: 16px; --head: 57px'
    const give = (now: Workbook) =>
      Object.assign(this.bench, {
        workbook: now,
        larder: larderWith(now.larder),
        numbers: english,
        undoLabel: this.around.history.undoLabel,
        key,
      })
    this.around.history.subscribe(({ workbook: now }) => give(now))
    this.bench.addEventListener('tb-wish', event => {
      if ((event as CustomEvent<{ want: string }>).detail.want === 'undo') this.around.history.undo()
    })
    give(this.around.history.workbook)
    this.around.hold(this.bench)
  }

  get bakes(): readonly Bake[] {
    return bakesIn(this.around.history.workbook)
  }

  /** All that match and are shown, through all shadow roots, with a text or a name in them. */
  all<E extends HTMLElement>(selector: string, words: string | RegExp = ''): E[] {
    const found: E[] = []
    const walk = (root: ParentNode): void => {
      for (const element of root.querySelectorAll<E>('*')) {
        const said = [textOf(element), element.getAttribute('aria-label') ?? '']
        if (
          element.matches(selector) &&
          element.checkVisibility({ visibilityProperty: true }) &&
          said.some(s => (typeof words === 'string' ? s.includes(words) : words.test(s)))
        )
          found.push(element)
        if (element.shadowRoot) walk(element.shadowRoot)
      }
    }
    walk(this.bench.shadowRoot!)
    return found
  }

  find<E extends HTMLElement = HTMLElement>(selector: string, words: string | RegExp = ''): Promise<E> {
    return waitUntil(() => this.all<E>(selector, words)[0], `there is ${selector} saying ${words}`)
  }

  /** Whether an element is wholly in the window. */
  isInSight(element: Element): void {
    const { top, bottom } = element.getBoundingClientRect()
    ok(
      top >= 0 && bottom <= innerHeight + 0.5,
      `${textOf(element)} lies from ${top} to ${bottom} of ${innerHeight}`,
    )
  }
}

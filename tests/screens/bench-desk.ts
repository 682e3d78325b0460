import '../../components/bench/tb-bench'
import type { TbBench } from '../../components/bench/tb-bench'
import type { Bake } from '../../src/day/bench/bake'
import { bakesIn } from '../../src/day/bench/bake-data'
import type { Workbook } from '../../src/dough/document/workbook'
import { ok } from '../assert'
import { textOf } from './mount'
import { Opened } from './opened'

/** A bench on the page, as the app has it. */
export class BenchOpened extends Opened<TbBench> {
  constructor(workbook: Partial<Workbook>, key: string) {
    super(document.createElement('tb-bench'), workbook, ({ history }) => ({
      undoLabel: history.undoLabel,
      key,
    }))
    this.element.addEventListener('tb-wish', event => {
      if ((event as CustomEvent<{ want: string }>).detail.want === 'undo') this.around.history.undo()
    })
  }

  get bench(): TbBench {
    return this.element
  }

  get bakes(): readonly Bake[] {
    return bakesIn(this.around.history.workbook)
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

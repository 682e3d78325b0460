import { toldApart } from '../../components/bakes/bake-chart'
import '../../components/bakes/tb-bake'
import '../../components/bakes/tb-bakes-of'
import type { Bake } from '../../src/day/bench/bake'
import { bakesIn } from '../../src/day/bench/bake-data'
import type { Unread } from '../../src/dough/document/workbook'
import { larderWith } from '../../src/dough/larder/usual-larder'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { workedWheat } from '../day/worked-bread'
import { itOnce } from '../once'
import { Around, dressPage, english, passesAxeInBoth, textOf } from './mount'

const wheat = workedWheat()
const dough = wheat.stages.at(-1)!
const moment = (does: string) => `b ${dough.id} ${dough.method!.find(step => step.does === does)!.id}`

/** A bake of a day of December, whose dough was so warm after mixing and whose bulk took so many minutes. */
function bake(day: number, celsius: number, minutes: number): Bake {
  const at = (after: number) => new Date(Date.UTC(2026, 11, day, 8) + after * 60_000).toISOString()
  return {
    id: `bake-${day}`,
    at: at(0),
    name: 'Mill wheat',
    formula: wheat,
    bread: 'b',
    zone: 'UTC',
    moments: [
      { moment: moment('Mix'), planned: at(0), at: at(5) },
      { moment: moment('Bulk'), at: at(60) },
      { moment: moment('Divide and shape'), at: at(60 + minutes) },
    ],
    weighed: [],
    figures: [{ moment: moment('Mix'), what: 'dough', value: celsius }],
    timers: [],
    finished: at(900),
    note: '',
    verdict: day === 2 ? 'Open, a little sour.' : '',
    tastes: { open: 4 },
  }
}

const workbook = {
  formulas: [wheat],
  bakes: [bake(2, 24, 220), bake(9, 25.5, 240), bake(16, 25, 260)] as readonly unknown[] as readonly Unread[],
}

describe('Bakes of a bread', () => {
  const around = new Around(workbook)
  const all = { workbook: around.history.workbook, larder: larderWith([]), numbers: english }

  const held: HTMLElement[] = []

  before(dressPage)
  after(() => {
    for (const page of held) page.remove()
  })

  it('a measurement over them is drawn, with its middle and range, and stands as a table', async () => {
    const page = document.createElement('tb-bakes-of')
    Object.assign(page, all, { formula: wheat.id })
    held.push(around.hold(page))
    const find = (selector: string) => page.shadowRoot!.querySelector<HTMLElement>(selector)
    const select = await waitUntil(() => find('select') as HTMLSelectElement | null, 'one can be chosen')
    const bulk = [...select.options].find(option => /^Bulk took/.test(option.text))!
    select.value = bulk.value
    select.dispatchEvent(new Event('change'))
    await page.updateComplete
    match(
      find('svg')!.getAttribute('aria-label')!,
      /^Bulk took: Final dough over 3 bakes, from 3 h 40 to 4 h 20$/,
    )
    equal(page.shadowRoot!.querySelectorAll('circle').length, 3)
    const rows = [...page.shadowRoot!.querySelectorAll('tbody tr')].map(textOf)
    equal(rows.length, 3)
    match(rows[0]!, /December 16, 8:00 4 h 20$/)
    match(textOf(find('svg ~ p')), /middle is 4 h.*3 h 36 to 4 h 24/) // of three the range is a tenth either way
  })

  it('no two numbers beside an axis read the same', () => {
    deepEqual(
      toldApart([0.001, 0.004, 0.008, 0.012], value => value.toFixed(2)),
      [0.001, 0.008],
    )
  })

  itOnce('the page of all and the page of one pass axe', async () => {
    await passesAxeInBoth(held[0]!)
    held[0]!.remove() // a page has one main part
    const page = document.createElement('tb-bake')
    Object.assign(page, all, { bake: bakesIn(all.workbook)[0] })
    held.push(around.hold(page))
    await page.updateComplete
    ok(page.shadowRoot!.querySelector('tb-photographs'))
    await passesAxeInBoth(page)
  })
})

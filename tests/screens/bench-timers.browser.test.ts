import { setViewport } from '@web/test-runner-commands'
import { isoOf } from '../../src/day/bench/bake'
import { benchOf } from '../../src/day/bench/bench-day'
import { setTimer } from '../../src/day/bench/bench-edits'
import { applyChanges, emptyWorkbook, type Workbook } from '../../src/dough/document/workbook'
import { equal, match, ok, waitUntil } from '../assert'
import { workedWheat } from '../day/worked-bread'
import { BenchOpened } from './bench-desk'
import { passesAxeInBoth, textOf } from './mount'

const formula = workedWheat()
const now = () => Date.now() / 60_000

/** A bench with timers that were set so many minutes ago, each for so many. */
function withTimers(timers: readonly (readonly [name: string, ago: number, minutes: number])[]): Workbook {
  let workbook: Workbook = { ...emptyWorkbook, formulas: [formula] }
  for (const [name, ago, minutes] of timers) {
    const bench = benchOf(workbook, formula.id, now() - ago, 'UTC')!
    const set = setTimer(workbook, { bench, now: now() - ago, planned: new Map() }, name, minutes)
    workbook = applyChanges(workbook, set.changes).workbook
  }
  return workbook
}

describe('Timers at the bench', () => {
  let open: BenchOpened

  const within = (part: string) => (selector: string) => [
    ...open.bench.shadowRoot!.querySelector(part)!.shadowRoot!.querySelectorAll<HTMLElement>(selector),
  ]
  const inBar = within('tb-bench-bar')
  const inList = within('tb-bench-timers')

  before(async () => {
    await setViewport({ width: 390, height: 844 })
    open = new BenchOpened(
      withTimers([
        ['Kettle', 17.5, 10],
        ['Oven', 16, 14],
        ['Soaker', 1, 90],
        ['Tea', 1, 4],
      ]),
      formula.id,
    )
    await open.find('.tick')
  })
  after(() => open.bench.remove())

  it('that have run out are told once, with since when', async () => {
    const alert = await open.find('[role=alert]', 'Kettle')
    const { ends } = open.bakes[0]!.timers.find(({ name }) => name === 'Kettle')!
    const clock = `${Number(ends.slice(11, 13))}:${ends.slice(14, 16)}`
    match(textOf(alert), new RegExp(`Timer over: Kettle, since ${clock}`))
    match(textOf(inBar('.over')[0]), /over for 7 min/)
    ok(!/over for/.test(textOf(alert)), 'what changes every minute is not told again')
  })

  it('and those that run are in sight wherever the page is scrolled to, in large figures', async () => {
    for (const top of [0, 400, 10_000]) {
      scrollTo(0, top)
      for (const part of [...inBar('.over'), ...inBar('li')]) open.isInSight(part)
    }
    equal(
      inBar('li')
        .map(li => textOf(li).replace(/\d.*$/, '…'))
        .join(' | '),
      'Tea… | Soaker…',
    )
    for (const figures of [...inBar('li b'), ...inList('li:not(.over) b')])
      ok(Number.parseFloat(getComputedStyle(figures).fontSize) >= 32, textOf(figures))
  })

  it('each has one large button to stop it, and no two of them touch', async () => {
    const bar = inBar('button')
    equal(bar.length, 2)
    const all = [bar, inList('button')]
    for (const buttons of all) {
      const places = buttons.map(button => button.getBoundingClientRect())
      for (const [i, { height, bottom }] of places.entries()) {
        ok(height >= 56, `${height} px`)
        const next = places[i + 1]
        if (next) ok(next.top - bottom >= 12, `${next.top - bottom} px between`)
      }
    }
    await passesAxeInBoth(open.bench)
    bar[0]!.click()
    await waitUntil(() => inBar('.over').length === 1, 'it is stopped')
    ok(!open.bakes[0]!.timers.some(({ name }) => name === 'Kettle'), 'and gone')
    ok(
      open.bakes[0]!.timers.every(({ ends }) => isoOf(Date.parse(ends) / 60_000) === ends),
      'the others are kept',
    )
  })
})

import { setViewport } from '@web/test-runner-commands'
import { isoOf } from '../../src/day/bench/bake'
import { equal, match, ok, waitUntil } from '../assert'
import { workedWheat } from '../day/worked-bread'
import { BenchOpened } from './bench-desk'
import { passesAxeInBoth, textOf } from './mount'
import { benchWithTimers } from './timers'

const formula = workedWheat()
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
      benchWithTimers(formula, [
        ['Kettle', 17.5, 10],
        ['Oven', 16, 14],
        ['Soaker', 1, 90],
        ['Tea', 1, 4],
      ]),
      formula.id,
    )
    open.bench.style.marginTop = '57px' // beneath the head of the page, which is not here
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
    const named = () =>
      inBar('li')
        .map(li => textOf(li).replace(/\d.*$/, '…'))
        .join(' | ')
    for (const top of [0, 400, 10_000]) {
      scrollTo(0, top)
      await waitUntil(() => named() === 'Tea… | Soaker…', 'the bar tells what runs')
      for (const part of [...inBar('.over'), ...inBar('li')]) open.isInSight(part)
    }
    for (const figures of [...inBar('li b'), ...inList('li:not(.over) b')])
      ok(Number.parseFloat(getComputedStyle(figures).fontSize) >= 32, textOf(figures))
  })

  it('but are not told twice while their list is in sight, also beside it on a wide screen', async () => {
    for (const [width, height, top] of [
      [
        390,
        844,
        open.bench.shadowRoot!.querySelector('tb-bench-timers')!.getBoundingClientRect().top + scrollY - 80,
      ],
      [1440, 900, 0],
    ] as const) {
      await setViewport({ width, height })
      scrollTo(0, top)
      await waitUntil(() => inBar('li').length === 0, 'what runs stands in the list alone')
      for (const row of inList('li')) open.isInSight(row)
      equal(inBar('.over').length, 2, 'what has run out stays')
    }
    scrollTo(0, 10_000)
    await waitUntil(() => inBar('li').length === 2, 'the list is out of sight')
    await setViewport({ width: 844, height: 390 })
    scrollTo(0, 0)
    await waitUntil(() => inBar('li').length === 2, 'as it is on a phone on its side')
    const [list] = inBar('ul')
    equal(
      list!.getBoundingClientRect().bottom,
      inBar('.all')[0]!.getBoundingClientRect().bottom,
      'in one row',
    )
    for (const part of [...inBar('.over'), ...inBar('li')]) open.isInSight(part)
    await setViewport({ width: 390, height: 844 })
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

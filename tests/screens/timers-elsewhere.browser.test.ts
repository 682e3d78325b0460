import { TimersElsewhere } from '../../components/bench/timers/timers-elsewhere'
import { bakesIn } from '../../src/day/bench/bake-data'
import { equal, match, waitUntil } from '../assert'
import { workedWheat } from '../day/worked-bread'
import { Around } from './mount'
import { benchWithTimers } from './timers'

const formula = workedWheat()

describe('Timers of a bench that is not the page that is open', () => {
  let around: Around
  let element: HTMLElement
  let gone: AbortController
  let said: string[]
  let changes: number
  let elsewhere: TimersElsewhere

  function listen(...timers: Parameters<typeof benchWithTimers>[1]) {
    around = new Around(benchWithTimers(formula, timers))
    element = around.hold(document.createElement('div'))
    said = []
    changes = 0
    element.addEventListener('tb-say', event => said.push((event as CustomEvent<string>).detail))
    gone = new AbortController()
    elsewhere = new TimersElsewhere(
      element,
      () => around.history.workbook,
      () => {
        changes += 1
      },
      gone.signal,
    )
  }
  const timers = () => bakesIn(around.history.workbook).flatMap(bake => bake.timers.map(({ name }) => name))
  const told = () => elsewhere.notices.map(({ text }) => text)
  const doNow = (notice: number, action: RegExp) =>
    elsewhere.notices[notice]!.actions.find(({ label }) => action.test(label))!.run()

  beforeEach(() => {
    location.hash = ''
  })
  afterEach(() => {
    gone.abort()
    element.remove()
    location.hash = ''
  })

  it('are told where they have run out, with since when and at which bench; those that run are not', async () => {
    listen(['Kettle', 17.5, 10], ['Oven', 1, 90])
    await waitUntil(() => changes === 1, 'the page is told')
    const { ends } = bakesIn(around.history.workbook)[0]!.timers.find(({ name }) => name === 'Kettle')!
    equal(
      told().join(),
      `Timer over since ${Number(ends.slice(11, 13))}:${ends.slice(14, 16)}: Kettle, at the bench of Mill wheat.`,
    )
    equal(said.length, 0, 'what was over before the page was there is shown, and rings no more')
  })

  it('ring and are said once, in the second in which they run out', async () => {
    listen(['Tea', 0, 0.04], ['Kettle', 17.5, 10])
    await waitUntil(() => said.length > 0, 'it is said')
    equal(said.join(), 'Timer over: Tea')
    match(told().join(' | '), /: Tea, .* \| .*: Kettle, /)
    const { length } = said
    const before = changes
    doNow(1, /^Stop/)
    await waitUntil(() => changes > before, 'another second has gone by')
    equal(said.length, length)
  })

  it('are stopped where they are told, in one edit that can be undone', async () => {
    listen(['Kettle', 17.5, 10], ['Oven', 16, 14])
    doNow(0, /^Stop/)
    equal(timers().join(), 'Oven')
    match(told().join(), /: Oven, /)
    around.history.undo()
    equal(timers().join(), 'Kettle,Oven')
  })

  it('lead to their bench, where they are told otherwise', async () => {
    listen(['Kettle', 17.5, 10])
    await waitUntil(() => changes === 1, 'the page is told')
    doNow(0, /bench/)
    equal(location.hash, `#bench/${bakesIn(around.history.workbook)[0]!.id}`)
    equal(told().length, 0)
    await waitUntil(() => changes === 2, 'the page is told that there is nothing to tell any more')
  })
})

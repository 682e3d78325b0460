import { setViewport } from '@web/test-runner-commands'
import { type FromPlanner, Planning, type PlanningOf, type ToPlanner } from '../../src/day/plan/planning'
import { equal, match, ok, waitUntil } from '../assert'
import { saturday } from '../day/notation'
import { press } from '../keys'
import { DaysOpened, wheat } from './days-desk'
import { dressPage, textOf } from './mount'

/** Stands in for the worker: hears what is asked, and answers when it is told to. */
class PlannerAtHand {
  static started: PlannerAtHand[] = []
  onmessage: ((event: { data: FromPlanner }) => void) | undefined
  onerror: (() => void) | undefined
  readonly heard: ToPlanner[] = []
  ended = false

  constructor() {
    PlannerAtHand.started.push(this)
  }
  postMessage(message: ToPlanner): void {
    this.heard.push(structuredClone(message)) // as it would be sent
  }
  terminate(): void {
    this.ended = true
  }

  get asked(): { readonly ask: number } & PlanningOf {
    return this.heard.filter(message => 'day' in message).at(-1)!
  }
  tell(progress: { relaxed: number; cost: number; gap: number }): void {
    this.onmessage!({ data: { ask: this.asked.ask, progress } })
  }
  answer(of = this.asked): void {
    const planning = new Planning(of)
    while (!planning.step());
    this.onmessage!({ data: structuredClone({ ask: of.ask, found: planning.found() }) })
  }
}

const Native = globalThis.Worker

describe('Looking for the times of a day', () => {
  let open: DaysOpened
  const named = document.createElement('meta')

  // Three breads held in one oven at one time: the page hands on why several breads have no times.
  function show() {
    const formulas = ['Mill wheat', 'Second wheat', 'Third wheat'].map(name => ({ ...wheat(), name }))
    const day = saturday(formulas.map(formula => [formula, 6]))
    const holds = day.breads.map(({ id, formula }) => {
      const final = formulas.find(f => f.id === formula)!.stages[1]!
      return { moment: `${id} ${final.id} ${final.method!.at(-1)!.id}`, at: '2026-12-05T08:15' }
    })
    open = new DaysOpened({ formulas, days: [{ ...day, holds }] }, day)
  }
  const worker = () => waitUntil(() => PlannerAtHand.started.at(-1), 'a worker is started')

  before(async () => {
    dressPage()
    await setViewport({ width: 1280, height: 900 })
    Object.assign(named, { name: 'day-worker', content: 'day-worker.js' })
    document.head.append(named)
  })
  beforeEach(() => {
    PlannerAtHand.started = []
    globalThis.Worker = PlannerAtHand as unknown as typeof Worker
  })
  afterEach(() => {
    open.remove()
    globalThis.Worker = Native
  })
  after(() => named.remove())

  it('is said while it lasts, with how much was tried, and its times come when they are found', async () => {
    show()
    const planner = await worker()
    match(textOf(await open.find('.note')), /^Looking for the best order…/)
    equal(open.rows.length, 0)
    planner.tell({ relaxed: 1200, cost: 3, gap: 2 })
    planner.answer()
    await open.find('.note', /All of it fits|cannot be together|need/)
    equal(open.all('.note', 'Looking').length, 0)
  })

  it('is stopped by the baker where nothing was found yet, and begun again', async () => {
    show()
    const planner = await worker()
    ;(await open.find('button', 'Stop here')).focus()
    await press('Enter')
    match(textOf(await open.find('.warn')), /Stopped before any times were found/)
    ok(planner.ended, 'the worker is ended')
    ;(await open.find('button', 'Look again')).focus()
    await press('Enter')
    await waitUntil(() => PlannerAtHand.started.length === 2, 'another worker is started')
    await open.find('.note', /^Looking/)
  })

  it('gives the best that was found when it is stopped, and says so', async () => {
    show()
    const planner = await worker()
    const { asked } = planner
    planner.tell({ relaxed: 400, cost: 5, gap: 5 })
    ;(await open.find('button', 'Stop here')).focus()
    await press('Enter')
    const stop = planner.heard.at(-1)!
    ok('stop' in stop && stop.stop === asked.ask, 'it is told to stop')
    ok(!planner.ended)
    // What it had: times of all the moments, of which nobody knows whether they are the best.
    const planning = new Planning({ ...asked, day: { ...asked.day, holds: [] } })
    while (!planning.step());
    const { answer, strict } = planning.found()
    ok(answer?.kind === 'plan')
    const found = { strict, answer: { ...answer, proven: false, gap: 5 } }
    planner.onmessage!({ data: { ask: asked.ask, found } })
    match(
      textOf(await open.find('.note', /^All of it fits/)),
      /Stopped here: these are the best times found so far/,
    )
    equal(open.rows.filter(row => / Bake /.test(row)).length, 3)
  })

  it('answers for the day as it stands now, not for one that was changed meanwhile', async () => {
    show()
    const planner = await worker()
    const first = planner.asked
    await open.enter('Temperature of the kitchen', '25')
    await waitUntil(() => planner.asked.ask !== first.ask, 'the changed day is asked for')
    equal(planner.asked.day.kitchen, 25)
    planner.answer(first)
    await open.find('.note', /^Looking/)
  })

  it('is done by the page where the worker cannot be fetched', async () => {
    show()
    const planner = await worker()
    planner.onerror!()
    await open.find('.note', /All of it fits|cannot be together|need/)
    ok(planner.ended)
  })

  it('is done at once for one bread', async () => {
    const formula = wheat()
    const day = saturday([[formula, 6]])
    open = new DaysOpened({ formulas: [formula], days: [day] }, day)
    await open.time('Mix')
    equal(PlannerAtHand.started.length, 0)
  })
})

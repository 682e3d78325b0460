import { deepEqual, equal, match, ok, waitUntil } from '../assert.js'
import { press, type } from '../keys.js'
import { OpenApp } from './app.js'

const text = (element: Element | undefined | null) => (element?.textContent ?? '').replace(/\s+/g, ' ').trim()

/** What a baker does with a day, by keys and pointer. */
class PlannedApp {
  constructor(readonly app: OpenApp) {}

  /** The list by the clock: `13:09 Mix`. */
  get rows(): string[] {
    const list = this.app.maybe('tb-by-clock')?.shadowRoot
    return [...(list?.querySelectorAll('li') ?? [])].map(
      li => `${text(li.querySelector('.when'))} ${text(li.querySelector('.does'))}`,
    )
  }

  async shows(...rows: readonly string[]): Promise<void> {
    await waitUntil(
      () => rows.every(row => this.rows.includes(row)),
      `there is ${rows.join(', ')}; it is ${this.rows.join(', ')}`,
    )
  }

  /** A new day with Mill wheat on it, on a Saturday to come, in a kitchen as warm as the method is written for. */
  async begin(): Promise<void> {
    await this.app.click('button', 'New day')
    await this.app.click('button', 'Add a bread')
    await this.app.click('[role=menuitem]', 'Mill wheat')
    await waitUntil(() => this.rows.length > 0, 'its steps are there')
  }

  async enter(label: RegExp, typed: string): Promise<void> {
    await this.app.click('input', label)
    await press('Control+a')
    await type(typed)
    await press('Enter')
  }

  /** Types a time in place of the one that a step has, found by both. */
  async hold(step: RegExp, time: string): Promise<void> {
    const button = await this.app.find('button.time', step)
    button.focus()
    await press('Enter')
    await type(time)
    await press('Enter')
  }
}

// Mill wheat by its method, minutes from the midnight before: with hands closed until 7:00 the levain is mixed at 420 and the
// loaves are scored at 1860. Between them the waits have 1385 min of a usual 1387.5: each gives 2.5/495 of its leeway.
describe('Saturday’s bread, planned', () => {
  const run = Date.now()
  let app: OpenApp
  let day: PlannedApp

  before(async () => {
    app = await OpenApp.open(`planned-${run}`)
    day = new PlannedApp(app)
  })
  after(() => app.close())

  it('is planned back from 9:00, around the hours of sleep', async () => {
    await app.click('nav button', 'Days')
    await day.begin()
    await day.enter(/^Date of the day/, '2030-06-01')
    await day.enter(/^Temperature of the kitchen/, '24')
    await day.enter(/^Asleep until/, '7:00')
    await day.shows(
      '7:00 Mix Levain',
      '7:10 Ripen Levain',
      '13:09 Mix',
      '13:24 Rest',
      '14:02 Mix in',
      '14:07 Bulk',
      '18:07 Divide and shape',
      '18:32 Retard',
      '6:35 Heat up Oven',
      '7:00 Score and load',
      '7:05 Bake',
      '7:50 Cool',
    )
    match(
      text(await app.find('.note', /^All of it fits/)),
      /Because nobody is up before 7:00, three waits are up to 50 min shorter than usual\./,
    )
    match(app.frame.contentWindow!.location.hash, /^#days\/./)
  })

  // Mixed at 810, ripened for its usual 360 from 450: the levain at 440. From 825 to 1860 the waits have 1005 of 1027.5 min and 375 of leeway.
  it('is mixed when the baker says, and what moves is said', async () => {
    await day.hold(/^Mix: 13:09/, '13:30')
    await day.shows(
      '7:20 Mix Levain',
      '13:30 Mix',
      '14:22 Mix in',
      '18:23 Divide and shape',
      '7:00 Score and load',
    )
    equal(text(await app.find('.toast')), 'Mix held at 13:30. 11 other times moved, by at most 21 min.')
    await app.find('button.time', /^Mix: 13:30, held$/)
    equal(app.focused?.getAttribute('aria-label'), 'Mix: 13:30, held')
  })

  // Mixing 15, rest 30, salt 5 and bulk 210 min are 4 h 20. Mixing at 11:40 would leave the levain less than its 5 hours after 7:00.
  it('meets what cannot be, and follows the advice', async () => {
    await day.hold(/^Divide and shape: 18:23/, '16:00')
    equal(
      text(await app.find('.warn [role=alert]')),
      'Mix at 13:30 and Divide and shape at 16:00 leave 2 h 30; mix (15 min), rest (at least 30 min), mix in (5 min) and bulk (at least 3 h 30) need 4 h 20. Hold Divide and shape at 17:50.',
    )
    await day.shows('16:00 Divide and shape', '13:30 Mix')
    await app.find('small', 'Does not fit; it is 18:23 in this plan.')
    await app.click('.warn button', 'Hold Divide and shape at 17:50')
    await day.shows('17:50 Divide and shape', '14:20 Bulk')
    equal(app.maybe('.warn'), undefined)
    await press('Control+z')
    await app.find('.warn')
    await press('Control+y')
    await waitUntil(() => !app.maybe('.warn'), 'the advice is taken again')
  })

  it('shows how a time came about', async () => {
    const [how] = app.all('button.how', /How the time of Mix came about/)
    how!.focus()
    await press('Enter')
    equal(text(await app.find('p.words')), 'Mix held at 13:30 − ripen 6 h − mix 10 min')
    await press('Escape')
    await waitUntil(() => !app.maybe('tb-time-working'), 'it is closed')
  })

  it('is drawn beside its list, leads to a step of it, and leaves as a calendar file', async () => {
    const drawn = await app.find('[role=slider]')
    drawn.focus()
    await press('End', 'Enter')
    await waitUntil(
      () => /^(Cool|Bake): /.test(app.focused?.getAttribute('aria-label') ?? ''),
      'the list is at its last step',
    )
    await app.click('button', 'Calendar file')
    await app.find('.toast', '2030-06-01.ics is among your downloads.')
  })

  it('hangs on a wall as a page of its own: nothing else is in sight until one is back', async () => {
    const ofApp = () => app.all('tb-head, tb-days, tb-by-clock').map(({ localName }) => localName)
    deepEqual(ofApp(), ['tb-head', 'tb-days', 'tb-by-clock'])
    await app.click('button', 'Page for the wall')
    await app.find('.paper h1')
    deepEqual(ofApp(), [])
    await press('Escape')
    await waitUntil(() => app.maybe('tb-by-clock'), 'the day is there again')
    equal(app.maybe('.paper'), undefined)
  })

  it('is all there when the page is loaded anew, and Back leads to where one was', async () => {
    const before = day.rows
    await app.reload()
    await waitUntil(() => day.rows.join() === before.join(), 'the same times are there')
    await app.find('button.time', /^Mix: 13:30, held$/)
    await app.click('nav button', 'Formulas')
    await app.find('tb-grid')
    app.frame.contentWindow!.history.back()
    await waitUntil(() => day.rows.join() === before.join(), 'back at the day')
  })

  it('is planned on a phone, the list before the fields', async () => {
    app.close()
    app = await OpenApp.open(`planned-phone-${run}`, { width: 390, height: 844 })
    day = new PlannedApp(app)
    await app.click('nav[aria-label=Places] button', 'Days')
    await day.begin()
    await day.enter(/^Date of the day/, '2030-06-01')
    await app.click('.said button', 'Done')
    const list = await app.find('tb-by-clock')
    ok(list.getBoundingClientRect().top < (await app.find('tb-temperatures')).getBoundingClientRect().top)
    equal(app.maybe('tb-day-facts'), undefined)
    await app.click('button.time', /^Score and load/)
    await type('6:45')
    await press('Enter')
    await day.shows('6:45 Score and load')
    const { documentElement } = app.frame.contentDocument!
    ok(documentElement.scrollWidth <= 390, `it is ${documentElement.scrollWidth} px wide`)
    await app.click('button', /^Let the time of Score and load follow$/)
    await waitUntil(() => !day.rows.includes('6:45 Score and load'), 'it follows again')
  })

  it('is planned without a network, three breads as well as one', async () => {
    app.close()
    const folder = `/apart/planned-${run}/`
    app = await OpenApp.open(`planned-offline-${run}`, { page: `${folder}index.html?` })
    day = new PlannedApp(app)
    const { active } = await app.frame.contentWindow!.navigator.serviceWorker.ready
    await waitUntil(() => active?.state === 'activated', 'all files are kept')
    await fetch(`${folder}cut`)
    await app.reload()
    await app.click('nav button', 'Days')
    await day.begin()
    for (const bread of ['Two-build rye', 'Poolish baguette']) {
      await app.click('button', 'Add a bread')
      await app.click('[role=menuitem]', bread)
    }
    await app.find('.note', /^All of it fits| leave | cannot be together/)
  })
})

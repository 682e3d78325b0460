import { equal, match, ok, waitUntil } from '../assert.js'
import { press, type } from '../keys.js'
import { OpenApp } from './app.js'

// In a page of its own: its frames come with a clock that others do not have, and two of them have the focus in turn.

type Page = Window & typeof globalThis

const text = (element: Element | undefined | null) => (element?.textContent ?? '').replace(/\s+/g, ' ').trim()

/** The clock of the page, which goes on from where it is put, and whether the page is being killed: then it is told of no end. */
class Lived {
  isKilled = false
  #ahead = 0 // of the real clock, ms

  /** Puts the clock forward to a local time. */
  at(month: number, day: number, hour: number, minute: number): void {
    this.#ahead = new Date(2030, month - 1, day, hour, minute).getTime() - Date.now()
  }

  /** To be called with the page before anything of it runs. */
  begin = (page: Page): void => {
    const now = () => Date.now() + this.#ahead
    page.Date = class extends page.Date {
      constructor(...given: readonly [number]) {
        super(...(given.length > 0 ? given : ([now()] as const)))
      }
      static override now = now
    } as DateConstructor
    for (const name of ['pagehide', 'visibilitychange', 'beforeunload', 'unload', 'freeze'])
      page.addEventListener(name, event => this.isKilled && event.stopImmediatePropagation(), true)
  }
}

// Mill wheat on a Saturday, ready at 9:00, in a kitchen as warm as its method is written for and with nobody up before 7:00:
// its levain is mixed at 7:00 of the Friday, its dough at 13:09 (tests/whole-app/day-planned.browser.test.ts).
describe('A day that is lived through at the bench', () => {
  const database = `lived-${Date.now()}`
  const lived = new Lived()
  let app: OpenApp

  const open = () => OpenApp.open(database, { page: '/lacking/nothing-of-it/index.html?offline=no&' })
  const go = (hash: string) => {
    app.frame.contentWindow!.location.hash = hash
  }
  const heading = () => text(app.maybe('.todo h1'))
  const ticks = (of = app) => of.all('.tick')
  const isTicked = (tick: Element | undefined) => tick?.getAttribute('aria-checked') === 'true'
  const done = (of = app) => of.all('.list.done button').map(text)
  const saved = () => app.find('.kept', /^Saved/)
  /** Waits until the bench has come to a step, ticks all of it off and says that it is done. */
  async function doIt(step: string, meanwhile = () => {}): Promise<void> {
    await waitUntil(() => heading() === step, `${step} is next; it is ${heading()}`)
    const before = done().length
    for (let i = 0; i < ticks().length; i++) {
      if (isTicked(ticks()[i])) continue
      ticks()[i]!.focus()
      await press('Space')
      await waitUntil(() => isTicked(ticks()[i]), `line ${i} is ticked off`)
    }
    meanwhile()
    await app.click('.go .main')
    await waitUntil(() => done().length > before, 'it is done')
  }
  async function measure(name: RegExp, figure: string): Promise<void> {
    const button = () => app.all('tb-bench-measures')[0]?.shadowRoot?.querySelectorAll('button') ?? []
    const [found] = [...button()].filter(each => name.test(text(each)))
    found!.focus()
    await press('Enter')
    await type(figure)
    await press('Enter')
    await waitUntil(() => [...button()].some(each => text(each).includes(figure)), 'it is kept')
  }

  before(async () => {
    Object.assign(globalThis, { isAboutToBegin: lived.begin })
    lived.at(5, 24, 8, 0)
    app = await open()
  })
  after(() => {
    Reflect.deleteProperty(globalThis, 'isAboutToBegin')
    app.close()
  })

  it('a week before, the same bread was baked by itself', async () => {
    ;(await app.find('tb-method')).scrollIntoView()
    await app.click('a', /^At the bench/)
    await waitUntil(() => ticks().length > 0, 'its weighing list is there')
    await doIt('Mix')
    await app.click('button', /^Finish here/)
    await app.find('h1', 'Mill wheat')
  })

  it('the levain is mixed ten minutes early, and what moves is said', async () => {
    lived.at(5, 31, 6, 50)
    go('#days')
    await app.click('button', 'New day')
    await app.click('button', 'Add a bread')
    await app.click('[role=menuitem]', 'Mill wheat')
    for (const [field, typed] of [
      [/^Date of the day/, '2030-06-01'],
      [/^Temperature of the kitchen/, '24'],
      [/^Asleep until/, '7:00'],
    ] as const) {
      await app.click('input', field)
      await press('Control+a')
      await type(typed)
      await press('Enter')
    }
    await app.find('.note', /^All of it fits/)
    await app.click('a', 'To the bench')
    await waitUntil(() => ticks().length === 4, 'the four lines of the levain are there')
    await doIt('Mix')
    await app.find('.moved', /earlier|Nothing else moved/)
    await saved()
  })

  it('what was done is done after a reload', async () => {
    await app.reload()
    await waitUntil(() => done().length === 1, 'the levain is mixed')
  })

  it('the dough is mixed an hour late, and what comes then is later', async () => {
    lived.at(5, 31, 14, 9)
    await waitUntil(() => text(app.maybe('header time')) === '14:09', 'the clock goes on')
    await measure(/^Water/, '24')
    await measure(/^Dough/, '25.5')
    await doIt('Mix', () => lived.at(5, 31, 14, 29))
    match(text(await app.find('.moved')), /\d min later/)
    await saved()
  })

  it('killed, the page has all that was ticked when it is opened again', async () => {
    const before = done()
    lived.isKilled = true
    app.close()
    lived.isKilled = false
    app = await open()
    go('#days')
    await app.click('a', 'To the bench')
    await waitUntil(() => done().length > 0, 'what was done is listed')
    equal(done().join(), before.join())
  })

  it('a second tab follows the one that leads', async () => {
    const other = await OpenApp.open(database, { page: '/lacking/nothing-of-it/index.html?offline=no&' })
    try {
      other.frame.contentWindow!.location.hash = app.frame.contentWindow!.location.hash
      await other.find('.note', /in another tab/)
      equal(done(other).join(), done().join())
      other.frame.style.visibility = 'hidden'
      app.frame.contentWindow!.focus()
      lived.at(5, 31, 14, 55)
      await doIt('Mix in')
      other.frame.style.visibility = ''
      await waitUntil(() => done(other).some(words => words.includes('Mix in')), 'the other shows it too')
    } finally {
      other.close()
    }
  })

  it('finished, it is a bake, which takes a photograph', async () => {
    await app.click('button', /^Finish here/)
    await app.find('h1', 'Mill wheat')
    const canvas = document.createElement('canvas')
    const picture = await new Promise<Blob>(given => canvas.toBlob(blob => given(blob!), 'image/jpeg'))
    const photographs = (await app.find('tb-photographs')).shadowRoot!
    const input = photographs.querySelector<HTMLInputElement>('input[multiple]')!
    const page = app.frame.contentWindow as Page
    const files = new page.DataTransfer()
    files.items.add(new page.File([picture], 'crumb.jpg', { type: 'image/jpeg' }))
    input.files = files.files
    input.dispatchEvent(new page.Event('change'))
    const image = () => photographs.querySelector<HTMLImageElement>('li img')
    await waitUntil(() => image(), 'it is kept')
    image()!.scrollIntoView()
    await waitUntil(() => image()!.naturalWidth > 0, 'it is shown')
  })

  it('it is set beside the bake before', async () => {
    const pick = (await app.find('.pick select')) as HTMLSelectElement
    pick.focus()
    await press('End')
    await app.find('th', 'Went in there')
    ok(pick.selectedOptions[0]!.textContent!.includes('24'), text(pick.selectedOptions[0]))
  })

  it('the rise that it told is taken for the next day, and its water changes', async () => {
    go('#days')
    await app.click('button', 'New day')
    await app.click('[role=menuitem]', /^Like /)
    await app.find('.note', /^All of it fits/)
    const mixing = await app.find('h3 button', /^Final dough of Mill wheat/)
    if (mixing.getAttribute('aria-expanded') !== 'true')
      await app.click('h3 button', /^Final dough of Mill wheat/)
    const water = () => text(app.all('.ways .big').at(-1))
    const before = water()
    match(before, /°C/)
    await app.click('button', /^Take .* for the rise in mixing/)
    await waitUntil(() => water() !== before, 'the water is another')
  })
})

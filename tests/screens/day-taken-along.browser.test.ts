import '../../components/lanes/index'
import { emulateMedia, setViewport } from '@web/test-runner-commands'
import { paperMargin, papers } from '../../components/card/paper'
import type { TbDayLoads } from '../../components/lanes/tb-day-loads'
import type { TbDayOut } from '../../components/lanes/tb-day-out'
import '../../components/lanes/tb-day-print'
import type { TbDayPrint } from '../../components/lanes/tb-day-print'
import { openDay } from '../../src/day/plan/open-day'
import { emptyWorkbook } from '../../src/dough/document/workbook'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { readCalendar } from '../day/rfc5545'
import { press } from '../keys'
import { breads, saturdayOven } from './days'
import { dressPage, english, passesAxe, textOf } from './mount'

const formulas = breads()
const workbook = { ...emptyWorkbook, formulas }
const opened = () => openDay(saturdayOven(formulas), formulas)

describe('The loads of a day', () => {
  let loads: TbDayLoads

  before(dressPage)
  beforeEach(async () => {
    loads = document.createElement('tb-day-loads')
    Object.assign(loads, { opened: opened(), workbook, numbers: english })
    document.body.append(loads)
    await loads.updateComplete
  })
  afterEach(() => loads.remove())
  const rows = () => [...loads.shadowRoot!.querySelectorAll('tbody tr')].map(textOf)

  it('say what goes in at once, when, and how much of the oven it fills', () => {
    match(
      textOf(loads.shadowRoot!.querySelector('caption')),
      /^Loads of Stone oven heat up at \d+:\d\d and \d+:\d\d$/, // the rye on Friday, the others on Saturday
    )
    const said = rows().map(row => row.replace(/\d+:\d\d/g, '0:00'))
    deepEqual(said, [
      'Friday, December 4',
      '0:00 0:00 Two-build rye 4 of 6 220 °C',
      'Saturday, December 5',
      '0:00 0:00 Mill wheat, load 1 6 of 6 240 °C',
      '0:00 0:00 Seeded spelt tin, load 1 2 of 2 220 °C',
      '0:00 0:00 Seeded spelt tin, load 2 1 of 2 220 °C',
      '0:00 0:00 Mill wheat, load 2 6 of 6 240 °C',
    ])
    match(textOf(loads.shadowRoot!.querySelector('tr.open')), /load 2 1 of 2/)
    equal(
      loads.shadowRoot!.querySelectorAll('tr.open').length,
      1,
      'what fits at once is no load that is not full',
    )
  })

  it('lead to their step in the list', async () => {
    const told: string[] = []
    loads.addEventListener('tb-moment', ({ detail }) => told.push(detail))
    loads.shadowRoot!.querySelector('button')!.focus()
    await press('Enter')
    const bake = loads.opened!.plan!.events.find(e => e.kind === 'bake')!
    deepEqual(told, [bake.begins])
  })

  it('hold up in light and dark, and on a phone', async () => {
    for (const colorScheme of ['dark', 'light'] as const) {
      await emulateMedia({ colorScheme })
      await passesAxe(loads)
    }
    await setViewport({ width: 390, height: 844 })
    ok(document.documentElement.scrollWidth <= 390)
    await setViewport({ width: 1440, height: 900 })
  })
})

describe('What is taken along of a day', () => {
  let out: TbDayOut
  const said: string[] = []

  async function show(day = opened()) {
    localStorage.clear()
    said.length = 0
    out = document.createElement('tb-day-out')
    Object.assign(out, { opened: day, workbook, numbers: english })
    out.addEventListener('tb-say', event => said.push((event as CustomEvent<string>).detail))
    document.body.append(out)
    await out.updateComplete
  }
  const button = (words: string) =>
    [...out.shadowRoot!.querySelectorAll('button')].find(b => textOf(b) === words)!
  /** What the link of a download would have given. */
  async function downloaded(): Promise<{ name: string; text: string }> {
    const { click } = HTMLAnchorElement.prototype
    let link: HTMLAnchorElement | undefined
    HTMLAnchorElement.prototype.click = function () {
      link = this
    }
    button('Calendar file').focus()
    await press('Enter')
    HTMLAnchorElement.prototype.click = click
    return { name: link!.download, text: await (await fetch(link!.href)).text() }
  }

  before(dressPage)
  afterEach(() => {
    out.remove()
    document.querySelector('tb-day-print')?.remove()
    localStorage.clear()
  })

  it('gives a calendar file with an event for each thing to do and an alarm as long before as is chosen', async () => {
    await show()
    const { name, text } = await downloaded()
    equal(name, '2026-12-05.ics')
    const { inside } = readCalendar(text)
    const hands = out.opened!.plan!.events.filter(e => e.kind !== 'wait').length
    equal(inside.length, hands + 2, 'and the oven heated up, on Friday and on Saturday')
    ok(inside.every(e => e.inside[0]!.properties.get('TRIGGER') === '-PT5M'))
    deepEqual(said, ['2026-12-05.ics is among your downloads.'])
    out.shadowRoot!.querySelector('select')!.focus()
    await press('Home')
    await out.updateComplete
    ok(
      readCalendar((await downloaded()).text).inside.every(e => e.inside.length === 0),
      'no alarm',
    )
    const another = document.createElement('tb-day-out')
    another.opened = out.opened
    document.body.append(another)
    await another.updateComplete
    equal(another.shadowRoot!.querySelector('select')!.value, 'none', 'the choice is kept')
    another.remove()
  })

  it('copies the day as text, or shows it to be copied where the browser does not', async () => {
    await show()
    let copied = ''
    const stands = (writeText: (text: string) => Promise<void>) =>
      Object.defineProperty(navigator, 'clipboard', { value: { writeText }, configurable: true })
    try {
      stands(async text => {
        copied = text
      })
      button('Copy as text').focus()
      await press('Enter')
      await waitUntil(() => said.length === 1, 'it is said')
      match(copied, /^Saturday oven\n\nThursday, December 3\n.*\d+:\d\d {2}Two-build rye: Mix, 5 min/s)
      stands(async () => {
        throw new DOMException('not here', 'NotAllowedError')
      })
      await press('Enter')
      const field = await waitUntil(() => out.shadowRoot!.querySelector('textarea'), 'the text is there')
      equal(field.value, copied)
      await waitUntil(() => field.selectionEnd === copied.length, 'all of it is selected')
    } finally {
      Reflect.deleteProperty(navigator, 'clipboard') // the browser's own again
    }
  })

  it('opens the page for the wall in place of all else, and Escape leads back', async () => {
    await show()
    const alone: boolean[] = []
    out.addEventListener('tb-alone', event => alone.push((event as CustomEvent<boolean>).detail))
    button('Page for the wall').focus()
    await press('Enter')
    const page = await waitUntil(() => document.querySelector('tb-day-print'), 'the page is there')
    await waitUntil(() => textOf(page.shadowRoot!.activeElement) === 'Print', 'the focus is on Print')
    deepEqual(alone, [true])
    await press('Escape')
    deepEqual(alone, [true, false])
    equal(document.querySelector('tb-day-print'), null)
    equal(out.shadowRoot!.activeElement, button('Page for the wall'))
  })

  it('offers nothing where the day has no times', async () => {
    await show(openDay(saturdayOven(formulas, {}, [12, 12, 3]), formulas)) // two loads of a rye that cannot wait so long
    equal(out.shadowRoot!.querySelector('button'), null)
    match(textOf(out.shadowRoot!.querySelector('p')), /^There is nothing to take along until/)
  })

  it('holds up in light and dark', async () => {
    await show()
    for (const colorScheme of ['dark', 'light'] as const) {
      await emulateMedia({ colorScheme })
      await passesAxe(out)
    }
  })
})

describe('A day on paper', () => {
  let page: TbDayPrint
  const pixels = 96 / 25.4 // a millimetre

  async function show(day = opened()) {
    localStorage.clear()
    page = document.createElement('tb-day-print')
    Object.assign(page, { opened: day, workbook, numbers: english })
    document.body.append(page)
    await page.show()
    await page.updateComplete
  }
  const find = <E extends HTMLElement>(selector: string) => page.shadowRoot!.querySelector<E>(selector)!
  const all = (selector: string) => [...page.shadowRoot!.querySelectorAll<HTMLElement>(selector)]
  const pages = () => textOf(find('.pages'))
  const one = () => openDay(saturdayOven(formulas.slice(0, 1), { ready: '14:00' }, [6]), formulas)

  before(dressPage)
  afterEach(async () => {
    await emulateMedia({ media: 'screen', colorScheme: 'light' })
    await setViewport({ width: 1440, height: 900 })
    document.documentElement.style.cssText = ''
    page.remove()
  })

  /** Lays the page out as paper of A4 does. */
  async function onPaper() {
    const [width, height] = [papers.a4.width, papers.a4.height].map(mm =>
      Math.floor((mm - 2 * paperMargin) * pixels),
    )
    await setViewport({ width: width!, height: height! })
    document.documentElement.style.cssText = 'overflow: hidden; scrollbar-gutter: auto'
    await emulateMedia({ media: 'print' })
    return height!
  }

  it('has every step by the clock with what goes in, the loads, and what is to be weighed all told', async () => {
    await show(one())
    const { plan } = page.opened!
    equal(all('li').length, plan!.events.length + 1, 'and the heating of the oven')
    deepEqual(all('section.date h2').map(textOf), ['Friday, December 4', 'Saturday, December 5'])
    match(textOf(find('header')), /^Saturday oven 6 Mill wheat\. Ready 14:00\. Kitchen 21 °C\.$/)
    const mix = all('li').find(li => /Levain/.test(textOf(li.querySelector('small'))))
    match(textOf(mix), /^\d+:\d\d Mill wheat: Mix, 15 min Bread flour [\d,]+ g, .*Levain [\d,]+ g$/)
    match(textOf(find('.loads')), /Loads of Stone oven heat up at \d+:\d\d .* Mill wheat 6 of 6 240 °C/)
    ok(all('dt').map(textOf).includes('Ripe starter'))
    ok(!all('dt').map(textOf).includes('Levain'), 'a stage is in its own ingredients')
    find('input').focus()
    await press('Space')
    await page.updateComplete
    equal(all('dt').length + all('li small').length, 0, 'without weights')
  })

  it('is one page where one bread fits on one', async () => {
    await show(one())
    equal(pages(), 'One page')
    const height = await onPaper()
    const { bottom } = find('.paper').getBoundingClientRect()
    ok(bottom - page.getBoundingClientRect().top <= height, `${bottom} px of ${height}`)
  })

  it('is a page for each date where all of it is too much for one, and no step is broken', async () => {
    await show()
    equal(all('section.date').length, 3)
    match(pages(), /^[34] pages$/)
    ok(find('.paper').classList.contains('dated'))
    ok(Number(find('.paper').dataset.type) < 3, 'in no smaller type than it has to be')
    const height = await onPaper()
    for (const date of all('section.date')) ok(date.getBoundingClientRect().height <= height, 'it fits')
    equal(getComputedStyle(all('section.date')[1]!).breakBefore, 'page')
    for (const step of all('li')) equal(getComputedStyle(step).breakInside, 'avoid')
  })

  it('is black on white in print, whatever the screen is, without its bar', async () => {
    await emulateMedia({ colorScheme: 'dark' })
    await show(one())
    await emulateMedia({ media: 'print' })
    equal(getComputedStyle(find('.paper')).color, 'rgb(0, 0, 0)')
    ok(!find('.bar').checkVisibility(), 'the bar is not printed')
  })

  it('holds up at three sizes, light and dark', async () => {
    await show()
    for (const width of [1440, 768, 390]) {
      await setViewport({ width, height: 844 })
      for (const colorScheme of ['light', 'dark'] as const) {
        await emulateMedia({ colorScheme })
        await passesAxe(page)
      }
      ok(document.documentElement.scrollWidth <= width, `nothing sticks out, ${width} px wide`)
    }
  })
})

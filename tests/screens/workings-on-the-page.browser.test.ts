import { sendMouse, setViewport } from '@web/test-runner-commands'
import '../../components/tally/tb-hold' // fetched when first wanted; here beforehand
import '../../components/working/tb-working'
import '../../components/page/tb-app'
import { wish } from '../../components/base/events'
import { listenToPage } from '../../components/page/page-gestures'
import type { TbApp } from '../../components/page/tb-app'
import { finalDoughOf } from '../../src/dough/document/formula'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { press, type } from '../keys'
import { itOnce } from '../once'
import { millWheat, straightDough } from './breads'
import { dressPage, english, passesAxe, textOf } from './mount'

let count = 0

describe('Holds and workings on the page', () => {
  let app: TbApp
  let region: HTMLElement

  async function start(): Promise<void> {
    history.replaceState(null, '', '#')
    app = document.createElement('tb-app')
    app.numbers = english
    app.database = `workings-${Date.now()}-${count++}`
    const tin = straightDough('Bread flour = 100%\nWater = 66%\nSalt = 2%', 'Spelt tin')
    app.loadExamples = async () => ({ workbook: 'Saturday oven', formulas: [millWheat(), tin] })
    document.body.append(app)
    await app.start()
    await app.furnished
    await settled()
  }

  async function settled(): Promise<void> {
    await app.updateComplete
    await tally()?.updateComplete
    await working()?.updateComplete
    await app.updateComplete // what the working lights
    await sheet().updateComplete
  }

  const root = () => app.shadowRoot!
  const sheet = () => root().querySelector('tb-sheet')!
  const tally = () => root().querySelector('.aside tb-tally') as HTMLElementTagNameMap['tb-tally'] | null
  const strip = () => root().querySelector('tb-places')!.shadowRoot!.querySelector('tb-tally')!
  const working = () => tally()?.shadowRoot?.querySelector('tb-working') ?? root().querySelector('tb-working')
  const title = () => textOf(working()?.shadowRoot?.querySelector('h3'))
  const number = (name: string) =>
    tally()!.shadowRoot!.querySelector<HTMLElement>(`[data-reading="${name}"]`)!
  const waterOf = () => finalDoughOf(app.desk!.formula!).lines.find(l => l.ingredient === 'Water')!
  const said = async (sentence: RegExp) => {
    await waitUntil(() => sentence.test(region.textContent ?? ''), 'it is announced').catch(() => {})
    match(region.textContent ?? '', sentence)
  }

  async function click(element: HTMLElement): Promise<void> {
    element.scrollIntoView({ block: 'center' })
    const box = element.getBoundingClientRect()
    await sendMouse({
      type: 'click',
      position: [Math.round(box.x + box.width / 2), Math.round(box.y + box.height / 2)],
    })
    await settled()
  }

  before(() => {
    dressPage()
    document.title = 'Tarebook'
    region = document.createElement('div')
    region.id = 'announcements'
    region.setAttribute('role', 'status')
    region.className = 'unseen'
    document.body.append(region)
  })
  beforeEach(async () => {
    await setViewport({ width: 1440, height: 900 })
    await start()
  })
  afterEach(() => app.remove())
  after(() => region.remove())

  it('a number opens its working below it, and Escape gives the focus back', async () => {
    number('trueHydration').focus()
    await press('Enter')
    await settled()
    equal(title(), 'True hydration')
    equal(number('trueHydration').getAttribute('aria-expanded'), 'true')
    ok(sheet().lit.has(waterOf().id), 'the water is lit')
    await press('Escape')
    await settled()
    equal(working(), null)
    equal(sheet().lit.size, 0)
    equal(tally()!.shadowRoot!.activeElement, number('trueHydration'))
  })

  it('a number pressed again puts its working away; another one’s takes its place', async () => {
    await click(number('salt'))
    equal(title(), 'Salt')
    await click(number('doughWeight'))
    equal(title(), 'Dough weight')
    await click(number('doughWeight'))
    equal(working(), null)
  })

  it('a working asked for elsewhere on the page opens at the head of the tally', async () => {
    wish(sheet(), { want: 'working', cell: `line ${waterOf().id} percent` })
    await settled()
    match(title(), /^Water, per cent of the flour/)
    deepEqual([...sheet().lit], [waterOf().id])
  })

  it('a working is put away when another formula is opened', async () => {
    await click(number('salt'))
    wish(app, { want: 'open', formula: app.desk!.workbook.formulas[1]!.id })
    await settled()
    equal(working(), null)
    equal(sheet().lit.size, 0)
  })

  it('a working follows a hold, which is announced in one sentence and undone', async () => {
    await click(number('trueHydration'))
    tally()!.shadowRoot!.querySelector<HTMLElement>('[data-hold="trueHydration"]')!.focus()
    await press('Enter')
    await settled()
    await type('75')
    await press('Enter')
    await said(/^True hydration held at 75 %; Water gives, 740 grams$/)
    await settled()
    match(textOf(working()!.shadowRoot!.querySelector('#figures')), /= 75 %$/)
    await press('Control+z')
    await said(/^Undone: Hold true hydration at 75 %; true hydration 70\.5 %$/)
  })

  it('a hold of another reading says what it does to the true hydration', async () => {
    tally()!.shadowRoot!.querySelector<HTMLElement>('[data-hold="prefermentedFlour"]')!.focus()
    await press('Enter')
    await settled()
    await type('20')
    await press('Enter')
    await said(/^Prefermented flour held at 20 %; Levain gives, 458 grams; true hydration 71\.9 %$/)
  })

  it('a hold out of reach is refused where it was typed: how far it goes, and nothing is announced', async () => {
    const hold = tally()!.shadowRoot!.querySelector<HTMLElement>('[data-hold="trueHydration"]')!
    region.textContent = ''
    hold.focus()
    await press('Enter')
    await settled()
    await type('5')
    await press('Enter')
    await settled()
    const form = tally()!.shadowRoot!.querySelector('tb-hold')!.shadowRoot!
    // 95.4545 g of water in the levain over 1,114.545 g of flour
    const refusal =
      'True hydration cannot be 5 %: at least 8.57 % while Bread flour, Wholemeal spelt and Levain stay.'
    equal(textOf(form.querySelector('[role=alert]')), refusal)
    equal(form.activeElement?.id, 'value')
    equal(app.desk!.formula!.holds, undefined)
    equal(region.textContent, '')
  })

  it('a hold that has no answer is announced by its reason', async () => {
    const grid = sheet().shadowRoot!.querySelector('tb-grid')!
    const flour = finalDoughOf(app.desk!.formula!).lines[0]!.id
    const row = () => grid.shadowRoot!.querySelector(`[data-row="${flour}"]`)
    const cell = (await waitUntil(row, 'the row is there')).querySelector<HTMLElement>(
      '[data-column=wholeDough]',
    )!
    cell.focus()
    await type('200')
    await press('Enter')
    // b + 95.4545 of the levain = 2 (b + 294.545), so b = -493.636
    await said(
      /^With Bread flour held at 200 % of all flour, Bread flour would have to weigh -493\.6 g, which is below 0\./,
    )
  })

  it('on a phone a reading of the foot opens its working above the foot', async () => {
    await setViewport({ width: 390, height: 844 })
    await waitUntil(
      () => root().querySelector('tb-places')?.shadowRoot?.querySelector('tb-tally'),
      'the foot is there',
    )
    await strip().updateComplete
    const button = strip().shadowRoot!.querySelector<HTMLElement>('[data-reading="salt"]')!
    await click(button)
    equal(title(), 'Salt')
    const [slip, places] = [working()!, root().querySelector('tb-places')!].map(e =>
      e.getBoundingClientRect(),
    )
    ok(slip!.bottom <= places!.top + 1, 'it lies above the foot')
    ok(slip!.top > 300, 'the sheet stays in sight')
    await passesAxe(document, true)
    await press('Escape')
    await settled()
    equal(working(), null)
    ok(strip().shadowRoot!.activeElement === button)
    await click(button)
    equal(title(), 'Salt')
    const name = sheet().shadowRoot!.querySelector('tb-grow')!
    await click(name)
    ok(!working(), 'it makes room for what is typed and offered')
    ok(sheet().shadowRoot!.activeElement === name)
  })

  it('on a phone a working makes room for what is typed in a cell of the sheet', async () => {
    await setViewport({ width: 390, height: 844 })
    const grid = await waitUntil(() => sheet().shadowRoot!.querySelector('tb-grid'), 'the sheet is there')
    await waitUntil(() => grid.narrow, 'it is narrow')
    const cell = await waitUntil(
      () => grid.shadowRoot!.querySelector<HTMLElement>(`[data-row="${waterOf().id}"] [data-column=weight]`),
      'the row is there',
    )
    cell.focus()
    await settled()
    await press('Alt+Enter')
    await settled()
    await waitUntil(() => working()?.shadowRoot?.activeElement, 'it has the focus')
    match(title(), /^Water/)
    cell.focus()
    await press('F2')
    await waitUntil(() => grid.shadowRoot!.activeElement?.matches('input'), 'its field is open')
    await type('7')
    await waitUntil(() => !working(), 'it makes room, though the focus has not left the grid')
  })

  it('on a phone a field that was gone into before the page hears of it is heard of at once', async () => {
    await setViewport({ width: 390, height: 844 })
    const field = document.body.appendChild(document.createElement('input'))
    const ends = new AbortController()
    let heard = 0
    const unheard = () => {}
    const others = {
      undo: unheard,
      redo: unheard,
      file: unheard,
      text: unheard,
      lost: unheard,
      dragging: unheard,
    }
    field.focus()
    listenToPage({ ...others, typing: () => heard++ }, ends.signal)
    ends.abort()
    field.remove()
    equal(heard, 1)
  })

  itOnce('has nothing that axe finds while a working is open and a hold is asked for', async () => {
    await click(number('trueHydration'))
    await click(tally()!.shadowRoot!.querySelector<HTMLElement>('[data-hold="salt"]')!)
    await passesAxe(document, true)
  })
})

import { emulateMedia, setViewport } from '@web/test-runner-commands'
import '../../components/page/tb-app'
import type { TbApp } from '../../components/page/tb-app'
import type { Formula } from '../../src/dough/document/formula'
import { equal, match, ok, waitUntil } from '../assert'
import { formulaOf } from '../dough/notation'
import { press, type } from '../keys'
import { itOnce } from '../once'
import { millWheat, straightDough } from './breads'
import { dressPage, english, passesAxe, textOf } from './mount'

let count = 0

describe('The page', () => {
  let app: TbApp
  let region: HTMLElement

  const spelt = () => straightDough('Bread flour = 100%\nWater = 66%\nSalt = 2%', 'Spelt tin')
  const bun = () => straightDough('Bread flour = 100%\nWhole milk = 60%\nSalt = 2%', 'Milk bun')

  /** Starts the app on a database of its own, the examples on its shelf. */
  async function start(formulas: readonly Formula[] = [millWheat(), spelt(), bun()], database?: string) {
    history.replaceState(null, '', '#')
    app = document.createElement('tb-app')
    app.numbers = english
    app.database = database ?? `page-${Date.now()}-${count++}`
    app.loadExamples = async () => ({ workbook: 'Saturday oven', formulas })
    document.body.append(app)
    await app.start()
    await app.furnished
    await settled()
  }

  async function settled(): Promise<void> {
    await app.updateComplete
    for (const inner of [head(), sheet(), tally(), shelf()]) await inner?.updateComplete
    if (sheet()) await customElements.whenDefined('tb-flour-weight')
    await sheet()?.shadowRoot?.querySelector('tb-flour-weight')?.updateComplete
  }

  const root = () => app.shadowRoot!
  const head = () => root().querySelector('tb-head')
  const sheet = () => root().querySelector('tb-sheet')
  const shelf = () => root().querySelector('tb-shelf')
  const tally = () =>
    root().querySelector('tb-tally') ??
    root().querySelector('tb-places')?.shadowRoot?.querySelector('tb-tally')
  const grows = () => [...sheet()!.shadowRoot!.querySelectorAll('tb-grow')]
  const button = (name: RegExp): HTMLButtonElement | undefined =>
    [...head()!.shadowRoot!.querySelectorAll('button')].find(b =>
      name.test(b.getAttribute('aria-label') ?? textOf(b)),
    )
  const weightField = () =>
    sheet()!.shadowRoot!.querySelector('tb-flour-weight')!.shadowRoot!.querySelector('input')!
  const grid = () => sheet()!.shadowRoot!.querySelector('tb-grid')!
  const openName = () => grows()[0]!.shadowRoot!.querySelector('textarea')!.value
  const said = (sentence: RegExp) =>
    waitUntil(
      () => sentence.test(region.textContent ?? ''),
      `${sentence} is announced; it is “${region.textContent}”`,
    )

  /** Puts a text on the clipboard as a baker would, from a field. */
  async function copy(text: string): Promise<void> {
    const field = document.createElement('textarea')
    document.body.append(field)
    field.value = text
    field.select()
    await press('Control+c')
    field.remove()
  }

  before(async () => {
    dressPage()
    document.title = 'Tarebook'
    region = document.createElement('div')
    region.id = 'announcements'
    region.setAttribute('role', 'status')
    region.className = 'unseen'
    document.body.append(region)
    await setViewport({ width: 1440, height: 900 })
  })

  afterEach(async () => {
    app.remove()
    await setViewport({ width: 1440, height: 900 })
  })

  after(() => region.remove())

  it('opens with the examples at the first start and says how to go on', async () => {
    await start()
    equal(openName(), 'Mill wheat')
    match(
      textOf(root().querySelector('.lesson')),
      /An example\. What is bold and underlined is typed: change it/,
    )
    match(document.title, /Mill wheat/)
    const buttons = [...root().querySelectorAll<HTMLElement>('.lesson button')]
    buttons.find(b => textOf(b) === 'Got it')!.focus()
    await press('Enter')
    await app.updateComplete
    equal(root().querySelector('.lesson'), null)
    await waitUntil(() => grid().shadowRoot?.activeElement, 'the focus is in the grid')
  })

  it('goes from the name of a formula to its grid at Enter', async () => {
    await start()
    grows()[0]!.focus()
    await type('Mill loaf')
    await press('Enter')
    await waitUntil(() => grid().shadowRoot?.activeElement, 'the focus is in the grid')
    equal(openName(), 'Mill loaf')
  })

  it('announces an edit once, in one sentence', async () => {
    await start()
    shelf()!.shadowRoot!.querySelectorAll('a')[1]!.click()
    await settled()
    weightField().focus()
    await type('800')
    await press('Enter')
    await said(/^Flour weight 800 g$/)
    equal(weightField().value, '800')
  })

  it('says and shows once that a soaker’s water is counted in, when it comes to be taken', async () => {
    await start([
      formulaOf(
        'Soaker:\nLinseed = 100 g\nWater = 150 g\n\nDough:\nBread flour = 1000 g\nWater = 760 g\nSalt = 20 g\nSoaker =',
      ),
    ])
    const line = app.desk!.formula!.stages[1]!.lines[3]!
    const cell = () =>
      grid().shadowRoot!.querySelector<HTMLElement>(`[data-row="${line.id}"] [data-column="weight"]`)!
    const toast = () => textOf(root().querySelector('.toast'))
    cell().focus()
    await type('250')
    await press('Enter')
    // 760 g of water and 150 g, on 1,000 g of flour
    const counted = 'The soaker’s water counted in: 91.0 % with it, 76.0 % without.'
    await said(new RegExp(`^Soaker set to 250 grams\\. ${counted.replaceAll('.', '\\.')}$`))
    await waitUntil(() => toast() === counted, `shown is “${toast()}”`)
    cell().focus()
    await type('125')
    await press('Enter')
    await said(/^Soaker set to 125 grams; true hydration 83\.5 %$/)
  })

  it('says a line’s weight and the true hydration it moved', async () => {
    await start()
    await app.updateComplete
    const line = app.desk!.formula!.stages[1]!.lines[2]!
    const { enterAmount } = await import('../../src/dough/edits/edits')
    const { askEdit } = await import('../../components/base/events')
    const at = { formula: app.desk!.formula!.id, stage: app.desk!.formula!.stages[1]!.id, line: line.id }
    askEdit(sheet()!, workbook => enterAmount(workbook, at, 'weight', '700'), { ...at, column: 'weight' })
    await said(/^Water set to 700 grams; true hydration 71\.4 %$/)
    await press('Control+z')
    await said(/^Undone: Set Water to 700 g; true hydration 70\.5 %$/)
    await press('Control+Shift+z')
    await said(/^Done again: Set Water to 700 g; true hydration 71\.4 %$/)
    await press('Control+z')
    await said(/^Undone/)
    await press('Control+y')
    await said(/^Done again/)
  })

  it('names on its buttons what would be undone and done again', async () => {
    await start()
    ok(button(/^Nothing to undo$/)!.disabled)
    grows()[0]!.focus()
    await type('Weekday loaf')
    await press('Enter')
    await settled()
    equal(openName(), 'Weekday loaf')
    button(/^Undo: Rename Mill wheat to Weekday loaf$/)!.focus()
    await press('Enter')
    await settled()
    equal(openName(), 'Mill wheat')
    ok(button(/^Redo: Rename Mill wheat to Weekday loaf$/))
  })

  it('leaves undo to the field while text is being typed', async () => {
    await start()
    grows()[0]!.focus()
    await type('Weekday loaf')
    await press('Enter')
    await settled()
    grows()[0]!.focus()
    await type('x')
    await press('Control+z')
    await settled()
    equal(app.desk!.formula!.name, 'Weekday loaf')
  })

  it('refuses a flour weight that is no weight, and says why beside it', async () => {
    await start([spelt()])
    weightField().focus()
    await type('much')
    await press('Enter')
    await waitUntil(() => weightField().getAttribute('aria-invalid') === 'true', 'it is refused')
    match(
      textOf(sheet()!.shadowRoot!.querySelector('tb-flour-weight')!.shadowRoot!.querySelector('#refusal')),
      /number of grams above 0/,
    )
    await press('Escape')
    await settled()
    equal(weightField().value, '1000')
  })

  it('says that the flour weight follows from the lines where they are in grams', async () => {
    await start()
    equal(sheet()!.shadowRoot!.querySelector('tb-flour-weight')!.shadowRoot!.querySelector('input'), null)
    match(
      textOf(sheet()!.shadowRoot!.querySelector('tb-flour-weight')!.shadowRoot!.querySelector('p')),
      /weighs 1,000 g in the final dough as its lines and holds say/,
    )
  })

  it('deletes a formula at once, opens its neighbour and takes it back', async () => {
    await start()
    shelf()!.shadowRoot!.querySelector<HTMLElement>('tb-menu[label="Actions for Mill wheat"]')!.focus()
    await press('ArrowDown', 'End', 'Enter')
    await waitUntil(() => openName() === 'Spelt tin', 'its neighbour is open')
    await settled()
    const notices = root().querySelector('tb-notices')!
    await notices.updateComplete
    match(textOf(notices.shadowRoot!.querySelector('section')), /Deleted Mill wheat\./)
    const undo = [...notices.shadowRoot!.querySelectorAll('button')].find(b => textOf(b) === 'Undo')!
    undo.focus()
    await press('Enter')
    await settled()
    equal(openName(), 'Mill wheat')
    equal(textOf(notices.shadowRoot!.querySelector('section')), '')
  })

  it('teaches on an empty shelf and begins with the keyboard', async () => {
    await start([spelt()])
    shelf()!.shadowRoot!.querySelector<HTMLElement>('tb-menu[label="Actions for Spelt tin"]')!.focus()
    await press('ArrowDown', 'End', 'Enter')
    await app.updateComplete
    const empty = await waitUntil(() => root().querySelector('tb-empty-shelf'), 'the shelf is empty')
    await waitUntil(() => empty.shadowRoot?.querySelector('.lined'), 'the empty shelf is fetched')
    match(textOf(empty.shadowRoot!.querySelector('h1')), /Nothing on the shelf yet/)
    await passesAxe(app)
    ;[...empty.shadowRoot!.querySelectorAll('button')].find(b => textOf(b) === 'Open the examples')!.focus()
    await press('Enter')
    await settled()
    equal(openName(), 'Spelt tin')
  })

  it('keeps what was edited: it is there when the page opens again', async () => {
    await start()
    const database = app.database
    grows()[0]!.focus()
    await type('Weekday loaf')
    await press('Enter')
    await waitUntil(() => app.kept.status === 'saved' && app.kept.at, 'the edit is saved')
    await settled()
    match(textOf(head()!.shadowRoot!.querySelector('.kept')), /^Saved \d/)
    app.remove()
    await start([], database)
    equal(openName(), 'Weekday loaf')
    equal(root().querySelector('.lesson'), null)
  })

  it('warns of perishable dough only where there is egg or milk', async () => {
    await start()
    const cautions = async () => {
      await customElements.whenDefined('tb-cautions')
      const element = sheet()!.shadowRoot!.querySelector('tb-cautions')!
      await element.updateComplete
      return textOf(element.shadowRoot!.querySelector('section:last-of-type'))
    }
    const raw = await cautions()
    match(raw, /Do not taste raw flour, dough or starter/)
    ok(!/2 hours/.test(raw))
    shelf()!.shadowRoot!.querySelectorAll('a')[2]!.click()
    await settled()
    match(await cautions(), /no more than 2 hours in all between 4 and 60 °C/)
  })

  it('offers to bring in a table that is pasted outside the fields', async () => {
    await start()
    await copy('ingredient,amount\nBread flour,100%\nWater,68%')
    head()!.shadowRoot!.querySelector<HTMLElement>('button:last-of-type')!.focus()
    await press('Control+v')
    const bringIn = await waitUntil(
      () => root().querySelector('tb-dialogs')!.shadowRoot?.querySelector('tb-bring-in'),
      'the dialog is fetched',
    )
    await waitUntil(() => /68/.test(bringIn.shadowRoot?.textContent ?? ''), 'it shows what was understood')
    await press('Escape')
  })

  it('leaves pasted text to a field', async () => {
    await start()
    await copy('a,b\nc,d')
    grows()[1]!.focus()
    await press('Control+v', 'Tab')
    await waitUntil(() => app.desk!.formula!.note === 'a,b\nc,d', 'the note holds it')
    equal(root().querySelector('tb-dialogs')!.renderRoot.querySelector('tb-bring-in'), null)
  })

  it('shows one place at a time on a phone, the three main readings always in sight', async () => {
    await setViewport({ width: 390, height: 844 })
    await start()
    await customElements.whenDefined('tb-places')
    const foot = root().querySelector('tb-places')!
    await foot.updateComplete
    const go = async (word: string) => {
      ;[...foot.shadowRoot!.querySelectorAll('button')].find(b => textOf(b).startsWith(word))!.focus()
      await press('Enter')
      await app.updateComplete
      await foot.updateComplete
    }
    const seen = () =>
      ['tb-shelf', 'main', '.aside']
        .filter(name => root().querySelector<HTMLElement>(name)?.offsetHeight)
        .join()
    equal(seen(), 'main')
    for (const [word, place] of [
      ['Shelf', 'tb-shelf'],
      ['Tally', '.aside'],
      ['Sheet', 'main'],
    ] as const) {
      await go(word)
      equal(seen(), place)
      const strip = foot.shadowRoot!.querySelector('tb-tally')?.shadowRoot?.querySelector('dl')
      equal(Boolean(strip), place !== '.aside') // it would be there twice
      if (strip) match(textOf(strip), /70\.5 %.*1\.88 %.*10\.3 %/)
      ok(Math.round(foot.getBoundingClientRect().bottom) <= innerHeight)
    }
  })

  it('opens the shelf as a drawer on a tablet held sideways; Escape closes it', async () => {
    await setViewport({ width: 1024, height: 768 })
    await start()
    equal(shelf(), null)
    const opener = button(/^Shelf$/)!
    opener.focus()
    await press('Enter')
    await waitUntil(() => shelf()?.shadowRoot?.activeElement, 'the focus is on the shelf')
    await passesAxe(app)
    await press('Escape')
    await waitUntil(() => !shelf(), 'the shelf is closed')
    await waitUntil(() => head()!.shadowRoot!.activeElement === opener, 'the focus is back on its button')
  })

  it('has no sideways overflow at 320 pixels', async () => {
    await setViewport({ width: 320, height: 640 })
    await start()
    for (const place of ['shelf', 'sheet', 'tally'] as const) {
      app.place = place
      await settled()
      await waitUntil(() => document.documentElement.scrollWidth <= 320, `${place} fits`)
    }
  })

  for (const [width, height] of [
    [1440, 900],
    [768, 1024],
    [390, 844],
  ] as const) {
    for (const colorScheme of ['light', 'dark'] as const) {
      itOnce(`has nothing that axe finds at ${width} pixels, ${colorScheme}`, async () => {
        await emulateMedia({ colorScheme })
        await setViewport({ width, height })
        await start()
        await passesAxe(app)
        if (width === 390) {
          for (const place of ['shelf', 'tally'] as const) {
            app.place = place
            await settled()
            await passesAxe(app)
          }
        }
        await emulateMedia({ colorScheme: 'light' })
      })
    }
  }
})

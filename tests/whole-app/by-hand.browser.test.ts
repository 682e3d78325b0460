import { emulateMedia } from '@web/test-runner-commands'
import { deepEqual, equal, match, ok, waitUntil } from '../assert.js'
import { press, type } from '../keys.js'
import { OpenApp } from './app.js'

const percent = /% of flour/

/** What a baker does with the examples, by keys and pointer. */
describe('By hand', () => {
  const run = Date.now()
  let app: OpenApp
  const text = (element: Element | undefined | null) =>
    (element?.textContent ?? '').replace(/\s+/g, ' ').trim()
  const share = (ingredient: string) => text(app.cell('Final dough', ingredient, percent))
  const tally = () => text(app.maybe('tb-tally')?.shadowRoot?.querySelector('dl'))
  const cellWithFocus = () => text(app.focused?.closest('tr')?.cells[0])

  async function enter(ingredient: string, amount: string): Promise<void> {
    await app.goTo('Final dough', ingredient, percent)
    await type(amount)
    await press('Enter')
    await waitUntil(() => share(ingredient).includes(amount), `${ingredient} is ${amount} %`)
  }

  before(async () => {
    app = await OpenApp.open(`by-hand-${run}`)
    await app.click('nav a', /^Mill wheat/)
    await app.find('nav a[aria-current=page]', /^Mill wheat/)
    await waitUntil(() => share('Water').includes('70'), 'its sheet is drawn')
  })
  after(() => app.close())

  it('an amount is typed, undone and done again', async () => {
    const before = tally()
    await enter('Water', '72')
    await waitUntil(() => tally() !== before, 'the readings follow')
    await press('Control+z')
    await waitUntil(() => share('Water').includes('70') && tally() === before, 'all is as before')
    await press('Control+y')
    await waitUntil(() => share('Water').includes('72'), 'it is done again')
    await press('Control+z')
    await waitUntil(() => share('Water').includes('70'), 'and undone')
  })

  it('half a cup is understood on a page that has only just opened, and again when it opens with it', async () => {
    const fresh = await OpenApp.open(`by-hand-${run}-said`)
    const row = () => text(fresh.cell('Final dough', 'Salt', percent)?.closest('tr'))
    const problems: string[] = []
    const inItsRow = () =>
      waitUntil(() => {
        problems.push(...fresh.all('tr.problem:not(.method)').map(text))
        return /half a cup/.test(row()) && /146/.test(row())
      }, `half a cup of salt is 146 g, at 292 g a cup; its row is ${row()}`)
    await fresh.goTo('Final dough', 'Salt', percent)
    await type('half a cup')
    await press('Enter')
    await inItsRow()
    await waitUntil(() => /^Saved/.test(text(fresh.maybe('.kept'))), 'it is saved')
    await fresh.reload()
    await inItsRow()
    deepEqual(problems, [])
    fresh.close()
  })

  it('a typed number is underlined', () => {
    const typed = app.cell('Final dough', 'Water', percent)?.querySelector('.typed')
    const { textDecorationLine, textDecorationThickness } = app.frame.contentWindow!.getComputedStyle(typed!)
    equal(`${textDecorationLine} ${textDecorationThickness}`, 'underline 2px')
  })

  it('a reading is clicked, and typed over where its working lies open', async () => {
    await app.click('button.how[data-reading=trueHydration]')
    await app.find('tb-working')
    await waitUntil(() => app.focused?.localName === 'h3', 'the heading of its working has the focus')
    await type('72')
    await press('Enter')
    await app.find('p.kept', /True hydration held at 72\s%/)
    await press('Control+z')
    await waitUntil(() => !app.maybe('p.kept'), 'it is released')
  })

  it('arrows go from cell to cell, and with Alt they move a line', async () => {
    await app.goTo('Final dough', 'Salt', percent)
    await press('ArrowUp')
    match(cellWithFocus(), /^Levain/)
    await press('ArrowDown', 'Alt+ArrowUp')
    const names = () => {
      const body = app.focused?.closest('tbody')
      return [...(body?.rows ?? [])].map(row => text(row.cells[0])).join()
    }
    await waitUntil(() => /Salt.*Levain/.test(names()), 'the salt stands before the levain')
    match(cellWithFocus(), /^Salt/)
    await press('Control+z')
    await waitUntil(() => /Levain.*Salt/.test(names()), 'it is back')
  })

  it('a new ingredient comes into the larder', async () => {
    await app.click('button', 'Larder')
    await app.click('button', 'New ingredient')
    await app.click('input#name')
    await type('Hill barley')
    await app.click('.choice', /^Flour/)
    await app.click('footer .main', 'Save')
    await app.find('.row', /^Hill barley/)
    await press('Escape')
    await waitUntil(() => !app.maybe('dialog[open]'), 'the larder is closed')
  })

  it('a second tab reads along, and takes over when asked', async () => {
    const first = app
    const second = await OpenApp.open(`by-hand-${run}`)
    await second.find('*', /Edit here/)
    first.frame.style.zIndex = '10'
    await enter('Water', '71')
    await waitUntil(
      () => text(second.cell('Final dough', 'Water', percent)).includes('71'),
      'the second tab shows it',
    )
    first.frame.style.zIndex = '8'
    await second.click('button', 'Edit here')
    await waitUntil(() => !second.maybe('button', 'Edit here'), 'it may edit')
    app = second
    await enter('Water', '70')
    await waitUntil(
      () => text(first.cell('Final dough', 'Water', percent)).includes('70'),
      'the first tab follows in its turn',
    )
    first.close()
  })

  it('all is at hand on a phone, and nothing sticks out', async () => {
    app.close()
    app = await OpenApp.open(`phone-${run}`, {
      page: '/site/index.html?offline=no&',
      width: 390,
      height: 844,
    })
    const { documentElement } = app.frame.contentDocument!
    for (const place of ['Shelf', 'Tally', 'Sheet']) {
      await app.click('nav[aria-label=Places] button', new RegExp(`^${place}`))
      await app.find('nav[aria-label=Places] button[aria-current=page]', new RegExp(`^${place}`))
      ok(documentElement.scrollWidth <= 390, `${place} is ${documentElement.scrollWidth} px wide`)
    }
    const readings = () =>
      text(app.maybe('tb-places')?.shadowRoot?.querySelector('tb-tally')?.shadowRoot?.querySelector('dl'))
    const before = readings()
    await app.goTo('Final dough', 'Water', percent)
    await type('80')
    await press('Enter')
    await waitUntil(() => readings() !== before, 'the readings at its foot follow')
  })

  it('it is dark where the browser is', async () => {
    const light = (colour: string) => {
      const [red = 0, green = 0, blue = 0] = colour.match(/[\d.]+/g)!.map(Number)
      return (red + green + blue) / 3 / 255
    }
    const ground = () =>
      light(app.frame.contentWindow!.getComputedStyle(app.frame.contentDocument!.body).backgroundColor)
    ok(ground() > 0.8, `the ground is ${ground()}`)
    await emulateMedia({ colorScheme: 'dark' })
    await waitUntil(() => ground() < 0.3, 'the ground is dark')
    await emulateMedia({ colorScheme: 'light' })
    await waitUntil(() => ground() > 0.8, 'the ground is light again')
  })

  it('it opens and computes without a network, and keeps what was done', async () => {
    app.close()
    const folder = `/apart/${run}/`
    app = await OpenApp.open(`offline-${run}`, { page: `${folder}index.html?` })
    const { serviceWorker } = app.frame.contentWindow!.navigator
    const { active } = await serviceWorker.ready
    await waitUntil(() => active?.state === 'activated', 'all files are kept')
    equal(await (await fetch(`${folder}cut`)).text(), 'cut')
    let isCut = false
    await fetch(`${folder}manifest.webmanifest`, { cache: 'no-store' }).catch(() => {
      isCut = true
    })
    ok(isCut, 'the server answers no more')
    await app.reload()
    await waitUntil(() => share('Water').includes('70'), 'its sheet is drawn')
    const before = tally()
    await enter('Water', '75')
    await waitUntil(() => tally() !== before, 'the readings follow')
    await app.reload()
    await waitUntil(() => share('Water').includes('75'), 'it is as it was left')
  })
})

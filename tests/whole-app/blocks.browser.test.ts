import { equal, match, ok, waitUntil } from '../assert.js'
import { press, type } from '../keys.js'
import { OpenApp } from './app.js'

const percent = /% of flour/

describe('A block of cells', () => {
  let app: OpenApp
  const text = (element: Element | undefined | null) =>
    (element?.textContent ?? '').replace(/\s+/g, ' ').trim()
  const share = (ingredient: string) => text(app.cell('Final dough', ingredient, percent))
  const clipboard = () => navigator.clipboard.readText()

  before(async () => {
    app = await OpenApp.open(`blocks-${Date.now()}`)
    await app.click('nav a', /^Mill wheat/)
    await app.find('nav a[aria-current=page]', /^Mill wheat/)
    await waitUntil(() => share('Water').includes('70'), 'its sheet is drawn')
  })
  after(() => app.close())

  /** Reaches the share of the final dough's water by keys alone, on a page that was never clicked. */
  async function tabToWater(): Promise<void> {
    await app.reload()
    await waitUntil(() => share('Water').includes('70'), 'its sheet is drawn')
    // A link, in which no caret stands.
    const link = await app.find('nav a[aria-current=page]')
    link.focus()
    for (let tabs = 0; tabs < 30 && !app.focused?.closest('[role=grid]'); tabs += 1) await press('Tab')
    ok(app.focused?.closest('[role=grid]'), 'Tab leads into the grid')
    await press('Control+Home')
    const water = () => app.cell('Final dough', 'Water', percent)
    for (let rows = 0; rows < 30 && app.focused?.closest('tr') !== water()?.closest('tr'); rows += 1)
      await press('ArrowDown')
    await press('ArrowRight')
    await waitUntil(() => app.focused === water(), 'the water is reached by keys')
  }

  it('is copied, and pasted over what was typed since', async () => {
    await app.goTo('Final dough', 'Water', percent)
    await press('Shift+ArrowDown', 'Shift+ArrowDown', 'Control+c')
    await waitUntil(async () => /70/.test(await clipboard()), 'it is in the clipboard')
    match(await clipboard(), /70%?\n22%?\n2\.2%?/)
    await app.goTo('Final dough', 'Water', percent)
    await type('65')
    await press('Enter')
    await waitUntil(() => share('Water').includes('65'), 'the water is another')
    await app.goTo('Final dough', 'Water', percent)
    await press('Control+v')
    await waitUntil(() => share('Water').includes('70'), 'it is pasted')
    equal(share('Salt').includes('2.2'), true)
  })

  it('is copied, cut and pasted where Tab led, without a click before', async () => {
    await tabToWater()
    await navigator.clipboard.writeText('nothing yet')
    await press('Shift+ArrowDown', 'Shift+ArrowDown', 'Control+c')
    await waitUntil(async () => /^70%?\n22%?\n2\.2%?$/.test(await clipboard()), 'it is copied')
    await press('Control+x')
    await waitUntil(() => !share('Salt').includes('2.2'), 'it is cut')
    match(await clipboard(), /^70%?\n22%?\n2\.2%?$/)
    await press('ArrowUp', 'ArrowUp', 'Control+v')
    await waitUntil(() => share('Salt').includes('2.2'), 'it is pasted')
    equal(share('Water').includes('70'), true)
  })

  it('that another program copied is pasted where Tab led, and not brought in as a formula', async () => {
    await tabToWater()
    const before = [share('Water'), share('Salt')]
    await navigator.clipboard.writeText('66\n22\n2\n')
    await press('Control+v')
    await waitUntil(() => share('Water').includes('66'), 'it is pasted')
    match(share('Salt'), /^2 %|^2%|^2\b/)
    equal(app.maybe('tb-bring-in'), undefined)
    await press('Control+z')
    const now = () => [share('Water'), share('Salt')].join()
    await waitUntil(
      () => now() === before.join(),
      `one step back takes all of it back, to ${before}, not ${now()}`,
    )
  })
})

import { larderOf } from '../../src/dough/document/larder.js'
import { usualLarder } from '../../src/dough/larder/usual-larder.js'
import { linkOf } from '../../src/exchange/index.js'
import { equal, match, ok, waitUntil } from '../assert.js'
import { press, type } from '../keys.js'
import { straightDough } from '../screens/breads.js'
import { OpenApp } from './app.js'

/** Back leaves what lies over the page, and never changes what is beneath. */
describe('Back and forward', () => {
  let app: OpenApp

  before(async () => {
    app = await OpenApp.open(`back-and-forward-${Date.now()}`)
    await app.click('nav a', /^Poolish baguette/)
    await waitUntil(() => place() === 'Poolish baguette', 'a formula is open')
    await app.click('nav a', /^Two-build rye/)
    await waitUntil(() => place() === 'Two-build rye', 'the second formula is open')
  })
  after(() => app.close())

  const page = () => app.frame.contentWindow!
  const place = () => (app.maybe('textarea[aria-label="Name of the formula"]') as HTMLTextAreaElement)?.value
  const heading = () => app.maybe('dialog[open] h2')?.textContent?.trim()
  const isOver = (name: string | undefined) =>
    waitUntil(() => heading() === name, `${name} is open, not ${heading()}`)
  const back = () => page().history.back()
  /** Goes back to where it is not let go, and waits until the history is where it was. */
  async function backInVain(): Promise<void> {
    const before = page().history.state
    let left = false
    page().addEventListener('popstate', () => {
      left ||= page().history.state?.over !== before.over
    })
    back()
    await waitUntil(() => left && page().history.state?.over === before.over, 'the history is where it was')
  }
  const forward = () => page().history.forward()

  it('Back closes a dialog, Forward opens it again, and one closed by Escape is gone from the way back', async () => {
    const address = page().location.href
    await app.click('button', 'Help')
    await isOver('Help')
    back()
    await isOver(undefined)
    equal(place(), 'Two-build rye')
    equal(page().location.href, address)
    forward()
    await isOver('Help')
    await press('Escape')
    await isOver(undefined)
    await app.click('button', 'Larder')
    await isOver('Larder')
    await press('Escape')
    await isOver(undefined)
    back()
    await waitUntil(() => place() === 'Poolish baguette', 'Back goes to the formula before')
    forward()
    await waitUntil(() => place() === 'Two-build rye', 'and Forward to this one')
  })

  it('asks before it loses what was typed, and the way back stays what it was', async () => {
    await app.click('button', 'Bring in')
    await app.click('#pasted')
    await type('half a recipe')
    const field = () => app.maybe('#pasted') as HTMLTextAreaElement | undefined
    for (const answer of ['Go on writing', 'Leave without it']) {
      await backInVain()
      await app.find('.question', /^Leave without keeping/)
      equal(field()?.value, 'half a recipe')
      await backInVain() // asked already
      await app.click('footer button', answer)
      await waitUntil(() => !app.maybe('.question'), 'it is answered')
      equal(field()?.value, answer === 'Go on writing' ? 'half a recipe' : undefined)
    }
    equal(place(), 'Two-build rye')
  })

  it('goes back within a dialog first', async () => {
    await app.click('button', 'Larder')
    await app.click('button', 'New ingredient')
    await isOver('New ingredient')
    await backInVain()
    await isOver('Larder')
    back()
    await isOver(undefined)
    equal(place(), 'Two-build rye')
  })

  it('leaves the page to print as it leaves a dialog, and a page loaded anew shows it again', async () => {
    const card = () => app.maybe('.paper h1')?.textContent
    await app.click('button', 'Actions for Two-build rye')
    await app.click('[role=menuitem]', 'Print a card')
    await waitUntil(() => card() === 'Two-build rye', 'the card is there')
    back()
    await waitUntil(() => !card() && place() === 'Two-build rye', 'the sheet is there again')
    forward()
    await waitUntil(() => card() === 'Two-build rye', 'the card is there again')
    await app.reload()
    await waitUntil(() => card() === 'Two-build rye', 'after a reload too')
    back()
    await waitUntil(() => !card() && place() === 'Two-build rye', 'and Back leaves it')
  })

  it('leaves a formula that came by a link, unless something was said about it', async () => {
    const formula = straightDough('Bread flour = 100%\nMoon dust = 66%', 'By link')
    const link = await linkOf(formula, '', larderOf(usualLarder))
    ok(typeof link === 'string')
    page().location.hash = link
    await isOver('A formula came with the link')
    back()
    await isOver(undefined)
    equal(place(), 'Two-build rye')
    forward()
    await isOver('A formula came with the link')
    await app.click('footer button', 'Add to my workbook')
    await waitUntil(() => place() === 'By link', 'it is added and open')
    match(page().location.hash, /^#[\w-]+$/)
  })
})

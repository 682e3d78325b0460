import { equal, match, waitUntil } from '../assert.js'
import { press, type } from '../keys.js'
import { OpenApp } from './app.js'

// In a page of its own: in one with others the page that writes to the clipboard has not always the focus.
/** Six bake at once, 45 min; its proof allows 20 min between the first load and the last. Made for six. */
const csv = [
  'formula,stage,ingredient,amount,counts as,setting',
  'Bridge loaf,,,6 × 900 g,,make',
  'Bridge loaf,Final dough,Bread flour,1000 g,,',
  'Bridge loaf,Final dough,Water,650 g,,',
  'Bridge loaf,Final dough,Mix,10 min,hands,step',
  'Bridge loaf,Final dough,Proof,50–70 min,wait,step',
  'Bridge loaf,Final dough,Bake,"45 min, 6 at once",bake,step',
].join('\n')

describe('A day whose loads do not fit', () => {
  let app: OpenApp
  const value = () => (app.focused as HTMLTextAreaElement | undefined)?.value

  before(async () => {
    app = await OpenApp.open(`steps-${Date.now()}`)
    await app.paste(csv)
    await app.click('footer button', /^Add/)
    await app.find('a', /^Bridge loaf/)
    await app.click('nav button', 'Days')
    await app.click('button', 'New day')
    await app.click('button', 'Add a bread')
    await app.click('[role=menuitem]', 'Bridge loaf')
    await app.find('.note', /^All of it fits/)
  })
  after(() => app.close())

  it('leads to the step that says how many bake at once; changed there, it fits', async () => {
    const field = await app.click('input', /^Pieces of Bridge loaf/)
    await press('Control+a')
    await type('12')
    await press('Enter')
    equal((field as HTMLInputElement).value, '12')
    const day = location.hash
    await app.click('.warn button', 'Go to Bake of Bridge loaf')
    await waitUntil(() => value() === '45 min, 6 at once', 'the focus is in what is said of the step')
    await press('Control+a')
    await type('45 min, 12 at once')
    await press('Enter')
    history.back()
    await waitUntil(() => location.hash === day, 'back at the day')
    match(
      (await app.find('.note', /^All of it fits/)).textContent ?? '',
      /You (?:begin|would have to begin) on/,
    )
    equal(app.maybe('.warn'), undefined)
  })
})

import { deepEqual, equal, match, waitUntil } from '../assert.js'
import { press } from '../keys.js'
import { OpenApp } from './app.js'

const recipe = `Pond loaf

Levain
20 g ripe starter
50 g bread flour
50 g water

Dough
500 g bread flour
350 g water
10 g salt
120 g levain

Method
For the levain, mix the starter, flour and water and leave for 8 to 10 hours at 24 °C.
Mix the flour and the water for the dough with the levain. Cover and let rest 30 minutes.
Add the salt and knead for 5 minutes.
Bulk ferment 4 hours, with four sets of folds every half hour.
Shape, and retard overnight.
Bake 25 minutes covered at 230 °C, then 20 uncovered.
`

/** The whole app with real keys: a recipe's own method is read, mended, added, sent out and read again. */
describe('A recipe with its method', function () {
  this.timeout(60_000)
  let app: OpenApp
  let sent = ''

  after(() => app.close())

  async function pasted(text: string): Promise<void> {
    await navigator.clipboard.writeText(text)
    await app.click('button', 'Help')
    await app.find('dialog[open]')
    await press('Escape')
    await waitUntil(() => !app.maybe('dialog[open]'), 'the focus is on a button of the page')
    await press('Control+v')
    await app.find('#understood')
  }
  const values = (selector: string, within = app) =>
    within.all(selector).map(field => (field as HTMLInputElement).value)

  it('is pasted, and its steps stand beside their words', async () => {
    app = await OpenApp.open(`method-arrives-${Date.now()}`)
    await pasted(recipe)
    await app.find('#steps', 'Method: 10 steps')
    deepEqual(values('li .text').slice(0, 4), ['', '8–10 h, at 24 °C', '', '30 min'])
    await app.find('li', /and retard overnight\..*“Overnight” is taken as 8 to 12 hours/)
  })

  it('one is mended, and all is added', async () => {
    const at = app.all('li .text').findIndex(field => (field as HTMLInputElement).value === '8–12 h')
    app.all('li .text')[at]!.focus()
    await navigator.clipboard.writeText('12–15 h, in the fridge')
    await press('Control+a', 'Control+v', 'Tab')
    await waitUntil(() => values('li .text')[at] === '12–15 h, in the fridge', 'it is mended')
    await app.click('button', 'Add 1 formula')
    await waitUntil(() => app.cell('Dough', 'Salt', /^Weight|^Grams/), 'it is open')
  })

  it('stands beneath its stages', async () => {
    const beneath = () => app.maybe('tb-method')
    await waitUntil(() => {
      beneath()?.scrollIntoView()
      return app.maybe('h3', 'Levain') && app.maybe('ol[data-stage] li[data-step]')
    }, 'the method is shown')
    const steps = app
      .all('li.step:not(.new)')
      .map(line =>
        ['does', 'text']
          .map(f => line.querySelector<HTMLInputElement>(`[data-field=${f}]`)!.value)
          .join(': '),
      )
    deepEqual(steps, [
      'Mix: ',
      'Rest: 8–10 h, at 24 °C',
      'Mix: ',
      'Rest: 30 min',
      'Add and knead: 5 min, adds Salt',
      'Bulk: 4 h, 4 × 5 min every 30 min',
      'Shape: ',
      'Retard: 12–15 h, in the fridge',
      'Bake covered: 25 min, at 230 °C',
      'Bake uncovered: 20 min, at 230 °C',
    ])
  })

  it('is sent out as Markdown', async () => {
    await app.click('button', 'Send out')
    await app.click('.form', 'Markdown')
    sent = await waitUntil(
      () => (app.maybe('textarea#markdown') as HTMLTextAreaElement | undefined)?.value,
      'there is the text',
    )
    match(sent, /^8\. Bake uncovered: 20 min, at 230 °C/m)
    await press('Escape')
    await waitUntil(() => !app.maybe('dialog[open]'), 'the dialog is closed')
  })

  it('and is the same when that is brought in again', async () => {
    await pasted(sent)
    await app.find('#understood', /1 formula and 7 lines understood/)
    equal(app.all('.here', 'On the shelf already, the same in everything.').length, 1)
  })
})

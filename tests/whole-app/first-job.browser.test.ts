import { equal, ok, waitUntil } from '../assert.js'
import { press, type } from '../keys.js'
import { OpenApp } from './app.js'

// Levain: starter 20 % (flour 10, water 10), flour 100 %, water 80 % → flour 110, water 90 of 200. The dough
// takes 250 g of it: (680 + 112.5) ÷ (1000 + 137.5) = 69.67 %. With 100 % water in it: 805 ÷ 1125 = 71.56 %.
const name = 'Kitchen loaf'
const percent = /% of flour/

describe('A first formula, from an empty database to another kitchen', () => {
  const run = Date.now()
  let app: OpenApp
  let csv = ''
  let readings = ''

  const reading = async (words: string) =>
    (await app.find('tb-tally')).shadowRoot!.textContent!.includes(words)
  const trueHydration = () =>
    app
      .maybe('tb-tally')
      ?.shadowRoot?.textContent?.replace(/\s+/g, ' ')
      .match(/True hydration.*?(\d+\.\d+) ?%/)?.[1]
  const allReadings = () => app.maybe('tb-tally')!.shadowRoot!.textContent!.replace(/\s+/g, ' ').trim()

  async function enter(stage: string, ingredient: string, text: string): Promise<void> {
    await app.goTo(stage, ingredient, percent)
    await type(text)
    await press('Enter')
    await waitUntil(
      () => app.cell(stage, ingredient, percent)?.textContent?.includes(text),
      `${ingredient} in ${stage} is ${text} %`,
    )
  }

  async function csvOf(): Promise<string> {
    await app.click('button', 'Send out')
    const field = (await app.find('textarea#csv')) as HTMLTextAreaElement
    const text = await waitUntil(() => field.value, 'there is CSV to send out')
    await app.click('button', 'Copy')
    await app.find('*', /copied/i)
    await press('Escape')
    await waitUntil(() => !app.maybe('dialog[open]'), 'the dialog is closed')
    return text
  }

  before(async () => {
    app = await OpenApp.open(`first-job-${run}`)
  })
  after(() => app.close())

  it('is begun blank, by percentages, and named', async () => {
    await app.beginBlank()
    await press('Control+a')
    await type(name)
    await press('Enter')
    await app.find('nav a', new RegExp(`^${name}`))
  })

  it('shows its true hydration, the levain counted', async () => {
    await enter('Final dough', 'Water', '68')
    await enter('Final dough', 'Salt', '2.1')
    await enter('Final dough', 'Levain', '25')
    await enter('Levain', 'Water', '80')
    await waitUntil(() => trueHydration() === '69.7', 'true hydration is 69.7 %')
  })

  it('follows when the water of the levain changes, and announces it', async () => {
    await enter('Levain', 'Water', '100')
    await waitUntil(() => trueHydration() === '71.6', 'true hydration is 71.6 %')
    const spoken = app.frame.contentDocument!.querySelector('[aria-live=polite]')!
    await waitUntil(
      () => /Water set to .*114 grams; true hydration 71\.6 %/.test(spoken.textContent ?? ''),
      'the change is announced',
    )
    readings = allReadings()
  })

  it('goes out as CSV', async () => {
    csv = await csvOf()
    ok(csv.includes(`${name},Levain,Water,100%`))
    ok(csv.includes(`${name},Final dough,Levain,25%`))
  })

  it('comes back by undo after it was deleted', async () => {
    await app.click('button', new RegExp(`^Actions for ${name}`))
    await app.click('[role=menuitem]', /^Delete/)
    await waitUntil(() => !app.all('nav a', new RegExp(`^${name}`)).length, 'it is off the shelf')
    await press('Control+z')
    await waitUntil(() => trueHydration() === '71.6', 'it is open again')
  })

  it('is still there when the page is loaded anew, with what was typed a moment before', async () => {
    await enter('Final dough', 'Salt', '2.3')
    await enter('Final dough', 'Salt', '2.2')
    await app.reload()
    await waitUntil(
      () => app.cell('Final dough', 'Salt', percent)?.textContent?.includes('2.2'),
      'it is open with its salt',
    )
    await enter('Final dough', 'Salt', '2.1')
    await app.reload()
    await waitUntil(() => trueHydration() === '71.6', 'it is open with its reading')
    equal(allReadings(), readings)
  })

  it('has the same numbers in another database that takes the CSV in', async () => {
    app.close()
    app = await OpenApp.open(`second-kitchen-${run}`)
    await app.click('button', 'Bring in')
    await app.click('textarea#pasted')
    await press('Control+v')
    await app.click('button', 'Read it')
    await app.click('button', 'Add 1 formula')
    await waitUntil(() => trueHydration() === '71.6', 'the formula is open with its reading')
    equal(allReadings(), readings)
    equal(await csvOf(), csv)
  })

  it('knows what a reading is made of', async () => ok(await reading('Prefermented flour')))
})

import { equal, ok, waitUntil } from '../assert.js'
import { press, type } from '../keys.js'
import { OpenApp } from './app.js'

// The blank formula: flour 100 %, water 70 %, salt 2 %, levain 20 % of 1000 g; the levain is half flour, half water.
// With 18 % of the flour prefermented all flour is 1000 ÷ 0.82 = 1219.51 g and the levain 2 × 219.51 = 439.02 g; with
// 78 % true hydration the water line is 0.78 × 1219.51 − 219.51 = 731.71 g. The dough weighs 2190.73 g; six loaves of
// 850 g are 2.32799 of it and take 1022.05 g of levain: with 60 g kept back 1082.05 g are made.
const grams = /^Grams/

describe('Any number can be typed, and every number shows its working', () => {
  let app: OpenApp
  const tally = () => (app.maybe('tb-tally')?.shadowRoot?.textContent ?? '').replace(/\s+/g, ' ')
  const gramsOf = (stage: string, ingredient: string) =>
    app.cell(stage, ingredient, grams)?.textContent?.replace(/\s+/g, ' ').trim() ?? ''

  before(async () => {
    app = await OpenApp.open(`every-number-${Date.now()}`)
    await app.beginBlank()
    await type('Held loaf')
    await press('Enter')
  })
  after(() => app.close())

  async function hold(reading: string, value: string): Promise<void> {
    await app.click('button', `Hold ${reading}`)
    await waitUntil(() => app.focused?.tagName === 'INPUT', 'the form to hold it has the focus')
    await press('Control+a')
    await type(value)
    await press('Enter')
    await app.find('button', `Change the hold on ${reading}`)
  }

  it('holds true hydration and prefermented flour, and the lines that give follow', async () => {
    await hold('true hydration', '78')
    await hold('prefermented flour', '18')
    await waitUntil(() => gramsOf('Final dough', 'Water').startsWith('732'), 'the water weighs 732 g')
    await waitUntil(() => gramsOf('Final dough', 'Levain').startsWith('439'), 'the levain weighs 439 g')
    ok(/gives/.test(gramsOf('Final dough', 'Water')), 'the water says that it gives')
    ok(/78\.0 ?% held/.test(tally()) && /18\.0 ?% held/.test(tally()), tally())
  })

  it('makes six loaves of 850 g and keeps 60 g of levain', async () => {
    await app.click('button#toggle')
    const make = (await app.find('select#make')) as HTMLSelectElement
    make.focus()
    await press('ArrowDown', 'Tab')
    await type('6')
    await press('Tab')
    await type('850')
    await press('Tab')
    await app.click('input', /^Keep back of Levain/)
    await type('60')
    await press('Enter')
    await app.find('*', /Levain: 1,082 g made, 1,022 g goes into Final dough, 60 g kept back/)
    await waitUntil(
      () => app.cell('Final dough', 'Water', /^Batch/)?.textContent?.includes('1,70'),
      'the batch is in the grid',
    )
    await app.click('button#toggle')
  })

  it('shows how true hydration is worked out, and is followed down to what was typed', async () => {
    await app.click('button', /how true hydration is worked out/)
    const shown = () => app.maybe('tb-working')?.shadowRoot?.textContent?.replace(/\s+/g, ' ') ?? ''
    await waitUntil(() => /all water ÷ all flour/.test(shown()), 'the working is open')
    ok(/951\.2 g ÷ 1,219\.5 g = 78 %/.test(shown()), shown())
    await app.click('button', /^water carried by Levain/i)
    await waitUntil(() => /what each line of Levain brings/.test(shown()), 'the levain is followed')
    await app.click('button', /^Water in Levain/i)
    await waitUntil(() => /typed: 100%/.test(shown()), 'it ends at what was typed')
    await press('Escape')
    await waitUntil(() => !app.maybe('tb-working'), 'the working is closed')
  })

  it('takes a share of the whole dough, and lets it go when an amount is typed', async () => {
    await app.goTo('Final dough', 'Salt', /whole/)
    await type('2.1')
    await press('Enter')
    await waitUntil(() => gramsOf('Final dough', 'Salt').startsWith('25.6'), 'the salt weighs 25.6 g') // 0.021 × 1219.51
    await app.goTo('Final dough', 'Salt', grams)
    await type('24')
    await press('Enter')
    await waitUntil(
      () => /^24\b(?!.*gives)/.test(gramsOf('Final dough', 'Salt')),
      'the salt weighs what was typed',
    )
  })

  it('works out a jotting that an amount uses', async () => {
    ;(await app.find('tb-jottings')).scrollIntoView({ behavior: 'instant' }) // beneath the method
    await app.click('input', 'Name of a new jotting')
    await type('oil_for_six = 6*3 g')
    await press('Enter')
    await app.find('button', /18(\.0)? g/)
    await app.goTo('Final dough', 'Salt', grams)
    await type('oil_for_six + 2 g')
    await press('Enter')
    await waitUntil(() => /^20\b/.test(gramsOf('Final dough', 'Salt')), 'the salt weighs 20 g')
  })

  it('keeps a state, is set beside it and brought back; is written in grams without a change', async () => {
    await app.click('button', 'Kept states')
    await app.click('button', 'Keep this state')
    await app.find('button', /^Bring back/)
    const before = tally()
    await app.click('button', 'Grams or %')
    await app.click('button', 'Write in grams')
    await waitUntil(
      () => gramsOf('Levain', 'Water').length > 0 && app.cell('Levain', 'Bread flour', grams),
      'it is written in grams',
    )
    equal(tally(), before)
    await app.click('button', /^Read/)
    await app.find('dialog[open]')
    await app.find('th, h2, h3', /Kept|true|Held loaf/)
    await press('Escape')
    await app.click('button', /^Bring back/)
    await waitUntil(() => tally() === before, 'the readings are as they were')
  })
})

import { match, waitUntil } from '../assert.js'
import { press, type } from '../keys.js'
import { OpenApp } from './app.js'

const percent = /% of flour/

/** The whole app with the real mouse and keys: the levain of one bread is taken by another, and is one from then on. */
describe('One levain for two doughs', () => {
  const database = `one-levain-${Date.now()}`
  let app: OpenApp

  before(async () => {
    app = await OpenApp.open(database)
  })
  after(() => app.close())

  const trueHydration = () =>
    app
      .maybe('tb-tally')
      ?.shadowRoot?.textContent?.replace(/\s+/g, ' ')
      .match(/True hydration.*?(\d+\.\d+) ?%/)?.[1]
  const reads = (hydration: string) =>
    waitUntil(() => trueHydration() === hydration, `the true hydration is ${hydration} %`)
  const goTo = async (name: string) => {
    await app.click('nav a', new RegExp(`^${name}`))
    await app.find('nav a[aria-current]', new RegExp(`^${name}`))
  }

  it('is kept as a build, taken by its name, and changed in both', async () => {
    await goTo('Mill wheat')
    await app.click('button[aria-label="Actions for Levain"]')
    await app.click('[role=menuitem]', /^Keep as a build/)
    await app.find('li', /Levain is a build of this workbook/)

    await goTo('Poolish baguette')
    await app.goTo('Final dough', '.*Add an ingredient', /Ingredient/)
    await type('Levain')
    await press('Tab')
    await type('10')
    await press('Enter')
    await app.click('button', 'Take Levain as Mill wheat makes it')
    // 70 g of it: starter 25 (half flour), flours 100, water 70, of 195. (680 + 29.615) ÷ (1000 + 40.385) = 68.21 %.
    await reads('68.2')

    await app.goTo('Levain', 'Water', percent)
    await type('90')
    await press('Enter')
    // Of 215 now: (680 + 33.372) ÷ (1000 + 36.628) = 68.82 %.
    await reads('68.8')

    await goTo('Mill wheat')
    // 352 g of it: (1120 + 167.814) ÷ (1600 + 184.186) = 72.18 %.
    await reads('72.2')
  })

  it('is taken back in both at once, and is as it was after a reload', async () => {
    await press('Control+z')
    await reads('68.2') // where it was changed
    await goTo('Mill wheat')
    await reads('70.4')
    await app.find('*', /^Saved/)
    await app.reload()
    await goTo('Poolish baguette')
    await reads('68.2')
    match(app.cell('Levain', 'Water', percent)?.textContent ?? '', /^\s*70\b/)
  })
})

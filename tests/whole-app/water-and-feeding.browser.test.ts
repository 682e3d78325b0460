import { equal, match, ok, waitUntil } from '../assert.js'
import { press, type } from '../keys.js'
import { OpenApp } from './app.js'

describe('The water of a day and a levain fed for it', () => {
  let app: OpenApp

  const textOf = (element: Element | undefined) =>
    (element?.textContent ?? '').replace(/\s+/g, ' ').replaceAll('\u00a0', ' ').trim()
  const waterOf = (stage: string) =>
    textOf(app.maybe('tb-water h3 button, h3 button', new RegExp(`^${stage} of Mill wheat`))) ||
    textOf(app.maybe('.ways'))
  const ways = () => textOf(app.maybe('.ways'))
  const flour = () =>
    app.maybe('input', /^Bread flour in Final dough of Mill wheat/) as HTMLInputElement | undefined
  const feeding = () => textOf(app.maybe('tb-feeding')?.shadowRoot?.querySelector('section') ?? undefined)
  const clock = (label: RegExp) => app.maybe('input', label) as HTMLInputElement | undefined

  const share = () => Number(/([\d.]+) % seed/.exec(feeding())?.[1])

  /** Opens the water of the final dough. */
  async function openWater() {
    await app.click('h3 button', /^Levain of Mill wheat [\d.]/)
    await app.click('h3 button', /^Final dough of Mill wheat/)
    await waitUntil(flour, 'the numbers of the final dough are shown')
  }
  async function openFeeding() {
    await app.click('h3 button', /^Levain of Mill wheat fed/)
    await waitUntil(() => /seed/.test(feeding()), 'the feeding is shown')
  }
  async function enter(field: HTMLInputElement, text: string) {
    field.focus()
    await press('Control+a')
    await type(text)
    await press('Enter')
  }

  before(async () => {
    app = await OpenApp.open(`water-${Date.now()}`)
  })
  after(() => app.close())

  it('is read of Saturday’s dough beside the list of the day', async () => {
    await app.click('nav button', 'Days')
    await app.click('button', 'New day')
    await app.click('button', 'Add a bread')
    await app.click('[role=menuitem]', /^Mill wheat/)
    await app.find('h3 button', /^Final dough of Mill wheat [\d.]+/)
    ok(waterOf('Final dough'))
    await openWater()
    // Both ways; in a kitchen of 22 °C for a dough of 24: 4 × 24 − 3 × 22 − 4
    match(ways(), /^[\d.]+ °C for the water, by heat balance 26 °C by factors, to compare$/)
  })

  it('follows the flour’s temperature that is typed, and says that it was typed', async () => {
    const before = ways()
    await enter(flour()!, '16')
    await waitUntil(() => ways() !== before, 'the water is warmer')
    match(flour()!.ariaLabel!, /typed$/)
    // The other flour was not measured and is as warm: 4 × 24 − 22 − 16 − 22 − 4
    match(ways(), / 32 °C by factors, to compare$/)
  })

  it('is fed for the morning as one edit, which is undone and done again', async () => {
    await openFeeding()
    await waitUntil(() => clock(/^Fed at/)?.value, 'its times follow from the plan')
    const before = share()
    await enter(clock(/^Fed at/)!, '6:15')
    await enter(clock(/^ripe at/)!, '12:30')
    await waitUntil(() => / for 6 h 15 at 22 °C/.test(feeding()), 'the seed is worked out for that time')
    const seed = share()
    ok(seed > before, `more seed than ${before} %`)
    match(feeding(), /Ripen: 5–7 h, at 24 °C becomes /)
    await app.click('button', 'Feed it like this')
    await waitUntil(() => /It is already fed for that/.test(feeding()), 'it is fed so')
    await press('Control+z')
    await waitUntil(() => !/It is already fed for that/.test(feeding()), 'that is taken back')
    equal(share(), seed)
    await press('Control+y')
    await waitUntil(() => /It is already fed for that/.test(feeding()), 'and done again')
  })

  it('is all there the next morning', async () => {
    await app.reload()
    await openWater()
    equal(flour()!.value, '16')
    match(flour()!.ariaLabel!, /typed$/)
    await app.click('nav button', 'Formulas')
    await app.click('a', /^Mill wheat/)
    ;(await app.find('tb-method')).scrollIntoView() // it is fetched when it comes into view
    const ripen = await waitUntil(
      () =>
        (app.all('textarea', 'Time and what else matters') as HTMLTextAreaElement[]).find(input =>
          / at 24 °C$/.test(input.value),
        ),
      'the method is shown',
    )
    ok(!ripen.value.startsWith('5–7 h'), `its step says ${ripen.value}`)
  })
})

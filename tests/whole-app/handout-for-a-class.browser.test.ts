import { deepEqual, equal, match, ok, waitUntil } from '../assert.js'
import { press, type } from '../keys.js'
import { OpenApp } from './app.js'

const textOf = (element: Element | null | undefined) =>
  (element?.textContent ?? '').replace(/\s+/g, ' ').trim()

describe('Eleven students bake three breads', () => {
  let app: OpenApp

  const papers = () => app.all('.paper')
  /** A row of what is to be weighed: its cells. */
  const row = (page: Element | undefined, ingredient: string) =>
    [...(page?.querySelectorAll('tbody tr') ?? [])]
      .filter(tr => textOf(tr.querySelector('th')).startsWith(ingredient))
      .map(tr => [...tr.querySelectorAll('td')].map(textOf))

  before(async () => {
    app = await OpenApp.open(`handout-${Date.now()}`)
  })
  after(() => app.close())

  it('three are chosen on the shelf, and handed out together', async () => {
    await app.click('button', 'Actions for Mill wheat')
    ;(await app.find('[role=menuitem]', 'Choose several…')).focus()
    await press('Enter')
    await waitUntil(
      () => app.focused?.matches('tb-chooser input, input:checked'),
      'the chosen one has the focus',
    )
    await press('Tab', 'Space', 'Tab', 'Space')
    await app.find('[role=status]', '3 chosen')
    ;(await app.find('button', 'Handout')).focus()
    await press('Enter')
    await app.find('.paper h1', 'Saturday oven, Brackwater Mill')
    await waitUntil(() => app.focused?.textContent?.trim() === 'Print', 'Print has the focus')
  })

  it('for as many people as are typed', async () => {
    ;(await app.find('input#people')).focus()
    await type('11')
    await press('Enter')
    await app.find('.paper header p', 'For 11 people')
    deepEqual([...app.all('.paper h2')].map(textOf), [
      'Mill wheat',
      'Two-build rye',
      'Poolish baguette',
      'Before you bake: safety and allergens',
    ])
  })

  it('with what each weighs beside what all of them weigh, as the formulas say', async () => {
    // 70 % of 1600 g, and eleven times that; 2 % of 700 g and 6 g of salt, likewise
    const [mill] = papers()
    deepEqual(row(mill, 'Water').at(-1), ['1,120', '12,320', '70.0'])
    const baguette = papers().find(
      page => textOf(page).includes('Poolish baguette') && row(page, 'Malt flour').length,
    )
    deepEqual(row(baguette, 'Salt')[0], ['20', '220', '2.86'])
    match(textOf(mill), /1\. ?Mix|Mix 10 min/)
  })

  it('on pages that begin with a formula or go on with one between its stages', async () => {
    const pages = papers()
    equal(textOf(app.maybe('.pages')), `${pages.length} pages`)
    for (const page of pages) {
      const [first] = page.querySelectorAll('header, h2, .again')
      ok(first && page.firstElementChild?.contains(first), textOf(page).slice(0, 60))
      for (const heading of page.querySelectorAll('h2'))
        ok(heading.parentElement!.querySelector('table, p'), `${textOf(heading)} has something beneath it`)
      // As high as a sheet of paper at most: what is seen is what is printed.
      const { width, height } = page.getBoundingClientRect()
      ok(height <= width * 1.42, `${height} px high, ${width} px wide`)
    }
  })

  it('with cups and spoons for those without a scale', async () => {
    await app.click('.bar .choice', 'Cups and spoons')
    await app.find('.measure', /^4 ¾ cups|cups/)
    await press('Escape')
    await app.find('tb-chooser')
  })
})

describe('A label', () => {
  let app: OpenApp

  before(async () => {
    app = await OpenApp.open(`label-${Date.now()}`)
  })
  after(() => app.close())

  it('has no nutrition until the loss in baking is typed', async () => {
    await app.click('button', 'Send out')
    ;(await app.find('dialog[open] footer button', 'Label')).focus()
    await press('Enter')
    await app.find('.label', /^Mill wheat Ingredients:/)
    await app.find('.sentences li', /The loss in baking is not filled in/)
    equal(app.maybe('.label table'), undefined)
    ;(await app.find('.losses input')).focus()
    await type('13')
    await press('Enter')
    await app.find('.label caption', 'Nutrition in 100 g of bread')
    await app.find('.calculated', /^Calculated, not analysed/)
  })

  it('sets allergens apart the way that is chosen, and is copied that way', async () => {
    ;(await app.find('[aria-label="Public list of allergens"]')).focus()
    await press('Home', 'ArrowDown') // the European Union
    await waitUntil(() => app.all('.label b').some(b => textOf(b) === 'wheat'), 'wheat is bold')
    await app.click('.bar button', 'Copy as text')
    await app.find('.told', /^Copied/)
    const text = await (await (await navigator.clipboard.read())[0]!.getType('text/plain')).text()
    match(text, /^Mill wheat\n\nIngredients: Bread flour \(WHEAT\), Water, Wholemeal flour \(WHEAT\), Salt\n/)
    match(text.replace(/\s+/g, ' '), /Local food law decides/)
  })

  it('is undone with the loss that was typed on it', async () => {
    await press('Escape')
    await app.find('tb-grid')
    await press('Control+z')
    await app.find('button', /^Nothing to undo/)
  })
})

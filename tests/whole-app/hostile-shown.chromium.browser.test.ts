import { emptyWorkbook } from '../../src/dough/document/workbook.js'
import { writeWorkbookFile } from '../../src/exchange/index.js'
import { openKeeper } from '../../src/storage/index.js'
import { deepEqual, equal, ok, waitUntil } from '../assert.js'
import { hostileValues } from '../exchange/hostile-values.js'
import { press } from '../keys.js'
import { OpenApp } from './app.js'
import { bare, workbook } from './hostile-workbook.js'

/** Texts are put into the page as texts: nothing of them becomes an element or an attribute that does something. */
describe('Hostile texts on the page', () => {
  let app: OpenApp
  const asked: string[] = [] // of other origins

  before(async () => {
    const database = `hostile-${Date.now()}`
    const keeper = await openKeeper({ database, onState: () => {} })
    keeper.keep(workbook)
    await keeper.flush()
    await keeper.close()
    app = await OpenApp.open(database)
  })
  after(() => app.close())

  /** Everything on the page through all shadow roots, shown or not. */
  function* everything(root: Document | ShadowRoot): Generator<Element> {
    for (const element of root.querySelectorAll('*')) {
      yield element
      if (element.shadowRoot) yield* everything(element.shadowRoot)
    }
  }

  async function isCalm(where: string): Promise<void> {
    const { contentDocument, contentWindow } = app.frame
    const texts: string[] = []
    for (const element of everything(contentDocument!)) {
      const here = `${where}: <${element.localName}>`
      if (element.getRootNode() !== contentDocument)
        ok(!/^(?:script|iframe|object|embed|img|base|link)$/.test(element.localName), here)
      for (const { name, value } of element.attributes) {
        ok(
          !name.startsWith('on') && !(name === 'http-equiv' && element.getRootNode() !== contentDocument),
          `${here} ${name}`,
        )
        if (name === 'href' || name === 'src' || name === 'action')
          equal(new URL(value, contentDocument!.baseURI).origin, location.origin, `${here} ${value}`)
      }
      texts.push(element.shadowRoot?.textContent ?? '')
    }
    ok(
      texts.some(text => text.includes(hostileValues[0]!)),
      `${where}: the texts are shown`,
    )
    await new Promise(requestAnimationFrame) // in which an image would have failed to load
    for (const page of [contentWindow!, window])
      equal((page as { ran?: unknown }).ran, undefined, `${where}: nothing ran`)
    asked.push(
      ...contentWindow!.performance
        .getEntriesByType('resource')
        .map(({ name }) => name)
        .filter(name => !name.startsWith(`${location.origin}/`) && !/^(?:data|blob):/.test(name)),
    )
    deepEqual(asked, [], `${where}: nothing was fetched from elsewhere`)
  }

  async function closed(): Promise<void> {
    await press('Escape')
    await waitUntil(() => !app.maybe('dialog[open]'), 'the dialog is closed')
  }

  it('stay texts in the grid, on the shelf and in the tally', async () => {
    await app.find('nav a[aria-current=page]')
    for (const value of hostileValues.slice(0, 8))
      await waitUntil(() => app.cell('Final dough', escaped(value), /^Ingredient/), `${value} has its row`)
    await isCalm('sheet')
  })

  it('in a working, the method, the jottings and the kept states', async () => {
    await app.goTo('Final dough', 'Bread flour', /^Grams/)
    await press('Alt+Enter')
    await app.find('tb-working')
    await isCalm('working')
    await press('Escape')
    ;(await app.find('tb-method')).scrollIntoView()
    await app.find('[data-typed^="step "]')
    ;(await app.find('tb-jottings')).scrollIntoView()
    await app.find('[data-typed^="jotting j0"]')
    await app.click('button', /^Kept states/)
    await app.find('[data-typed=state]')
    await isCalm('method, jottings, states')
    await closed()
  })

  it('in the larder and in what would be brought in', async () => {
    await app.click('button', 'Larder')
    await app.find('dialog[open]')
    await isCalm('larder')
    await closed()
    await app.click('button', 'Bring in')
    const field = await app.find('#pasted')
    field.focus()
    await navigator.clipboard.writeText(writeWorkbookFile({ ...emptyWorkbook, formulas: [bare] }))
    await press('Control+v')
    await app.click('footer button', 'Read it')
    await app.find('#understood')
    await isCalm('bring in')
    await closed()
  })

  it('in each form that is sent out, and on the card', async () => {
    await app.click('button', 'Send out')
    await app.find('.form')
    const forms = app.all('.form').map(form => form.textContent!.trim())
    ok(forms.length > 4)
    for (const form of forms) {
      await app.click('.form', form)
      await app.find('.form:has(:checked)', form)
      await isCalm(`sent out as ${form}`)
    }
    await app.click('dialog[open] footer button', 'Print a card')
    await app.find('.paper h1')
    await isCalm('card')
  })

  it('on a day', async () => {
    app.frame.contentWindow!.location.hash = 'days/day'
    await app.find('tb-day')
    await app.find('section.clock')
    await isCalm('day')
  })
})

const escaped = (value: string) => value.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')

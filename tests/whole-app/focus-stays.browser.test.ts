import { ok, waitUntil } from '../assert.js'
import { press, type } from '../keys.js'
import { OpenApp } from './app.js'

/** Every way to delete or to dismiss something leaves the focus on something that is to be seen, by keys alone. */
describe('After something is deleted or dismissed', () => {
  let app: OpenApp

  before(async () => {
    app = await OpenApp.open(`focus-stays-${Date.now()}`, { width: 1440, height: 900 })
  })
  after(() => app.close())

  const somewhere = (what: string) =>
    waitUntil(() => {
      const at = app.focused
      return at && at.localName !== 'body' && at.checkVisibility() ? at : undefined
    }, `after ${what} the focus is somewhere`)

  const gone = (selector: string, text?: RegExp) =>
    waitUntil(() => !app.maybe(selector, text), `${selector} ${text ?? ''} is gone`)

  const enter = async (selector: string, text?: string | RegExp) => {
    ;(await app.find(selector, text)).focus()
    await press('Enter')
  }

  /** Chooses of the menu whose button is named so. */
  const choose = async (menu: RegExp, item: RegExp) => {
    await enter('button', menu)
    await enter('[role=menuitem]', item)
    await gone('[role=menuitem]')
  }

  it('a formula: on the shelf; its notice: on the page', async () => {
    await choose(/for Morning buns$/, /^Delete/)
    await gone('nav a', /^Morning buns/)
    ok((await somewhere('a formula')).closest('ul'), 'on a neighbour')
    await enter('button', /^Dismiss/)
    await gone('button', /^Dismiss/)
    await somewhere('a notice')
  })

  it('a line and a stage: in the grid', async () => {
    await app.goTo('Final dough', 'Salt', /% of flour/)
    await press('Control+Delete')
    ok((await somewhere('a line by its key')).closest('table'), 'in the grid')
    await app.goTo('Final dough', 'Water', /% of flour/)
    await press('Shift+F10')
    await enter('[role=menuitem]', /^Remove$/)
    ok((await somewhere('a line')).closest('table'), 'in the grid')
    const stages = app.all('tr.stage th').length
    app.all('tr.stage th')[0]!.focus()
    await press('Shift+F10')
    await enter('[role=menuitem]', /^Remove stage/)
    await waitUntil(() => app.all('tr.stage th').length < stages, 'it is gone')
    ok((await somewhere('a stage')).closest('table'), 'in the grid')
  })

  it('several formulas at once: among those that are left', async () => {
    await choose(/for Poolish baguette$/, /^Choose several/)
    const boxes = await waitUntil(
      () => app.maybe('input:checked') && app.all('input[type=checkbox]').length,
      'one is chosen',
    )
    await enter('button', /^Delete$/)
    await waitUntil(() => app.all('input[type=checkbox]').length < boxes, 'it is gone')
    await somewhere('several formulas')
  })

  it('a kept state', async () => {
    await enter('button', 'Kept states')
    await enter('button', 'Keep this state')
    await enter('button', /^Let go of/)
    await gone('button', /^Let go of/)
    await somewhere('a kept state')
  })

  it('a step of the method', async () => {
    const method = await app.find('tb-method')
    method.scrollIntoView({ behavior: 'instant' })
    await app.find('[data-field=does]')
    const steps = app.all('[data-step] .handle').length
    await choose(/^Actions for Mix$/, /^Remove$/)
    await waitUntil(() => app.all('[data-step] .handle').length < steps, 'it is gone')
    ok((await somewhere('a step')).closest('[data-step]'), 'on the step that followed')
  })

  it('a jotting and a working', async () => {
    const jottings = await app.find('tb-jottings')
    jottings.scrollIntoView({ behavior: 'instant' })
    ;(await app.find('[data-field=name][data-typed^="jotting"]')).focus()
    await type('bill')
    await press('Enter')
    await type('12 g')
    await press('Enter')
    await enter('button', /^Remove bill/)
    await gone('button', /^Remove bill/)
    await somewhere('a jotting')
    await enter('.lead .how')
    await app.find('tb-working')
    await press('Escape')
    await gone('tb-working')
    await somewhere('a working')
  })

  it('a bread of a day, a day, and the notice of it', async () => {
    app.frame.contentWindow!.location.hash = '#days'
    await enter('nav button', /^New day/)
    await app.find('tb-day')
    await enter('button', 'Add a bread')
    await enter('[role=menuitem]', 'Two-build rye')
    await app.find('a.bread', 'Two-build rye')
    await choose(/^Actions for Two-build rye/, /^(Delete|Remove|Take)/)
    await gone('a.bread', /Two-build rye/)
    await somewhere('a bread of a day')
    await choose(/^Actions for/, /^(Delete|Remove)/)
    await gone('nav li a')
    await somewhere('a day')
    await enter('.removed button')
    await app.find('nav li a')
    await gone('.removed')
    await somewhere('the notice of a day')
  })
})

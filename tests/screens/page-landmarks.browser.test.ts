import { setViewport } from '@web/test-runner-commands'
import '../../components/page/tb-app'
import type { TbApp } from '../../components/page/tb-app'
import { equal, waitUntil } from '../assert'
import { press } from '../keys'
import { itOnce } from '../once'
import { millWheat } from './breads'
import { dressPage, english, passesAxe, textOf } from './mount'

describe('The landmarks of the page', () => {
  let app: TbApp

  async function start(width: number): Promise<void> {
    await setViewport({ width, height: 900 })
    history.replaceState(null, '', '#')
    app = document.createElement('tb-app')
    app.numbers = english
    app.database = `landmarks-${width}-${Date.now()}`
    app.loadExamples = async () => ({ workbook: 'Saturday oven', formulas: [millWheat()] })
    document.body.append(app)
    await app.start()
    await app.furnished
    await app.drawn()
  }

  /** The elements in sight that match, through all shadow roots. */
  function inSight(selector: string, root: Document | ShadowRoot = document): HTMLElement[] {
    const reached = [...root.querySelectorAll<HTMLElement>('*')].filter(e => !e.closest('[inert]'))
    return reached.flatMap(element => [
      ...(element.matches(selector) && element.checkVisibility() ? [element] : []),
      ...(element.shadowRoot ? inSight(selector, element.shadowRoot) : []),
    ])
  }

  before(() => {
    dressPage()
    document.title = 'Tarebook'
  })
  afterEach(async () => {
    app.remove()
    await setViewport({ width: 1440, height: 900 })
  })

  for (const [width, places] of [
    [1440, ['sheet', 'days']],
    [1000, ['sheet', 'shelf']],
    [390, ['shelf', 'sheet', 'tally', 'days']],
  ] as const)
    itOnce(
      `one main part and one heading 1 on every place, and nothing that axe finds, ${width} px wide`,
      async () => {
        await start(width)
        for (const place of places) {
          app.place = place
          await app.updateComplete
          for (const selector of ['main, [role=main]', 'h1'])
            await waitUntil(() => inSight(selector).length === 1, `one ${selector} on ${place}`)
          await passesAxe(document, true)
        }
      },
    )

  itOnce('the first Tab leads past all else to the grid; the head of a dialog is no banner', async () => {
    await start(1440)
    await press('Tab')
    equal(app.shadowRoot!.activeElement?.className, 'skip')
    await press('Enter')
    await waitUntil(() => inSight('tb-grid')[0]?.shadowRoot?.activeElement, 'the focus is in the grid')
    const [larder] = inSight('tb-head')[0]!.shadowRoot!.querySelectorAll<HTMLElement>('header > button')
    equal(textOf(larder), 'Larder')
    larder!.focus()
    await press('Enter')
    const [dialog] = await waitUntil(
      () => inSight('dialog[open]')[0] && inSight('dialog[open]'),
      'it is open',
    )
    equal(dialog!.querySelector('header')?.getAttribute('role'), 'none')
    await passesAxe(document, true)
  })
})

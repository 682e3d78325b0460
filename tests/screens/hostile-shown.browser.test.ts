import { type Formula, newId } from '../../src/dough/document/formula'
import { linkOf } from '../../src/exchange/index'
import { equal, ok, waitUntil } from '../assert'
import { hostileValues } from '../exchange/hostile-values'

/** All of the page that could hold something foreign: what no part of the app has, and what every part must not have. */
const foreign =
  'img, script:not([type=module]), iframe, object, embed, video, audio, base, form[action], [srcdoc], [onerror], [onload], [onclick], [onmouseover], a[href^="javascript:" i]'

describe('Texts that mean something to a browser', function () {
  this.timeout(60_000)
  const frame = document.createElement('iframe')
  const blocked: string[] = []
  let view: Window & typeof globalThis

  const inLines = (): Formula => ({
    id: newId(),
    name: hostileValues[0]!,
    note: hostileValues.slice(0, 12).join('\n'),
    flourWeight: 1000,
    stages: hostileValues.map((name, i) => ({
      id: `${i}`,
      name,
      lines: [
        { id: `a${i}`, ingredient: 'Bread flour', amount: '100 g', note: name },
        { id: `b${i}`, ingredient: name, amount: name, note: name },
      ],
      method: [{ id: `c${i}`, does: name, kind: 'hands', text: name, note: name }],
    })),
    meanings: hostileValues.map(ingredient => ({ ingredient, countsAs: { kind: 'salt' } })),
    keptSettings: hostileValues.map(text => ({ stage: text, setting: text, amount: text, note: text })),
    jottings: hostileValues.map((text, i) => ({ id: `d${i}`, name: text, text })),
  })

  function deep(selector: string, root: Document | ShadowRoot = view.document): Element[] {
    return [...root.querySelectorAll('*')].flatMap(element => [
      ...(element.matches(selector) ? [element] : []),
      ...(element.shadowRoot ? deep(selector, element.shadowRoot) : []),
    ])
  }
  const wish = (detail: object) =>
    deep('tb-sheet')[0]!.dispatchEvent(
      new view.CustomEvent('tb-wish', { detail, bubbles: true, composed: true }),
    )
  const passes = () => {
    const words = deep(foreign).map(element => element.outerHTML.slice(0, 80))
    equal(words.join('\n'), '')
    equal('ran' in view || 'ran' in window, false)
    equal(blocked.join(), '')
  }

  before(async () => {
    const base = `${location.origin}/site/index.html?offline=no&database=hostile-${Date.now()}`
    const link = await linkOf(inLines(), base)
    ok(typeof link === 'string', 'it goes into a link')
    frame.style.cssText = 'width: 1200px; height: 800px'
    frame.src = link
    document.body.append(frame)
    await waitUntil(() => frame.contentWindow?.location.pathname === '/site/index.html', 'the page has begun')
    view = frame.contentWindow as Window & typeof globalThis
    view.document.addEventListener('securitypolicyviolation', event => blocked.push(event.effectiveDirective))
  })
  after(() => frame.remove())

  it('are texts where a link is looked at, and in the sheet it is added to', async () => {
    const add = await waitUntil(
      () => deep('button.main').find(button => /^Add/.test(button.textContent!.trim())),
      'the link is shown',
      20_000,
    )
    passes()
    ;(add as HTMLButtonElement).click()
    await waitUntil(
      () => deep('tr[data-row]').length > 2 * hostileValues.length && !deep('[aria-busy]').length,
      'its lines are there',
      20_000,
    )
    await waitUntil(() => deep('tb-remarks li').length + deep('li').length > 10, 'what is noticed is said')
    passes()
  })

  it('are texts on the card and in all that is sent out', async () => {
    wish({ want: 'send-out' })
    const choices = await waitUntil(() => {
      const found = deep('tb-send-out').flatMap(e => [...e.shadowRoot!.querySelectorAll('input[type=radio]')])
      return found.length > 3 ? (found as HTMLInputElement[]) : undefined
    }, 'the ways out are there')
    for (const choice of choices) {
      choice.click()
      await waitUntil(() => choice.checked, 'it is chosen')
      await view.customElements.whenDefined('tb-send-out')
      passes()
    }
    view.document.dispatchEvent(new view.KeyboardEvent('keydown', { key: 'Escape' }))
    wish({ want: 'card' })
    await waitUntil(
      () => deep('tb-card').some(card => card.shadowRoot?.querySelector('h1')),
      'the card is there',
    )
    passes()
  })
})

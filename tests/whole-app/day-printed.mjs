/**
 * Prints what a day of three breads needs, its handout and that of one bread, as a baker's browser does, and says what came of
 * it: the pages, and what stands on each of those of a handout. One line of JSON for each, on each paper.
 */
import { pagesOn, printing } from './printing.mjs'

const breads = [
  { name: 'Mill wheat', weight: 1000 },
  { name: 'Poolish baguette', weight: 350 },
  { name: 'Two-build rye', weight: 825 },
]

await printing(async function* (page) {
  const links = await page.$$eval('tb-app >>> a[href^="#"]', all =>
    all.map(link => ({
      id: (link.getAttribute('href') ?? '').slice(1),
      name: link.textContent?.trim() ?? '',
    })),
  )
  const formulas = breads.map(({ name }) => links.find(link => link.name.startsWith(name))?.id ?? '')
  const day = {
    id: 'class',
    name: 'Friday class',
    date: '2026-12-05',
    zone: 'UTC',
    ready: '15:00',
    asleep: [],
    bakers: 2,
    ovens: [{ id: 'oven', name: 'Oven', between: 10, change: 20, heating: 60 }],
    kitchen: 22,
    fridge: 4,
    together: [],
    holds: [],
    note: '',
    breads: breads.map(({ weight }, at) => ({
      id: `b${at}`,
      formula: formulas[at],
      batch: { make: 'pieces', pieces: [{ count: 11, weight }] },
    })),
  }

  /**
   * Asks the app for something, as what is in it does.
   * @param {string} name
   * @param {unknown} detail
   */
  const ask = (name, detail) =>
    page.evaluate(
      (name, detail) => {
        const { edited, ...wish } = /** @type {Record<string, unknown>} */ (detail)
        const changes = [{ of: 'day', id: 'class', value: edited }]
        const asked = edited ? { edit: () => ({ label: 'New day', changes }) } : wish
        const inApp = document.querySelector('tb-app')?.shadowRoot?.firstElementChild
        inApp?.dispatchEvent(new CustomEvent(name, { detail: asked, bubbles: true, composed: true }))
      },
      name,
      detail,
    )

  /**
   * @param {string} what
   * @param {'a4' | 'letter'} paper
   * @param {object} [more]
   */
  const printed = async (what, paper, more) => {
    const pages = await pagesOn(page, paper)
    return { what, paper, pages, ...more }
  }

  await ask('tb-edit', { edited: day })
  await page.evaluate(() => {
    location.hash = 'order/class'
  })
  // In the order of mixing only when the times of the day are there.
  await page.waitForSelector('>>> tb-weigh-lists >>> h3')
  await page.waitForFunction(() => {
    const root = document.querySelector('tb-app')?.shadowRoot?.querySelector('tb-order-place')?.shadowRoot
    return root?.textContent?.includes('In the order in which they are mixed')
  })
  for (const paper of /** @type {const} */ (['a4', 'letter'])) yield await printed('order', paper)

  for (const [what, wish] of /** @type {const} */ ([
    ['handout of the day', { want: 'handout', day: 'class' }],
    ['handout of one bread', { want: 'handout', formulas: formulas.slice(2) }],
  ])) {
    await ask('tb-wish', wish)
    await page.waitForSelector('>>> .paper')
    for (const paper of /** @type {const} */ (['a4', 'letter'])) {
      await page.select('>>> .bar select', paper)
      await page.waitForFunction(
        wide => {
          const dialogs = document
            .querySelector('tb-app')
            ?.shadowRoot?.querySelector('tb-dialogs')?.shadowRoot
          const main = dialogs?.querySelector('tb-handout')?.shadowRoot?.querySelector('main')
          return main?.style.getPropertyValue('--width') === wide
        },
        {},
        paper === 'a4' ? '210' : '215.9',
      )
      const papers = await page.$$eval('>>> .paper', all =>
        all.map(one => ({
          text: (one.textContent ?? '').replace(/\s+/g, ' ').trim(),
          stages: one.querySelectorAll('.stage').length,
        })),
      )
      const rules = await page.evaluate(() =>
        document.adoptedStyleSheets.flatMap(sheet => [...sheet.cssRules].map(rule => rule.cssText)).join(' '),
      )
      yield await printed(what, paper, {
        papers,
        foot: /@bottom-left *\{[^}]*content: *"([^"]*)"/.exec(rules)?.[1] ?? '',
      })
    }
    await page.keyboard.press('Escape')
    await page.waitForFunction(() => document.title.includes('Tarebook'))
  }
})

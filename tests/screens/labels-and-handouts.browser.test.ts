import { setViewport } from '@web/test-runner-commands'
import '../../components/handout/tb-handout'
import '../../components/label/tb-label'
import millWheat from '../../examples/mill-wheat.csv' with { type: 'text' }
import buns from '../../examples/morning-buns.csv' with { type: 'text' }
import type { Day } from '../../src/dough/document/day'
import { copyOf } from '../../src/dough/document/formula'
import { larderWith } from '../../src/dough/larder/usual-larder'
import { readFormulas } from '../../src/exchange/index'
import { deepEqual, ok, waitUntil } from '../assert'
import { saturday } from '../day/notation'
import { press, type } from '../keys'
import { itOnce } from '../once'
import { Around, dressPage, english, passesAxeInBoth, textOf } from './mount'

const formulas = [millWheat, buns].map(csv => readFormulas(csv).formulas[0]!)
const made = formulas.map(formula => ({
  ...formula,
  batch: { make: 'pieces' as const, pieces: [{ count: 6, weight: 900 }], bakeLoss: 0.12 },
}))

describe('Labels and handouts', () => {
  const name = (page: 'tb-label' | 'tb-handout') => page
  let around: Around
  let page: HTMLElementTagNameMap['tb-label' | 'tb-handout']

  async function show(tag: 'tb-label' | 'tb-handout', shelf = made, day?: Day) {
    localStorage.clear()
    around = new Around({ formulas: shelf, ...(day && { days: [day] }) })
    page = around.hold(document.createElement(name(tag)))
    const give = () =>
      Object.assign(page, { workbook: around.history.workbook, larder: larderWith([]), numbers: english })
    around.onEdit = give
    give()
    await page.show(day ? { day: day.id } : { formulas: shelf.map(({ id }) => id) })
    await waitUntil(() => page.shadowRoot?.querySelector('.paper'), 'it is there')
  }

  before(dressPage)
  afterEach(() => {
    page.remove()
    localStorage.clear()
  })

  for (const tag of ['tb-label', 'tb-handout'] as const)
    itOnce(`${tag} holds up on a laptop and a phone`, async () => {
      for (const [width, height, least] of [
        [1440, 900, 24],
        [390, 844, 24],
      ] as const) {
        await setViewport({ width, height })
        await show(tag)
        await passesAxeInBoth(page)
        ok(document.documentElement.scrollWidth <= width, `nothing sticks out, ${width} px wide`)
        for (const target of page.shadowRoot!.querySelectorAll(
          '.bar button, .bar select, .bar label:has(input)',
        )) {
          const box = target.getBoundingClientRect()
          ok(box.height >= least && box.width >= least, `${textOf(target)} is ${box.height} px high`)
        }
        page.remove()
      }
      await setViewport({ width: 1280, height: 860 })
    })

  itOnce('a kept state of a formula can be handed out', async () => {
    const [mill] = made
    const { states: _none, ...then } = copyOf({ ...mill!, note: 'As it was in spring.' }, mill!.name)
    const states = [{ id: 'spring', name: 'Spring', keptAt: '2026-03-01T00:00:00.000Z', formula: then }]
    await show('tb-handout', [{ ...mill!, states }])
    const select = [...page.shadowRoot!.querySelectorAll<HTMLSelectElement>('.bar select')].find(
      ({ options }) => [...options].some(({ value }) => value === 'spring'),
    )!
    select.focus()
    await press('End')
    await waitUntil(
      () => textOf(page.shadowRoot!.querySelector('.paper')).includes('As it was in spring.'),
      'it is shown',
    )
    deepEqual([...page.shadowRoot!.querySelectorAll('.paper h2')].map(textOf), [
      'Mill wheat: Spring',
      'To keep in mind',
    ])
  })

  itOnce('a day is handed out in its order: what it makes for all, a share of it for each', async () => {
    const [mill, bun] = made
    const buns = { make: 'pieces' as const, pieces: [{ count: 66, weight: 80 }] }
    const loaves = { make: 'pieces' as const, pieces: [{ count: 11, weight: 900 }] }
    const day = saturday(
      [
        [bun!, 66],
        [mill!, 11],
      ],
      { name: 'Friday class' },
    )
    await show('tb-handout', made, {
      ...day,
      breads: day.breads.map((bread, at) => ({ ...bread, batch: [buns, loaves][at]! })),
    })
    const rows = () =>
      [...page.shadowRoot!.querySelectorAll('.breads tbody tr')].map(row =>
        [...row.children].map(cell => textOf(cell).replace(/\u00a0/g, ' ')),
      )
    deepEqual(
      rows().map(([name, each, all]) => [name, each!.split(',')[0], all!.split(' g,')[0]]),
      [
        ['Morning buns', '6 × 80 g', '66 × 80'],
        ['Mill wheat', '1 × 900 g', '11 × 900'],
      ],
    )
    const header = () => textOf(page.shadowRoot!.querySelector('.paper header'))
    deepEqual(header().replace(/\s+/g, ' '), 'Friday class Saturday, December 5 · For 11 people')
    page.shadowRoot!.querySelector<HTMLInputElement>('#class')!.focus()
    await type('Bread for beginners')
    await press('Enter')
    await waitUntil(() => header().startsWith('Bread for beginners'), 'it is called so')
  })

  itOnce(
    'students are told of raw flour, egg and milk, each once, and not what the author is to change',
    async () => {
      await show('tb-handout', made)
      const abouts = [...page.shadowRoot!.querySelectorAll('.mind p b')].map(textOf)
      for (const about of [/^Raw flour/, /^Egg or milk/])
        deepEqual(abouts.filter(said => about.test(said)).length, 1)
      ok(!/By its method|Shorten what/.test(textOf(page.shadowRoot!.querySelector('main'))))
    },
  )
})

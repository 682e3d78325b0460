import { setViewport } from '@web/test-runner-commands'
import '../../components/handout/tb-handout'
import '../../components/label/tb-label'
import millWheat from '../../examples/mill-wheat.csv' with { type: 'text' }
import buns from '../../examples/morning-buns.csv' with { type: 'text' }
import type { Batch } from '../../src/dough/document/batch'
import type { Day } from '../../src/dough/document/day'
import { copyOf, type Formula } from '../../src/dough/document/formula'
import { larderWith } from '../../src/dough/larder/usual-larder'
import { readFormulas } from '../../src/exchange/index'
import { deepEqual, ok, waitUntil } from '../assert'
import { saturday } from '../day/notation'
import { press, type } from '../keys'
import { itOnce } from '../once'
import { Around, dressPage, english, passesAxeInBoth, textOf } from './mount'

const formulas = [millWheat, buns].map(csv => readFormulas(csv).formulas[0]!)
const made = formulas.map(
  (formula): Formula => ({
    ...formula,
    batch: { make: 'pieces' as const, pieces: [{ count: 6, weight: 900 }], bakeLoss: 0.12 },
  }),
)

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
      'Before you bake: safety and allergens',
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

  const all = (selector: string) => [...page.shadowRoot!.querySelectorAll(selector)]
  const plain = (element: Element | null | undefined) => textOf(element).replace(/[\s\u00a0]+/g, ' ')
  const sizes = () => all('.breads tbody td').map(plain)

  /** Eleven pieces of each of two breads, of the first with 2 % lost. */
  const eleven = () => {
    const breads = made as unknown as [Formula, Formula]
    const batches: Batch[] = [
      { make: 'pieces', pieces: [{ count: 11, weight: 825 }], loss: 0.02 },
      { make: 'pieces', pieces: [{ count: 11, weight: 350 }] },
    ]
    const day = saturday([
      [breads[0], 11],
      [breads[1], 11],
    ])
    return { ...day, breads: day.breads.map((bread, at) => ({ ...bread, batch: batches[at]! })) }
  }

  itOnce(
    'weights are said once, as they are asked for, whatever the steps of the scale make of them',
    async () => {
      await show('tb-handout', made, eleven())
      // 825 ÷ 0.98 = 841.8, and eleven times that 9,260.2
      deepEqual(sizes(), [
        '1 × 825 g from 842 g of dough',
        '11 × 825 g from 9,260 g of dough',
        '1 × 350 g',
        '11 × 350 g, 3,850 g of dough',
      ])
    },
  )

  itOnce('for others than a day makes for, its dough is shared, or the day makes for them', async () => {
    await show('tb-handout', made, eleven())
    ok(!all('.shared').length)
    page.shadowRoot!.querySelector<HTMLInputElement>('#people')!.focus()
    await press('Control+a')
    await type('12')
    await press('Enter')
    await waitUntil(() => all('.shared').length, 'it says so')
    deepEqual(
      plain(all('.shared span')[0]),
      'The day makes for 11. For 12 people the same dough is shared out.',
    )
    // 9,260.2 ÷ 12 = 771.7 and 3,850 ÷ 12 = 320.8
    deepEqual(sizes(), ['772 g of dough', '9,260 g of dough', '321 g of dough', '3,850 g of dough'])
    ok(!/\d[.]\d\d+ g/.test(plain(page.shadowRoot!.querySelector('main'))), 'no weight has two decimals')
    page.shadowRoot!.querySelector<HTMLButtonElement>('.shared button')!.focus()
    await press('Enter')
    await waitUntil(() => !all('.shared').length, 'the day makes for them')
    const [day] = around.history.workbook.days!
    deepEqual(day!.people, 12)
    deepEqual(
      day!.breads.map(({ batch }) => 'pieces' in batch && batch.pieces.map(({ count }) => count)),
      [[12], [12]],
    )
    deepEqual(sizes()[3], '12 × 350 g, 4,200 g of dough')
    deepEqual((page.shadowRoot!.activeElement as HTMLElement).id, 'people')
    around.history.undo()
    deepEqual(around.history.workbook.days![0]!.people, undefined)
  })

  itOnce('readings are those of all that is weighed, and say so', async () => {
    await show('tb-handout', made, eleven())
    const [mill] = all('.readings').map(plain)
    const [how] = all('.readings .how').map(plain)
    deepEqual(how, 'All 11, as weighed in steps of 1 g (0.1 g below 10 g):')
    // 352 g of levain on 1,600 g of flour, as the table above has it: one piece, of 187 on 852, has 21.9
    ok(/Levain on flour 22\.0 %/.test(mill!), mill)
  })

  itOnce('notes are said to be of the size they were written for, where that is another', async () => {
    await show('tb-handout', made, eleven())
    const said = () =>
      all('.block')
        .map(plain)
        .filter(text => /Notes are as written/.test(text))
    // 1,600 g of flour with 70 % of water, 22 % of levain and 2.2 % of salt: 3,107.2 g
    ok(/Notes are as written for the formula’s own batch of 3,107 g\./.test(said()[0]!), said()[0])
    const box = page.shadowRoot!.querySelector<HTMLInputElement>('.more input[type=checkbox]')!
    box.focus()
    await press('Space')
    await waitUntil(() => said().length === 0, 'without notes there is nothing to say')
    page.remove()
    const { batch: _batch, ...asWritten } = made[0]!
    await show('tb-handout', [asWritten])
    ok(/Everyday loaf/.test(plain(page.shadowRoot!.querySelector('main'))))
    deepEqual(said(), [])
  })

  itOnce('a starter says its hydration, and a step to take home no load of the oven', async () => {
    const [mill] = made
    const stages = mill!.stages.map(stage => ({
      ...stage,
      method: stage.method?.map(step =>
        step.kind === 'bake' ? { ...step, text: '45 min, at 240 °C, 12 at once' } : step,
      ),
    }))
    await show('tb-handout', [{ ...mill!, stages } as Formula])
    ok(
      all('tbody th')
        .map(plain)
        .some(text => text.startsWith('Ripe starter (100 % hydration)')),
    )
    const bake = all('li')
      .map(plain)
      .find(text => text.startsWith('Bake'))
    ok(/^Bake 45 min, at 240 °C(?! *,)/.test(bake!) && !/at once/.test(bake!), bake)
  })

  itOnce('one bread begins beneath the heading, without a table of breads', async () => {
    await show('tb-handout', [made[0]!])
    await waitUntil(() => all('.paper').length === 1, 'all of it is on one page')
    deepEqual(all('.breads').length, 0)
    deepEqual(plain(all('.sizes')[0]), 'Each: 1 × 900 g · All 8: 8 × 900 g, 7,200 g of dough')
    const [first] = all('.block')
    ok(first!.querySelector('header') && first!.querySelector('h2') && first!.querySelector('table'))
  })

  itOnce('a piece is what each makes where any is made in pieces', async () => {
    const { batch: _batch, ...asWritten } = made[0]!
    const ways = () =>
      [...page.shadowRoot!.querySelectorAll('.bar select')]
        .flatMap(select => [...(select as HTMLSelectElement).options])
        .filter(({ value }) => ['piece', 'batch', 'share'].includes(value))
        .map(({ label, selected }) => (selected ? `> ${label}` : label))
    const others = ['the whole batch', 'a share of the batch']
    await show('tb-handout', made)
    deepEqual(ways(), ['> one piece of each bread', ...others])
    page.remove()
    await show('tb-handout', [made[0]!])
    deepEqual(ways(), ['> one piece', ...others])
    page.remove()
    await show('tb-handout', [asWritten, made[1]!])
    deepEqual(ways(), ['> one piece, or else the whole batch', ...others])
    page.remove()
    await show('tb-handout', [asWritten])
    deepEqual(ways(), ['> the whole batch', 'a share of the batch'])
  })

  itOnce('allergens are named bread by bread where it says how little that is', async () => {
    await show('tb-handout', made)
    const select = [...page.shadowRoot!.querySelectorAll<HTMLSelectElement>('.bar select')].at(-1)!
    select.focus()
    await press('Home')
    const mind = plain(all('.mind')[0])
    ok(
      /Allergens, of the [^:]+: Mill wheat: wheat in Ripe starter, Bread flour, Wholemeal flour\. Morning buns: /.test(
        mind,
      ),
      mind,
    )
    ok(/does not say that a bread suits anybody with an allergy/.test(mind))
    ok(!/larder/.test(plain(page.shadowRoot!.querySelector('main'))))
  })
})

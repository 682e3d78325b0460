import { setViewport } from '@web/test-runner-commands'
import '../../components/trade/tb-order-place'
import type { Batch } from '../../src/dough/document/batch'
import type { Formula } from '../../src/dough/document/formula'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { bread, saturday } from '../day/notation'
import { press } from '../keys'
import { DaysOpened } from './days-desk'
import { dressPage, passesAxeInBoth, textOf } from './mount'
import { Opened } from './opened'

/** Six bake at once; its proof allows 20 min, and a second load goes in 55 min after the first. As written 1,820 g, of it 220 g of levain. */
const loaf = () =>
  bread(
    'Plain loaf',
    `Levain:
       Ripe starter 20 g
       Bread flour 100 g
       Water 100 g
       hands Mix: 10 min
       wait Ripen: 8–10 h
     Final dough:
       Bread flour 1000 g
       Water 600 g
       Levain 220 g
       hands Mix: 10 min
       wait Proof: 50–70 min
       bake Bake: 45 min, 6 at once`,
  )

const pieces = (count: number, weight: number): Batch => ({ make: 'pieces', pieces: [{ count, weight }] })

describe('A day that does not fit', () => {
  let open: Opened<HTMLElement & { updateComplete: Promise<boolean> }>

  function dayOf(formula: Formula, batch: Batch) {
    const day = saturday([[formula, 1]])
    return { ...day, breads: [{ ...day.breads[0]!, batch }] }
  }

  function show(batch: Batch, formula = loaf()): DaysOpened {
    const day = dayOf(formula, batch)
    const days = new DaysOpened({ formulas: [formula], days: [day] }, day)
    open = days
    return days
  }

  /** What goes in at the first step by the clock, and what the panels say of the same build. */
  const weighed = () => textOf(open.all('.weigh')[0])
  const fed = () => textOf(open.all('.times', 'of seed')[0])
  const mixed = () => open.all('.grams').map(grams => textOf(grams.closest('.what')))

  before(async () => {
    dressPage()
    await setViewport({ width: 1440, height: 900 })
  })
  afterEach(() => open.remove())

  // Six of 910 g are three times as written, twelve of them six times.
  it('has its amounts as they are now everywhere, and its times from the last plan that fitted', async () => {
    const days = show(pieces(6, 910))
    await waitUntil(() => fed() !== '', 'its feeding is told')
    equal(weighed(), 'Ripe starter 60 g, Bread flour 300 g, Water 300 g')
    const times = days.rows
    await days.enter(/^Pieces of Plain loaf/, '12')
    await open.find(
      '.warn',
      /The times below are from the last plan that fitted, the amounts are those of now\./,
    )
    deepEqual(days.rows, times)
    equal(weighed(), 'Ripe starter 120 g, Bread flour 600 g, Water 600 g')
    match(fed(), /with 120 g of seed$/)
    deepEqual(mixed(), ['Ripe starter 120 g', 'Bread flour 600 g'])
    // How many go into the oven at once is of that plan, so it is not told beside amounts of another.
    equal(
      open
        .all('tr', 'Plain loaf')
        .map(tr => textOf(tr.querySelector('.figure')))
        .join(),
      '–',
    )
    equal(open.all('small', /pieces/).length, 0)
    await days.enter(/^Pieces of Plain loaf/, '3')
    await waitUntil(() => open.all('.warn').length === 0, 'three fit')
    equal(weighed(), 'Ripe starter 30 g, Bread flour 150 g, Water 150 g')
    match(open.all('tr', 'Plain loaf').map(textOf).join(), / 3 of 6 /)
  })

  // A third each of 100 g: one of the three is weighed as 34 g, or 1 g of the levain would be missing.
  it('or that fits tells one figure of a line by the clock, in its feeding and its water', async () => {
    const thirds = bread(
      'Thirds',
      `Levain:
         Ripe starter 10 g
         Bread flour 10 g
         Water 10 g
         hands Mix: 10 min
         wait Ripen: 8–10 h
       Final dough:
         Bread flour 270 g
         Levain 30 g
         hands Mix: 10 min`,
    )
    show(pieces(1, 1000), thirds)
    await waitUntil(() => fed() !== '' && mixed().length > 0, 'its feeding and its water are told')
    const by = new Map(
      weighed()
        .split(', ')
        .map(each => [each.replace(/ \d.*/, ''), each]),
    )
    equal(
      [...by.values()].reduce((sum, each) => sum + Number(/(\d+) g$/.exec(each)![1]), 0),
      100,
    )
    equal(weighed().match(/ 34 g/g)?.length, 1)
    deepEqual(mixed(), [by.get('Ripe starter'), by.get('Bread flour')])
    ok(fed().endsWith(`with ${by.get('Ripe starter')!.replace('Ripe starter ', '')} of seed`), fed())
  })

  it('and never did has no heading over nothing, and goes to the steps that stand in the way', async () => {
    const formula = loaf()
    show(pieces(12, 910), formula)
    equal(
      textOf(await open.find('.clock p')),
      'There are no times yet: the day does not fit as it is. What stands in the way is said above.',
    )
    equal(
      textOf(await open.find('.times')),
      'with 120 g of seed; when is not known: the day has no times for it yet',
    )
    await open.find('.warn p', 'What is changed there changes the formula Plain loaf, on every day.')
    await passesAxeInBoth(open.element)
    const [proof, bake, ...more] = open.all('.warn .do button')
    equal(
      [proof, bake, ...more].map(textOf).join(', '),
      'Go to Proof of Plain loaf, Go to Bake of Plain loaf',
    )
    bake!.focus()
    await press('Enter')
    deepEqual(open.around.wishes.at(-1), { want: 'open', formula: formula.id })
  })

  for (const [count, fits] of [
    [6, true],
    [12, false],
  ] as const)
    it(`${fits ? 'or does' : 'says so'} where it is weighed and ordered for`, async () => {
      const day = dayOf(loaf(), pieces(count, 910))
      const formulas = [{ ...loaf(), id: day.breads[0]!.formula }]
      location.hash = `order/${day.id}`
      open = new Opened(document.createElement('tb-order-place'), { formulas, days: [day] })
      const list = textOf(await open.find('.weigh .hint'))
      const timed = open.all('.lists *', /, \d+:\d\d$/)
      if (fits) {
        equal(list, 'In the order in which they are mixed.')
        equal(open.all('.unfit').length, 0)
        ok(timed.length > 0, 'and says when')
        return
      }
      match(textOf(await open.find('.unfit')), /^This day does not fit as it is, so it has no times yet\./)
      equal((await open.find<HTMLAnchorElement>('.unfit a')).hash, `#days/${day.id}`)
      match(list, /^In the order in which they are written: the day does not fit/)
      equal(timed.length, 0)
    })
})

import '../../components/sheet/tb-dough-bar'
import type { TbDoughBar } from '../../components/sheet/tb-dough-bar'
import type { Formula } from '../../src/dough/document/formula'
import { openFormula } from '../../src/dough/formula-sheet'
import { equal, match, near, ok } from '../assert'
import { itOnce } from '../once'
import { millWheat, straightDough } from './breads'
import { Around, dressPage, english, passesAxe, textOf } from './mount'

describe('The dough bar', () => {
  let bar: TbDoughBar

  async function show(formula: Formula): Promise<void> {
    bar = new Around().hold(document.createElement('tb-dough-bar'))
    bar.style.width = '700px'
    Object.assign(bar, { sheet: openFormula(formula), numbers: english })
    await bar.updateComplete
  }
  const drawn = () => bar.shadowRoot!.querySelector('svg[role=img]')
  const width = (what: string): number =>
    [...drawn()!.querySelectorAll(`.${what}`)].reduce((sum, r) => sum + r.getBoundingClientRect().width, 0)

  before(dressPage)
  afterEach(() => bar.remove())

  it('draws flour, water and salt by weight, and hatches what the levain carried', async () => {
    await show(millWheat())
    near(width('flour') / 700, 1114.545 / 1921, 1e-3)
    near(width('water') / 700, 785.4545 / 1921, 1e-3)
    near(width('hatch') / 700, 210 / 1921, 1e-3)
  })

  it('says the same in a sentence and in a key', async () => {
    await show(millWheat())
    match(
      drawn()!.getAttribute('aria-label')!,
      /flour 58 per cent, water 41 per cent, salt 1 per cent.*11 per cent .* came with Levain/,
    )
    match(textOf(bar.shadowRoot!.querySelector('figcaption')), /Flour 1,115 g Water 785 g Salt 21\.0 g/)
  })

  it('shows butter, seeds and the like as the rest', async () => {
    await show(straightDough('Bread flour = 100%\nWater = 60%\nSalt = 2%\nButter = 20%', 'Rich'))
    match(textOf(bar.shadowRoot!.querySelector('figcaption')), /The rest 200 g/)
    equal(drawn()!.querySelectorAll('.hatch').length, 0)
  })

  it('says what it waits for while there are no weights', async () => {
    await show(straightDough('Bread flour = ', 'Begun'))
    ok(!drawn())
    match(textOf(bar.shadowRoot!.querySelector('p')), /once its weights can be worked out/)
  })

  itOnce('has nothing that axe finds', async () => {
    await show(millWheat())
    await passesAxe(bar)
  })
})

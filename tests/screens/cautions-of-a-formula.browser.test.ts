import { emulateMedia, setViewport } from '@web/test-runner-commands'
import '../../components/sheet/tb-cautions'
import type { TbCautions } from '../../components/sheet/tb-cautions'
import { allergenSentence } from '../../src/dough/about/words'
import type { Formula } from '../../src/dough/document/formula'
import { openFormula } from '../../src/dough/formula-sheet'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { press } from '../keys'
import { itOnce } from '../once'
import { millWheat, straightDough } from './breads'
import { dressPage, english, passesAxeInBoth, textOf } from './mount'

describe('Allergens and cautions', () => {
  let element: TbCautions
  const buns = () =>
    straightDough(
      'Bread flour = 100%\nMilk = 40%\nEggs = 2 each\nWalnuts = 10%\nMahleb = 1%\nRye starter = 20%',
      'Buns',
    )

  async function show(formula: Formula, language = 'en-GB') {
    element = document.createElement('tb-cautions')
    element.sheet = openFormula(formula)
    element.numbers = { ...english, language }
    document.body.append(element)
    await element.updateComplete
  }
  const all = (selector: string) => [...element.shadowRoot!.querySelectorAll<HTMLElement>(selector)]
  const listed = () => all('section:first-of-type dl > div').map(textOf)
  const list = () => element.shadowRoot!.querySelector('select')!

  before(() => {
    dressPage()
    localStorage.clear()
  })
  afterEach(async () => {
    element.remove()
    localStorage.clear()
    await setViewport({ width: 1440, height: 900 })
  })

  it('lists each entry with the ingredients it comes from, the flour in the starter too', async () => {
    await show(buns())
    deepEqual(listed(), [
      'cereals containing gluten (wheat) Bread flour',
      'milk Milk',
      'eggs Eggs',
      'nuts (walnut) Walnuts',
      'cereals containing gluten (rye) Rye starter',
    ])
    match(textOf(all('section')[0]), /Not known: Mahleb\./)
    ok(textOf(all('section')[0]).includes(allergenSentence))
  })

  it('says what stands too warm by its method, once what works that out has come', async () => {
    const formula = buns()
    const step = { id: 's', does: 'Proof', kind: 'wait', text: '3 h, at 26 °C', note: '' } as const
    await show({ ...formula, stages: formula.stages.map(stage => ({ ...stage, method: [step] })) })
    const cautions = () => all('section:last-of-type dl > div').map(textOf)
    await waitUntil(() => cautions().length === 3, 'the caution is there')
    match(cautions()[2] ?? '', /^Egg or milk, warm By its method, what is in .* stands 3 h in all/)
  })

  it('goes by the public list that is chosen, and this browser remembers it', async () => {
    await show(buns())
    equal(list().value, 'eu')
    list().focus()
    await press('Home')
    await waitUntil(
      () => listed().some(said => said.startsWith('tree nuts')),
      'it is the list of the United States',
    )
    ok(!listed().some(said => said.includes('rye')))
    element.remove()
    await show(buns())
    equal(list().value, 'us')
  })

  for (const [language, value] of [
    ['en-US', 'us'],
    ['fr-CA', 'canada'],
    ['de-AT', 'eu'],
    ['en', 'eu'],
  ] as const)
    itOnce(`begins with the list of the country of ${language}`, async () => {
      await show(buns(), language)
      equal(list().value, value)
    })

  it('says which list it is and that it can be changed, until one is chosen', async () => {
    await show(buns())
    match(textOf(all('.guessed')[0]), /this is the .* allergens of .*\. You can choose another above\./)
    list().focus()
    await press('ArrowDown')
    await waitUntil(() => all('.guessed').length === 0, 'it is said no more')
    element.remove()
    await show(buns())
    equal(all('.guessed').length, 0)
  })

  it('says that nothing listed does not mean that it suits anybody', async () => {
    await show(straightDough('Rice flour = 100%\nWater = 90%', 'Rice'))
    match(
      textOf(all('section')[0]),
      /lists none of its ingredients.*does not say that it suits anybody with an allergy/,
    )
  })

  it('warns of what the formula gives cause for, and defers to local rules', async () => {
    await show(buns())
    deepEqual(all('section:last-of-type dt').map(textOf), ['Egg or milk', 'Raw flour'])
    match(textOf(all('section:last-of-type')[0]), /2 hours.*local food rules/)
    element.remove()
    await show(millWheat({ note: 'Bake in a hot pot.' }))
    deepEqual(all('section:last-of-type dt').map(textOf), ['Raw flour', 'Heat'])
  })

  it('follows the formula', async () => {
    await show(millWheat())
    const milk = buns()
    element.sheet!.update({ ...milk, id: element.sheet!.formula.id })
    element.version += 1
    await element.updateComplete
    ok(listed().some(said => said.startsWith('milk')))
  })

  it('never calls a bread safe or without an allergen', async () => {
    for (const formula of [buns(), millWheat(), straightDough('Rice flour = 100%', 'Rice')]) {
      await show(formula)
      ok(!/\bsafe|\bfree\b/i.test(textOf(element.shadowRoot as unknown as Element)))
      if (formula.name !== 'Rice') element.remove()
    }
  })

  it('holds up at three sizes, light and dark', async () => {
    await show(buns())
    for (const width of [1440, 768, 390]) {
      await setViewport({ width, height: 844 })
      await passesAxeInBoth(element)
      ok(document.documentElement.scrollWidth <= width, `nothing sticks out, ${width} px wide`)
      ok(list().getBoundingClientRect().height >= 24)
    }
    await emulateMedia({ colorScheme: 'light' })
  })
})

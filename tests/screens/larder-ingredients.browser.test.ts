import '../../components/larder/tb-larder'
import type { TbLarder } from '../../components/larder/tb-larder'
import { allergensOf } from '../../src/dough/about/allergens'
import { gramsPerMeasure } from '../../src/dough/amounts/measures'
import type { Workbook } from '../../src/dough/document/workbook'
import { openFormula } from '../../src/dough/formula-sheet'
import { larderWith } from '../../src/dough/larder/usual-larder'
import { deepEqual, equal, match, near, ok, waitUntil } from '../assert'
import { press, type } from '../keys'
import { itCase, itOnce } from '../once'
import { millWheat, straightDough } from './breads'
import { holdsUp, Opened } from './dialogs'
import { dressPage, textOf } from './mount'

const german = { language: 'de', decimal: ',' } as const

describe('The larder', () => {
  let opened: Opened<TbLarder>

  async function show(
    detail: { ingredient?: string } = {},
    workbook: Partial<Workbook> = {},
    numbers?: typeof german,
  ) {
    opened = new Opened(document.createElement('tb-larder'), workbook, numbers)
    opened.dialog.show(detail)
    await opened.whenOpen()
    if (detail.ingredient !== undefined) await whenForm()
  }
  const whenForm = () =>
    waitUntil(() => opened.root.querySelector('tb-ingredient')?.shadowRoot, 'the form is there')
  const larder = () => larderWith(opened.around.history.workbook.larder)
  const own = () => opened.around.history.workbook.larder
  const field = (id: string) => opened.find<HTMLInputElement>(`#${id}`)

  /** Types a field anew, with the keyboard. */
  async function write(id: string, text: string): Promise<void> {
    field(id).focus()
    field(id).select()
    await press('Delete')
    await type(text)
    await press('Tab')
    await opened.dialog.updateComplete
  }

  before(dressPage)
  afterEach(() => opened.remove())

  it('lists what is known by what it counts as, and finds it by any of its names', async () => {
    await show()
    const groups = [...opened.root.querySelectorAll('h3')].map(h => textOf(h).replace(/ \d+$/, ''))
    deepEqual(groups, ['Flours', 'Water', 'Salts', 'Starters', 'Everything else'])
    await type('farine t65')
    await opened.dialog.updateComplete
    const rows = [...opened.root.querySelectorAll('.row')].map(textOf)
    equal(rows.length, 1)
    match(rows[0]!, /^Bread flour/)
  })

  it('changes a usual ingredient under its own id, and goes back to the usual values', async () => {
    await show()
    await type('bread flour')
    await opened.click('.row', 'Bread flour')
    await whenForm()
    await write('cup', '150')
    await opened.click('footer .main', 'Save')
    const changed = larder().find('Bread flour')!
    equal(changed.id, larderWith([]).find('Bread flour')!.id)
    equal(gramsPerMeasure(changed, 'cup'), 150)
    near(gramsPerMeasure(changed, 'ml'), 150 / 236.588, 1e-3, 'its density follows the cup')
    match(textOf(opened.find('.told')), /Bread flour is in the larder/)
    ok(opened.root.activeElement?.matches('.row'), 'the focus is on its row')
    match(textOf(opened.root.activeElement), /changed/)
    await press('Enter')
    await whenForm()
    await opened.click('footer .apart', 'Back to the usual values')
    equal(own().length, 0)
    equal(larder().find('Bread flour')!.cup, 137)
  })

  it('leaves every figure alone that was not typed over', async () => {
    await show({ ingredient: 'Salted butter' })
    opened.find('#note').focus() // a click may meet the form while it still settles
    await type('From the dairy. ')
    await opened.click('footer .main', 'Save')
    const usual = larderWith([]).find('Salted butter')!
    const [changed] = own()
    deepEqual({ ...changed!, note: usual.note }, usual)
    match(changed!.note, /From the dairy/)
  })

  for (const [name, kind] of [
    ['Roggenmehl 1370', 'flour'],
    ['Rye flour of the hill farm', 'flour'],
    ['Dinkelsauerteig', 'starter'],
    ['Levain de la maison', 'starter'],
    ['Eau de source', 'water'],
    ['Fleur de sel', 'salt'],
    ['Roasted barley tea', undefined],
    ['Rice syrup', undefined],
  ] as const) {
    itOnce(`${kind ? `guesses ${kind}` : 'guesses nothing'} for ${name}, and only asks`, async () => {
      await show({ ingredient: name })
      equal(field('name').value, name)
      const chosen = opened.dialog
        .shadowRoot!.querySelector('tb-ingredient')!
        .shadowRoot!.querySelector<HTMLInputElement>('input[type=radio]:checked')
      equal(chosen?.value, kind)
      equal(textOf(opened.find('.guess')).includes('guess'), kind !== undefined)
      equal(own().length, 0)
    })
  }

  it('defines an unknown ingredient of a formula, and its flour counts from then on', async () => {
    const bread = straightDough('Bread flour = 500 g\nHill meal = 500 g\nWater = 700 g', 'Hill loaf')
    await show({}, { formulas: [bread] })
    match(textOf(opened.find('h3')), /Not known yet/)
    near(openFormula(bread, larder()).reading('trueHydration'), 1.4)
    await opened.click('.row', 'Hill meal')
    await whenForm()
    await opened.click('.choice', 'Flour')
    await press('Enter')
    await waitUntil(() => own().length === 1, 'Enter saves')
    near(openFormula(bread, larder()).reading('trueHydration'), 0.7)
    ok(!opened.root.textContent?.includes('Not known yet'))
  })

  it('takes the hydration of a starter with a decimal comma', async () => {
    await show({ ingredient: 'Küchensauerteig' }, {}, german)
    await write('hydration', '62,5')
    match(textOf(opened.find('.brings')), /61,5 g flour and 38,5 g water/)
    await opened.click('footer .main', 'Save')
    deepEqual(own()[0]!.countsAs, { kind: 'starter', hydration: 0.625 })
    near(own()[0]!.moisture, 0.625 / 1.625)
    await opened.whenClosed()
  })

  for (const [at, [id, typed, words]] of (
    [
      ['name', '', /Give it a name/],
      ['name', 'Bread flour', /in the larder already/],
      ['name', 'Strong flour', /another name of Bread flour/],
      ['moisture', 'some', /“some” is not a number/],
      ['moisture', '120', /Write 100 at most/],
      ['sugar', '60', /come to 159.05 %/],
      ['density', '900', /5 g at most/],
      ['tsp', '-3', /above 0/],
      ['each', '0', /leave this empty/],
    ] as const
  ).entries()) {
    itCase(at)(`says at the field what is wrong with “${typed}” as ${id}, and saves nothing`, async () => {
      await show({ ingredient: 'Butter' })
      await write(id, typed)
      await opened.click('footer .main', 'Save')
      await waitUntil(() => field(id).getAttribute('aria-invalid') === 'true', 'the field is marked')
      match(textOf(opened.find(`#${field(id).getAttribute('aria-describedby')}`)), words)
      equal(field(id).value, typed, 'what was typed is still there')
      equal(own().length, 0)
      ok(opened.isOpen)
    })
  }

  it('keeps formulas that use an ingredient by its former name', async () => {
    const bread = millWheat()
    await show({ ingredient: 'Wholemeal spelt' }, { formulas: [bread] })
    match(textOf(opened.find('.body .quiet')), /In Mill wheat/)
    await write('name', 'Spelt of the hill farm')
    await opened.click('footer .main', 'Save')
    near(openFormula(bread, larder()).reading('totalFlour'), 1114.5454545454545)
  })

  it('names an allergen as the three lists do, and says that they do not decide', async () => {
    await show({ ingredient: 'Walnut butter' })
    await opened.click('.choice', 'Other')
    await opened.click('.contains .choice', 'Tree nuts')
    await opened.click('.contains .choice', 'Mustard')
    equal(
      textOf(opened.find('.lists')),
      'United States tree nuts European Union nuts, mustard Canada tree nuts, mustard',
    )
    match(textOf(opened.find('fieldset', 'Contains')), /The supplier's label and local food law decide\./)
  })

  for (const [at, [ticked, notKnown, listed]] of (
    [
      [[], ['Hill meal'], []],
      [['Rye'], [], ['cereals containing gluten (rye)']],
      [['Rye', 'Rye'], ['Hill meal'], []],
      [['None of these'], [], []],
      [['None of these', 'None of these'], ['Hill meal'], []],
      [['Rye', 'None of these'], [], []],
      [['None of these', 'Rye', 'Milk'], [], ['cereals containing gluten (rye)', 'milk']],
    ] as const
  ).entries())
    itCase(at)(
      `a flour with ${ticked.join(', then ') || 'nothing'} pressed ${notKnown.length ? 'stays not known' : 'is known'}`,
      async () => {
        const bread = straightDough('Hill meal = 100%\nWater = 70%', 'Hill loaf')
        await show({ ingredient: 'Hill meal' }, { formulas: [bread] })
        await opened.click('.choice', 'Flour')
        const boxes = () => [
          ...opened.find('.contains').querySelectorAll<HTMLInputElement>('input[type=checkbox]'),
        ]
        const isTicked = (name: string) =>
          opened.find('.contains label', name).querySelector('input')!.checked
        deepEqual(boxes().filter(box => box.checked).length, 0, 'nothing is chosen beforehand')
        match(
          textOf(opened.find('.unsaid')),
          /Not filled in yet: the sheet and the card show it as not known/,
        )
        for (const name of ticked) {
          opened.find('.contains label', name).querySelector('input')!.focus()
          await press('Space')
          await opened.dialog.updateComplete
        }
        equal(textOf(opened.find('.unsaid')).includes('Not filled in yet'), notKnown.length > 0)
        ok(!(isTicked('None of these') && isTicked('Rye')), 'one or the other')
        await opened.click('footer .main', 'Save')
        await waitUntil(() => own().length === 1, 'it is saved')
        const { notKnown: unsaid, eu } = allergensOf(openFormula(bread, larder()))
        deepEqual(
          unsaid.map(u => u.ingredient),
          [...notKnown],
        )
        deepEqual(
          eu.map(a => a.entry),
          [...listed],
        )
        equal('allergens' in own()[0]!, notKnown.length === 0)
      },
    )

  it('keeps what is listed of a usual ingredient of which another figure is changed', async () => {
    for (const name of ['Bread flour', 'Rice flour']) {
      await show({ ingredient: name })
      await write('density', '0.6')
      await opened.click('footer .main', 'Save')
      deepEqual(larder().find(name)!.allergens, larderWith([]).find(name)!.allergens)
      if (name !== 'Rice flour') opened.remove()
    }
  })

  it('says in the list whose allergens nobody has said', async () => {
    const meal = { ...larderWith([]).find('Rice flour')!, id: 'meal', name: 'Hill meal', otherNames: [] }
    await show({}, { larder: [meal] })
    match(textOf(opened.find('.row', 'Hill meal')), /allergens not said/)
    ok(!textOf(opened.find('.row', 'Rice flour')).includes('not said'))
  })

  it('keeps which nut it was when something else is added', async () => {
    await show({ ingredient: 'Walnuts' })
    await opened.click('.contains .choice', 'Sulphites')
    await opened.click('footer .main', 'Save')
    deepEqual(own()[0]!.allergens!.eu, ['nuts (walnut)', 'sulphur dioxide/sulphites if >10 mg/kg'])
    deepEqual(own()[0]!.allergens!.us, ['tree nuts (walnut)'])
  })

  it('closes with Escape, asking first only when something typed would be lost', async () => {
    await show({ ingredient: 'Butter' })
    await press('Escape')
    await opened.whenClosed()
    opened.dialog.show({ ingredient: 'Butter' })
    await opened.whenOpen()
    await whenForm()
    await write('fat', '83')
    await press('Escape')
    match(textOf(opened.find('.question')), /Leave without keeping/)
    await press('Escape')
    await waitUntil(() => !opened.root.querySelector('.question'), 'a second Escape takes the question back')
    equal(field('fat').value, '83')
    await press('Escape')
    await press('Tab', 'Enter')
    await opened.whenClosed()
    equal(own().length, 0)
  })

  it('goes from a form back to the list it was opened from', async () => {
    await show()
    await opened.click('.row', 'Cake flour')
    await whenForm()
    await press('Escape')
    await waitUntil(() => opened.root.querySelector('.search'), 'the list is back')
    match(textOf(opened.root.activeElement), /^Cake flour/)
    await press('Escape')
    await opened.whenClosed()
  })

  it('changes nothing where the workbook can only be read', async () => {
    opened = new Opened(document.createElement('tb-larder'))
    opened.dialog.readOnly = true
    opened.dialog.show({ ingredient: 'Butter' })
    await opened.whenOpen()
    await whenForm()
    ok(field('name').readOnly)
    ok(opened.find<HTMLButtonElement>('footer .main').disabled)
    await press('Escape')
    await opened.whenClosed()
  })

  it('holds up on a laptop and a phone, list and form', async () => {
    await show({}, { formulas: [straightDough('Hill meal = 100%', 'Hill loaf')] })
    await holdsUp(opened)
    await opened.click('.row', 'Hill meal')
    await whenForm()
    await opened.click('footer .main', 'Save')
    await holdsUp(opened)
    opened.dialog.show({ ingredient: 'Butter' })
    await waitUntil(() => field('name').value === 'Butter', 'the form is of another ingredient')
    await holdsUp(opened)
  })
})

import '../../components/controls/tb-fold'
import '../../components/sheet/tb-rewrite'
import '../../components/sheet/tb-states'
import { emulateMedia, sendMouse, setViewport } from '@web/test-runner-commands'
import { html } from 'lit'
import type { TbFold } from '../../components/controls/tb-fold'
import type { TbRewrite } from '../../components/sheet/tb-rewrite'
import type { TbStates } from '../../components/sheet/tb-states'
import type { Formula } from '../../src/dough/document/formula'
import { holdReading } from '../../src/dough/edits/edits'
import { openFormula } from '../../src/dough/formula-sheet'
import { deepEqual, equal, match, near, ok } from '../assert'
import { press, type } from '../keys'
import { millWheat, straightDough } from './breads'
import { sizes } from './dialogs'
import { Around, dressPage, passesAxeInBoth, textOf } from './mount'

let around: Around
let fold: TbFold
let element: TbStates | TbRewrite // inside the fold
let said: string[]

/** The element as it stands in its fold, which is still closed. */
async function show<T extends TbStates | TbRewrite>(made: T, formula: Formula = millWheat()): Promise<T> {
  around = new Around({ formulas: [formula] })
  const sheet = openFormula(formula)
  Object.assign(made, { sheet, numbers: { language: 'en-GB', decimal: '.' } })
  if ('today' in made) made.today = () => new Date('2025-11-24T07:42:00Z')
  around.onEdit = workbook => {
    sheet.update(workbook.formulas[0]!)
    if ('version' in made) made.version += 1
  }
  said = []
  made.addEventListener('tb-say', event => said.push((event as CustomEvent<string>).detail))
  element = made
  fold = around.hold(document.createElement('tb-fold'))
  Object.assign(fold, { words: 'Kept states', of: formula.id, inside: () => html`${made}` })
  await fold.updateComplete
  return made
}
const now = () => around.history.workbook.formulas[0]!
const find = (selector: string, words = '') =>
  [fold, element]
    .flatMap(of => [...(of.shadowRoot?.querySelectorAll<HTMLElement>(selector) ?? [])])
    .find(e => textOf(e).includes(words))!
async function click(selector: string, words = '') {
  const { left, top, width, height } = find(selector, words).getBoundingClientRect()
  await sendMouse({
    type: 'click',
    position: [Math.round(left + Math.min(20, width / 2)), Math.round(top + height / 2)],
  })
  await settled()
}
async function keys(...chords: string[]) {
  await press(...chords)
  await settled()
}
async function settled() {
  await fold.updateComplete
  await element.updateComplete
}
const toggle = () => fold.shadowRoot!.querySelector('button')!
const waterOf = (formula: Formula) => formula.stages.at(-1)!.lines.find(l => l.ingredient === 'Water')!

async function holdsUp() {
  for (const size of sizes) {
    await setViewport(size)
    await passesAxeInBoth(fold)
    ok(document.documentElement.scrollWidth <= innerWidth, `nothing sticks out at ${size.width} px`)
    for (const target of [toggle(), ...element.shadowRoot!.querySelectorAll('button, input')]) {
      const { width, height } = target.getBoundingClientRect()
      ok(width >= 24 && height >= 24, `${textOf(target)} is big enough`)
    }
  }
  await emulateMedia({ colorScheme: 'light' })
  await setViewport(sizes[0])
}

describe('Kept states', () => {
  before(dressPage)
  afterEach(() => fold.remove())

  it('lie under a quiet disclosure; the name proposed is the day and the hydration', async () => {
    const states = await show(document.createElement('tb-states'))
    equal(states.isConnected, false)
    toggle().focus()
    await keys('Enter')
    equal(toggle().ariaExpanded, 'true')
    match(textOf(find('p:not([role])')), /this formula as it stands now: to compare with later/)
    equal(states.shadowRoot!.querySelector('input')!.value, '24 November, 70.5 % true')
  })

  it('open beneath the row they stand in, and nothing in it moves', async () => {
    await show(document.createElement('tb-states'))
    const row = document.createElement('div')
    row.style.display = 'flex'
    row.style.flexWrap = 'wrap'
    const other = document.createElement('tb-fold')
    Object.assign(other, { words: 'Grams or percentages', inside: () => html`<p>Nothing yet</p>` })
    fold.replaceWith(row)
    row.append(fold, other)
    try {
      await other.updateComplete
      const places = () =>
        [toggle(), other.shadowRoot!.querySelector('button')!].map(button => {
          const { left, top } = button.getBoundingClientRect()
          return [left, top]
        })
      const before = places()
      await click('button')
      equal(toggle().ariaExpanded, 'true')
      deepEqual(places(), before)
      ok(
        element.getBoundingClientRect().top >=
          other.shadowRoot!.querySelector('button')!.getBoundingClientRect().bottom,
      )
    } finally {
      row.remove()
    }
  })

  it('this one is kept under the name proposed or another, and listed with its readings, the latest first', async () => {
    await show(document.createElement('tb-states'))
    await click('button')
    await keys('Tab', 'Enter')
    deepEqual(
      now().states!.map(s => [s.name, s.keptAt]),
      [['24 November, 70.5 % true', '2025-11-24T07:42:00.000Z']],
    )
    deepEqual(said, ['Kept as 24 November, 70.5 % true.'])
    match(
      textOf(find('li')),
      /24 Nov 2025.*70\.5 % true, 1\.88 % salt, 10\.3 % prefermented, 1,921 g of dough/,
    )
    await keys('Control+a')
    await type('wetter')
    await keys('Enter')
    deepEqual([...element.shadowRoot!.querySelectorAll('li b')].map(textOf), [
      'wetter',
      '24 November, 70.5 % true',
    ])
  })

  it('a name is needed, which is said in words', async () => {
    await show(document.createElement('tb-states'))
    await click('button')
    await keys('Tab', 'Control+a', 'Delete', 'Enter')
    match(textOf(find('.refusal')), /A state needs a name/)
    equal(now().states, undefined)
  })

  it('one is read beside the present, brought back, and let go, with the way back', async () => {
    await show(document.createElement('tb-states'))
    await click('button')
    await keys('Tab', 'Enter')
    const [kept] = now().states!
    const before = now()
    const line = waterOf(before)
    around.history.apply({
      label: 'Wetter',
      changes: [
        {
          of: 'line',
          formula: before.id,
          stage: before.stages[1]!.id,
          id: line.id,
          value: { ...line, amount: '740 g' },
        },
      ],
    })
    around.onEdit(around.history.workbook)
    await element.updateComplete

    await click('li button', 'Read')
    deepEqual(around.wishes, [{ want: 'beside', left: before.id, state: kept!.id }])
    await click('li button', 'Bring back')
    equal(waterOf(now()).amount, '690 g')
    match(said.at(-1)!, /24 November, 70\.5 % true is back\. Undo takes it back/)
    around.history.undo()
    equal(waterOf(now()).amount, '740 g')
    around.onEdit(around.history.workbook)

    find('li button', 'Let go').focus()
    await keys('Enter')
    deepEqual(now().states, [])
    match(said.at(-1)!, /Let go of 24 November.*Undo brings it back/)
    equal(textOf(element.shadowRoot!.activeElement), 'Keep this state')
    around.history.undo()
    equal(now().states!.length, 1)
  })

  it('say what else comes back with one and what goes, before and after it is brought back', async () => {
    await show(document.createElement('tb-states'), millWheat({ note: 'for Saturday' }))
    await click('button')
    await keys('Tab', 'Enter')
    equal(find('li .quiet', 'also'), undefined, 'nothing differs yet')
    const change = (value: Partial<Formula>) => {
      around.history.apply({ label: 'Change', changes: [{ of: 'fields', formula: now().id, value }] })
      around.onEdit(around.history.workbook)
    }
    change({
      batch: { make: 'factor', factor: 2 },
      jottings: [{ id: 'j', name: 'tin', text: '21*11' }],
    })
    await settled()
    const also = find('li .quiet', 'also')
    equal(textOf(also), 'Bringing it back also changes how much to make, and takes away the jotting tin.')
    equal(find('li button', 'Bring back').getAttribute('aria-describedby'), also.id)
    await click('li button', 'Bring back')
    equal(now().batch, undefined)
    equal(now().jottings, undefined)
    match(said.at(-1)!, /% true is back, and so are how much to make and the jotting tin\. Undo/)
    around.history.undo()
    equal(now().jottings!.length, 1)
  })

  it('are only read where the workbook is only read', async () => {
    const states = await show(document.createElement('tb-states'))
    await click('button')
    await keys('Tab', 'Enter')
    states.readOnly = true
    await settled()
    deepEqual([...states.shadowRoot!.querySelectorAll('button, input')].map(textOf), ['Read'])
  })

  it('hold up on a laptop and a phone', async () => {
    await show(document.createElement('tb-states'))
    await click('button')
    await keys('Tab', 'Enter')
    await holdsUp()
  })
})

describe('Grams or percentages', () => {
  before(dressPage)
  afterEach(() => fold.remove())

  it('the formula is written in the one or the other, no weight changed, as one step', async () => {
    await show(
      document.createElement('tb-rewrite'),
      straightDough('Bread flour = 100%\nWater = 70%\nSalt = 2%', 'Tin'),
    )
    await click('button')
    match(textOf(find('p')), /No weight changes, and lines that give still give/)
    await keys('Tab', 'Enter')
    deepEqual(
      now().stages[0]!.lines.map(l => l.amount),
      ['1000 g', '700 g', '20 g'],
    )
    equal(textOf(find('.told')), 'Written in grams. Undo takes it back.')
    await keys('Enter')
    equal(textOf(find('.told')), 'Every amount is in grams already.')
    await click('.lined', 'Write in percentages')
    deepEqual(
      now().stages[0]!.lines.map(l => l.amount),
      ['100%', '70%', '2%'],
    )
    around.history.undo()
    equal(around.history.undoLabel, 'Write Tin in grams')
    near(openFormula(now()).reading('doughWeight'), 1720, 1e-12)
  })

  it('is refused in words, with nothing changed', async () => {
    const formula = straightDough('Bread flour = 1000 g\nWater = 700 g', 'Tin')
    const [dough] = formula.stages
    const flour = { formula: formula.id, stage: dough!.id, line: dough!.lines[0]!.id }
    await show(document.createElement('tb-rewrite'), formula)
    around.history.apply(holdReading(around.history.workbook, flour, 'trueHydration', 0.7))
    around.onEdit(around.history.workbook)
    await click('button')
    await click('.lined', 'Write in percentages')
    match(textOf(find('.refusal')), /true hydration held at 70 %\. Release that hold first/)
    equal(waterOf(now()).amount, '700 g')
  })

  it('holds up on a laptop and a phone', async () => {
    await show(document.createElement('tb-rewrite'))
    await click('button')
    await click('.lined', 'Write in grams')
    await holdsUp()
  })
})

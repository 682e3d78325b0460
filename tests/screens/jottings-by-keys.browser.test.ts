import '../../components/jottings/tb-jottings'
import { emulateMedia, sendMouse, setViewport } from '@web/test-runner-commands'
import type { TbJottings } from '../../components/jottings/tb-jottings'
import type { Formula } from '../../src/dough/document/formula'
import { openFormula } from '../../src/dough/formula-sheet'
import { deepEqual, equal, match, ok } from '../assert'
import { press, type } from '../keys'
import { millWheat } from './breads'
import { sizes } from './dialogs'
import { Around, dressPage, english, passesAxeInBoth, textOf } from './mount'

describe('Jottings', () => {
  let around: Around
  let jottings: TbJottings
  const german = { language: 'de', decimal: ',' } as const

  async function show(texts: readonly string[] = [], numbers: typeof english | typeof german = english) {
    const formula: Formula = millWheat({
      jottings: texts.map((jotting, at) => {
        const [name = '', text = ''] = jotting.split(' = ')
        return { id: `j${at}`, name, text }
      }),
    })
    around = new Around({ formulas: [formula] })
    const sheet = openFormula(formula)
    jottings = document.createElement('tb-jottings')
    Object.assign(jottings, { sheet, numbers })
    around.onEdit = workbook => {
      sheet.update(workbook.formulas[0]!)
      jottings.version += 1
    }
    around.hold(jottings)
    await jottings.updateComplete
  }

  const root = () => jottings.shadowRoot!
  const kept = () => (around.history.workbook.formulas[0]!.jottings ?? []).map(j => `${j.name} = ${j.text}`)
  const lines = () => [...root().querySelectorAll('.jotting')]
  const input = (line: number, field: 'name' | 'text') =>
    lines().at(line)!.querySelector<HTMLInputElement>(`[data-field=${field}]`)!
  const shown = () => lines().map(l => textOf(l.querySelector('.value')))
  const error = (line: number) => textOf(lines().at(line)!.querySelector('.error'))
  const isAt = (line: number, field: 'name' | 'text') =>
    equal(root().activeElement, input(line, field) as Element, `the focus is in ${field} of line ${line}`)
  const options = () => [...root().querySelectorAll('[role=option]')].map(textOf)
  async function keys(...chords: string[]) {
    await press(...chords)
    await jottings.updateComplete
  }
  async function typed(text: string) {
    await type(text)
    await jottings.updateComplete
  }
  async function click(element: Element) {
    const { left, top, width, height } = element.getBoundingClientRect()
    await sendMouse({
      type: 'click',
      position: [Math.round(left + Math.min(20, width / 2)), Math.round(top + height / 2)],
    })
    await jottings.updateComplete
  }

  before(dressPage)
  afterEach(() => jottings.remove())

  it('without any teach what one is, and take the first from the line beneath', async () => {
    await show()
    match(textOf(root().querySelector('section')), /Jot down a calculation: per_loaf = dough_weight\/6/)
    await click(input(0, 'name'))
    await typed('per_loaf')
    await keys('Enter')
    isAt(0, 'text')
    await typed('dough_weight/6')
    await keys('Enter')
    deepEqual(kept(), ['per_loaf = dough_weight/6'])
    equal(shown()[0], '320.2 g')
    isAt(1, 'name')
    equal(input(1, 'name').value, '')
    ok(!textOf(root().querySelector('section')).includes('Jot down'))
  })

  it('say that their weights are as written, at first and wherever a batch stands beside them', async () => {
    const hint = () => textOf(root().querySelector('.hint'))
    const asWritten = /Weights such as total_flour are those of the formula as written, not of the batch\./
    await show()
    match(hint(), asWritten)
    jottings.remove()
    await show(['flour_kilos = total_flour/1000'])
    equal(hint(), '')
    around.history.apply({
      label: 'Twice',
      changes: [
        {
          of: 'fields',
          formula: around.history.workbook.formulas[0]!.id,
          value: { batch: { make: 'factor', factor: 2 } },
        },
      ],
    })
    around.onEdit(around.history.workbook)
    await jottings.updateComplete
    match(hint(), asWritten)
    equal(shown()[0], '1.11 g')
  })

  it('split what is typed whole at its equals sign, and what is pasted', async () => {
    await show()
    input(0, 'name').focus()
    await typed('tin = 21*11*10*0.52')
    isAt(0, 'text')
    await keys('Enter')
    deepEqual(kept(), ['tin = 21*11*10*0.52'])
    equal(shown()[0], '1,201.2 number')
    // a paste comes as one input
    const name = input(1, 'name')
    equal(root().activeElement, name as Element)
    await navigator.clipboard.writeText('share = tin/dough_weight*1 g')
    await press('Control+v')
    await keys('Enter')
    equal(kept()[1], 'share = tin/dough_weight*1 g')
  })

  it('leave out an equals sign typed once more before the calculation', async () => {
    await show()
    input(0, 'name').focus()
    await typed('loaf')
    await keys('Enter')
    await typed('= dough_weight/2')
    await keys('Enter')
    deepEqual(kept(), ['loaf = dough_weight/2'])
    equal(input(0, 'text').value, 'dough_weight/2')
  })

  it('are edited in place, one step each, and follow the dough', async () => {
    await show(['per_loaf = dough_weight/6', 'half = per_loaf/2'])
    deepEqual(shown().slice(0, 2), ['320.2 g', '160.1 g'])
    await click(input(0, 'text'))
    await keys('Control+a')
    await typed('dough_weight/8')
    await keys('Enter')
    deepEqual(shown().slice(0, 2), ['240.1 g', '120.1 g'])
    isAt(1, 'name')
    await keys('Control+a')
    await typed('small loaf')
    await keys('Tab')
    deepEqual(kept(), ['per_loaf = dough_weight/8', 'small_loaf = per_loaf/2'])
    equal(input(1, 'name').value, 'small_loaf')
    around.history.undo()
    around.history.undo()
    deepEqual(kept(), ['per_loaf = dough_weight/6', 'half = per_loaf/2'])
  })

  it('Escape puts back what was there', async () => {
    await show(['tin = 5'])
    await click(input(0, 'text'))
    await typed('77')
    await keys('Escape')
    equal(input(0, 'text').value, '5')
    isAt(0, 'text')
    await click(input(1, 'name'))
    await typed('half')
    await keys('Escape', 'Tab')
    deepEqual(kept(), ['tin = 5'])
  })

  it('offer the names there are, to be taken by keys or mouse', async () => {
    await show(['tin = 5'])
    await click(input(1, 'name'))
    await typed('x')
    await keys('Tab')
    await typed('2*dou')
    deepEqual(options(), ['dough_weight'])
    equal(input(1, 'text').getAttribute('aria-expanded'), 'true')
    await keys('ArrowDown')
    equal(input(1, 'text').getAttribute('aria-activedescendant'), 'name-0')
    await keys('Enter')
    equal(input(1, 'text').value, '2*dough_weight')
    equal(input(1, 'text').getAttribute('aria-expanded'), 'false')
    deepEqual(kept(), ['tin = 5'], 'taking a name keeps nothing yet')
    await typed(' + wat')
    ok(options().includes('water') && options().includes('levain.water'), options().join())
    await click(root().querySelectorAll('[role=option]')[options().indexOf('levain.water')]!)
    equal(input(1, 'text').value, '2*dough_weight + levain.water')
    isAt(1, 'text')
    await typed(' + s')
    ok(options().length > 1)
    await keys('Escape')
    deepEqual(options(), [])
    equal(
      input(1, 'text').value,
      '2*dough_weight + levain.water + s',
      'the first Escape only closes the list',
    )
    await keys('Escape')
    equal(input(1, 'text').value, '')
  })

  it('say in words beneath what cannot be, tied to the field', async () => {
    await show(['tin = 5', 'x = dough_wieght/6'])
    equal(error(1), 'Nothing here is called dough_wieght.')
    equal(shown()[1], '–')
    const text = input(1, 'text')
    equal(text.getAttribute('aria-invalid'), 'true')
    equal(text.getAttribute('aria-describedby'), lines()[1]!.querySelector('.error')!.id)

    await click(input(1, 'name'))
    await keys('Control+a')
    await typed('tin')
    await keys('Enter')
    equal(error(1), 'There is a jotting called tin already.')
    isAt(1, 'name')
    equal(input(1, 'name').getAttribute('aria-invalid'), 'true')
    await keys('Escape')
    equal(input(1, 'name').value, 'x')
    equal(error(1), 'Nothing here is called dough_wieght.')

    await click(input(2, 'text'))
    await typed('7')
    await keys('Enter')
    match(error(2), /needs a name/)
    isAt(2, 'name')
    await typed('cup')
    await keys('Enter')
    match(error(2), /cup is a unit/)
    await keys('Control+a')
    await typed('seven')
    await keys('Enter', 'Enter')
    equal(kept()[2], 'seven = 7')
  })

  it('show their working at the value, and are removed with the way back', async () => {
    await show(['tin = 5', 'per_loaf = dough_weight/6'])
    const value = lines()[1]!.querySelector<HTMLElement>('.value')!
    equal(value.getAttribute('aria-label'), 'per_loaf: 320.2 g, show the working')
    await click(value)
    deepEqual(around.wishes, [{ want: 'working', cell: 'jotting j1' }])
    lines()[0]!.querySelector<HTMLElement>('.remove')!.focus()
    await keys('Enter')
    deepEqual(kept(), ['per_loaf = dough_weight/6'])
    isAt(0, 'name')
    equal(around.history.undoLabel, 'Remove tin')
  })

  it('are written with the decimal sign of the baker, and kept with points', async () => {
    await show(['tin = min(0.5, 2)'], german)
    equal(input(0, 'text').value, 'min(0,5; 2)')
    await click(input(1, 'name'))
    await typed('y = 2,5*dough_weight')
    await keys('Enter')
    equal(kept()[1], 'y = 2.5*dough_weight')
    equal(input(1, 'text').value, '2,5*dough_weight')
  })

  it('leaving the line keeps it, arrows go from line to line', async () => {
    await show(['tin = 5'])
    await click(input(1, 'name'))
    await typed('y=6')
    isAt(1, 'text')
    await keys('Shift+Tab')
    isAt(1, 'name')
    deepEqual(kept(), ['tin = 5'])
    await keys('ArrowUp')
    isAt(0, 'name')
    deepEqual(kept(), ['tin = 5', 'y = 6'])
    await keys('ArrowDown')
    isAt(1, 'name')
  })

  it('cannot be written in where the workbook is only read', async () => {
    await show(['tin = 5'])
    jottings.readOnly = true
    await jottings.updateComplete
    equal(lines().length, 1)
    ok(input(0, 'name').readOnly && input(0, 'text').readOnly)
    equal(root().querySelector('.remove'), null)
  })

  it('hold up on a laptop and a phone', async () => {
    await show(['tin = 21*11*10*0.52', 'x = dough_wieght/6', 'is_wet = true_hydration > 70%'])
    await click(input(3, 'name'))
    await typed('y=wa')
    ok(options().length > 0)
    for (const size of sizes) {
      await setViewport(size)
      await passesAxeInBoth(jottings)
      ok(document.documentElement.scrollWidth <= innerWidth, `nothing sticks out at ${size.width} px`)
      for (const target of root().querySelectorAll('button, input')) {
        const { width, height } = target.getBoundingClientRect()
        ok(width >= 24 && height >= 24, `${target.getAttribute('aria-label')} is big enough`)
      }
    }
    await emulateMedia({ colorScheme: 'light' })
    await setViewport(sizes[0])
  })
})

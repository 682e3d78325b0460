import '../../components/method/tb-method'
import { sendMouse, setViewport } from '@web/test-runner-commands'
import type { TbMethod } from '../../components/method/tb-method'
import { openFormula } from '../../src/dough/formula-sheet'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { press, type } from '../keys'
import { itOnce } from '../once'
import { millWheat } from './breads'
import { sizes } from './dialogs'
import { Around, dressPage, english, passesAxe, textOf } from './mount'

describe('The method', () => {
  let around: Around
  let method: TbMethod

  async function show(texts: readonly string[] = [], more: object = {}) {
    const base = millWheat({})
    const last = base.stages.length - 1
    const steps = texts.map((row, at) => {
      const [, kind, does, text] = /^(\w+) ([^:]+): ?(.*)$/.exec(row)!
      return { id: `s${at}`, kind: kind as 'hands', does: does!, text: text!, note: '' }
    })
    const stages = base.stages.map((s, i) => (i === last && steps.length ? { ...s, method: steps } : s))
    const formula = { ...base, stages }
    around = new Around({ formulas: [formula] })
    const sheet = openFormula(formula)
    method = document.createElement('tb-method')
    Object.assign(method, { sheet, numbers: english, ...more })
    around.onEdit = workbook => {
      sheet.update(workbook.formulas[0]!)
      method.version += 1
    }
    around.hold(method)
    await method.updateComplete
  }

  const root = () => method.shadowRoot!
  const kept = () =>
    around.history.workbook.formulas[0]!.stages.at(-1)!.method?.map(
      ({ kind, does, text }) => `${kind} ${does}: ${text}`,
    ) ?? []
  const lists = () => [...root().querySelectorAll('ol')]
  const lines = () => [...lists().at(-1)!.querySelectorAll(':scope > li')]
  const input = (line: number, field: string) =>
    lines().at(line)!.querySelector<HTMLInputElement>(`[data-field=${field}]`)!
  const read = (line: number) => textOf(lines().at(line)!.querySelector('.read'))
  async function keys(...chords: string[]) {
    await press(...chords)
    await method.updateComplete
  }
  async function typed(text: string) {
    await type(text)
    await method.updateComplete
  }
  const isAt = (line: number, field: string) => equal(root().activeElement, input(line, field) as Element)

  before(dressPage)
  afterEach(() => method.remove())

  it('is written by keys alone: what is done, its time, and on to the next step', async () => {
    await show()
    match(textOf(root().querySelector('.hint')), /What is done, step by step/)
    input(-1, 'does').focus()
    await typed('Mix')
    await keys('Enter')
    isAt(-1, 'text')
    await typed('10 min')
    await keys('Enter')
    isAt(-1, 'does')
    await typed('Bulk')
    await keys('Enter')
    await typed('3.5-4.5 h at 24 C, adds Salt')
    await keys('Enter')
    deepEqual(kept(), ['hands Mix: 10 min', 'wait Bulk: 3.5-4.5 h at 24 C, adds Salt'])
    equal(read(0), '') // what is typed says it as well
    equal(read(1), '3.5–4.5 h, usually 4 h; at 24 °C; Salt goes in')
  })

  it('takes a whole step in one line, and shows where each part of it went', async () => {
    await show(['hands Cool: '])
    input(-1, 'does').focus()
    await typed('Bake, 45 min at 230 °C')
    await keys('Enter')
    isAt(-1, 'text')
    equal(input(-1, 'does').value, 'Bake')
    equal(input(-1, 'text').value, '45 min at 230 °C')
    await keys('Enter')
    deepEqual(kept(), ['hands Cool: ', 'bake Bake: 45 min at 230 °C'])
    input(0, 'does').focus()
    await keys('Control+a')
    await typed('Cool on a rack 2 h')
    const before = around.history.workbook
    await keys('Tab')
    deepEqual(kept(), ['hands Cool on a rack: 2 h', 'bake Bake: 45 min at 230 °C'])
    around.history.undo() // one edit
    deepEqual(around.history.workbook.formulas[0], before.formulas[0])
  })

  it('says what it does not understand, and keeps it as typed', async () => {
    await show(['wait Bulk: until it wobbles'])
    match(read(0), /“until it wobbles” is not understood/)
    deepEqual(kept(), ['wait Bulk: until it wobbles'])
    input(0, 'text').focus()
    await keys('Control+a')
    await typed('2 h, adds Sand')
    await keys('Enter')
    match(read(0), /Sand is not in Final dough/)
  })

  it('a step moves up and down by keys, with the focus, and the last move is taken back', async () => {
    await show(['hands Mix: 10 min', 'wait Bulk: 4 h', 'bake Bake: 45 min'])
    input(1, 'does').focus()
    await keys('Alt+ArrowUp')
    deepEqual(kept(), ['wait Bulk: 4 h', 'hands Mix: 10 min', 'bake Bake: 45 min'])
    isAt(0, 'does')
    await keys('Alt+ArrowDown')
    deepEqual(kept(), ['hands Mix: 10 min', 'wait Bulk: 4 h', 'bake Bake: 45 min'])
    around.history.undo()
    deepEqual(kept(), ['wait Bulk: 4 h', 'hands Mix: 10 min', 'bake Bake: 45 min'])
  })

  it('says where a step went', async () => {
    await show(['hands Mix: 10 min', 'wait Bulk: 4 h', 'bake Bake: 45 min'])
    const said: string[] = []
    method.addEventListener('tb-say', event => said.push((event as CustomEvent<string>).detail))
    input(0, 'does').focus()
    await keys('Alt+ArrowDown')
    await keys('Alt+ArrowUp')
    deepEqual(said, ['Moved Mix to place 2 of 3, after Bulk.', 'Moved Mix to place 1 of 3.'])
  })

  async function pointTo(at: Element | null, below = 0) {
    const { left, top, width, height } = at!.getBoundingClientRect()
    await sendMouse({
      type: 'move',
      position: [Math.round(left + width / 2), Math.round(top + height / 2 + below)],
    })
    await method.updateComplete
  }
  const handle = (line: number) => lines()[line]!.querySelector('.handle')

  it('is dragged by its handle to where a mark stands, and taken back', async () => {
    await show(['hands Mix: 10 min', 'wait Bulk: 4 h', 'bake Bake: 45 min'])
    await pointTo(handle(0))
    await sendMouse({ type: 'down' })
    await pointTo(lines()[2]!, 12)
    deepEqual(
      lines().map(line => line.classList.contains('mark')),
      [false, false, false, true],
    )
    await sendMouse({ type: 'up' })
    await waitUntil(() => kept()[2] === 'hands Mix: 10 min', 'it has moved')
    deepEqual(kept(), ['wait Bulk: 4 h', 'bake Bake: 45 min', 'hands Mix: 10 min'])
    equal(root().querySelector('.mark, .dragged'), null)
    around.history.undo()
    deepEqual(kept(), ['hands Mix: 10 min', 'wait Bulk: 4 h', 'bake Bake: 45 min'])
  })

  it('stays where it was when Escape is pressed on the way, or it is let go at its own place', async () => {
    await show(['hands Mix: 10 min', 'wait Bulk: 4 h', 'bake Bake: 45 min'])
    await pointTo(handle(2))
    await sendMouse({ type: 'down' })
    await pointTo(lines()[0]!, -8)
    ok(lines()[0]!.classList.contains('mark'))
    await keys('Escape')
    equal(root().querySelector('.mark, .dragged'), null)
    await sendMouse({ type: 'up' })
    await pointTo(handle(1))
    await sendMouse({ type: 'down' })
    await pointTo(lines()[0]!, 14)
    equal(root().querySelector('.mark'), null, 'its own place has no mark')
    await sendMouse({ type: 'up' })
    deepEqual(kept(), ['hands Mix: 10 min', 'wait Bulk: 4 h', 'bake Bake: 45 min'])
  })

  const offered = () => [...root().querySelectorAll('[role=option]')].map(textOf)

  it('offers the words of the trade while what is done is typed, and they are chosen by keys', async () => {
    await show()
    input(-1, 'does').focus()
    await typed('Pr')
    deepEqual(offered(), ['Preshape', 'Proof'])
    await keys('ArrowDown', 'ArrowDown')
    equal(input(-1, 'does').getAttribute('aria-activedescendant'), 'name-1')
    await keys('Enter')
    equal(input(-1, 'does').value, 'Proof')
    deepEqual(offered(), [])
    isAt(-1, 'does')
    await keys('Enter')
    await typed('1 h')
    await keys('Enter')
    deepEqual(kept(), ['wait Proof: 1 h'])
    await keys('ArrowDown')
    equal(offered().length, 22, 'in an empty field, all of them')
    await keys('Escape')
    deepEqual(offered(), [])
    await typed('rest')
    deepEqual(offered(), ['Bench rest'])
    await typed(' in the tin')
    deepEqual(offered(), [])
    await keys('Enter')
    await typed('5 min')
    await keys('Enter')
    deepEqual(kept(), ['wait Proof: 1 h', 'hands rest in the tin: 5 min'])
  })

  it('a step is removed by its menu, and the focus stays in the method', async () => {
    await show(['hands Mix: 10 min', 'wait Bulk: 4 h'])
    const menu = lines()[0]!.querySelector('tb-menu')!
    menu.focus()
    await keys('ArrowUp')
    await keys('Enter')
    deepEqual(kept(), ['wait Bulk: 4 h'])
    await method.updateComplete
    isAt(0, 'does')
  })

  it('how a step passes is chosen, and Escape puts a field back', async () => {
    await show(['hands Mix: 10 min'])
    const select = lines()[0]!.querySelector('select')!
    select.focus()
    await keys('w')
    equal(kept()[0], 'wait Mix: 10 min')
    equal(read(0), '9 min–12 min, usually 10 min'.replace('9 min–12 min', '9–12 min'))
    input(0, 'text').focus()
    await typed('5')
    await keys('Escape')
    equal(input(0, 'text').value, '10 min')
    equal(kept()[0], 'wait Mix: 10 min')
  })

  it('a time without what is done is asked about, and not lost', async () => {
    await show()
    input(-1, 'text').focus()
    await typed('20 min')
    await keys('Enter')
    match(read(-1), /Say what is done/)
    isAt(-1, 'does')
    equal(input(-1, 'text').value, '20 min')
    await typed('Rest')
    await keys('Enter', 'Enter')
    deepEqual(kept(), ['wait Rest: 20 min'])
  })

  it('to be read only, there is no field to add to', async () => {
    await show(['hands Mix: 10 min'], { readOnly: true })
    equal(lines().length, 1)
    ok(input(0, 'does').readOnly)
    equal(root().querySelectorAll('tb-menu, select').length, 0)
  })

  for (const { width, height } of sizes)
    itOnce(`has no faults that axe finds, at ${width} × ${height}`, async () => {
      await setViewport({ width, height })
      await show(['hands Mix: 10 min', 'wait Bulk: what', 'bake Bake: 45 min at 230 °C'])
      await passesAxe(method)
      const out = [...root().querySelectorAll('li *')].filter(e => e.getBoundingClientRect().right > width)
      equal(out.length, 0, 'nothing sticks out to the side')
    })
})

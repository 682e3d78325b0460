import '../../components/sheet/tb-sheet'
import '../../components/method/tb-method'
import { sendMouse, setViewport } from '@web/test-runner-commands'
import type { TbSheet } from '../../components/sheet/tb-sheet'
import type { Formula, Step } from '../../src/dough/document/formula'
import { openFormula } from '../../src/dough/formula-sheet'
import { deepEqual, equal, ok, waitUntil } from '../assert'
import { press, type } from '../keys'
import { millWheat } from './breads'
import { focusIn, goTo, middleOf } from './grid-desk'
import { Around, dressPage, english, passesAxeInBoth, textOf } from './mount'

const step = (does: string, kind: Step['kind'], text: string): Step => ({
  id: `s ${does}`,
  does,
  kind,
  text,
  note: '',
})
const ofDough = [
  step('Mix', 'hands', '15 min'),
  step('Rest', 'wait', '30–45 min'),
  step('Bulk', 'wait', '3.5–4.5 h, at 24 °C, 4 × 5 min every 30 min'),
  step('Divide and shape', 'hands', '25 min'),
  step('', 'wait', '10–15 h, in the fridge'),
  step('Bake', 'bake', '45 min, at 240 °C'),
]

describe('A method beneath its stage', () => {
  let around: Around
  let sheet: TbSheet

  /** Mill wheat, of whose stages those named have steps. */
  async function show(steps: Readonly<Record<string, readonly Step[]>>, more: object = {}) {
    const bare = millWheat()
    const stages = bare.stages.map(s => (steps[s.name] ? { ...s, method: steps[s.name]! } : s))
    const formula: Formula = { ...bare, stages }
    around = new Around({ formulas: [formula] })
    sheet = document.createElement('tb-sheet')
    const opened = openFormula(formula)
    Object.assign(sheet, { sheet: opened, numbers: english, ...more })
    around.onEdit = workbook => {
      sheet.touched = opened.update(workbook.formulas[0]!)
      sheet.version += 1
    }
    around.hold(sheet)
    await sheet.drawn()
    await waitUntil(() => method().shadowRoot?.querySelector('ol'), 'the steps are drawn')
  }

  const grid = () => sheet.shadowRoot!.querySelector('tb-grid')!
  const method = () => sheet.shadowRoot!.querySelector('tb-method')!
  const rows = () => [...grid().shadowRoot!.querySelectorAll<HTMLElement>('tr.method')]
  const said = () => rows().map(row => textOf(row))
  const field = () => method().shadowRoot!.activeElement as HTMLInputElement | null
  const menu = () => grid().shadowRoot!.querySelector<HTMLElement>('[role=menu]')
  /** Clicks a line with the mouse, again until what follows a click has been fetched. */
  async function clickRow(at: number): Promise<void> {
    for (let tries = 0; !field() && tries < 50; tries++) {
      await sendMouse({ type: 'click', position: middleOf(rows()[at]!.querySelector('button')!) })
      // It scrolls there: another click before that is done would be one elsewhere.
      for (let frames = 0; !field() && frames < 20; frames++) await new Promise(requestAnimationFrame)
    }
  }
  const isAt = (stage: string, value: string) =>
    waitUntil(
      () => field()?.closest('ol')?.ariaLabel === `Method of ${stage}` && field()?.value === value,
      `the focus is in ${value || 'the new step'} of ${stage}`,
    )

  before(dressPage)
  afterEach(async () => {
    sheet.remove()
    await setViewport({ width: 1280, height: 900 })
  })

  it('is one line of its steps as they are typed; a stage without steps has none', async () => {
    await show({ 'Final dough': ofDough })
    deepEqual(said(), [
      'Method of Final dough: Mix 15 min · Rest 30–45 min · Bulk 3.5–4.5 h, at 24 °C, 4 × 5 min every 30 min · Divide and shape 25 min · wait 10–15 h, in the fridge · Bake 45 min, at 240 °C',
    ])
    equal(rows()[0]!.previousElementSibling?.className, 'sum final')
    await passesAxeInBoth(sheet)
  })

  it('takes two lines of text at most, on a phone too, and is there with the first rows', async () => {
    await setViewport({ width: 390, height: 844 })
    await show({ Levain: [step('Mix', 'hands', '10 min')], 'Final dough': ofDough })
    const [one, two] = rows().map(row => row.querySelector('button > span')!.getBoundingClientRect().height)
    ok(Math.abs(two! - 2 * one!) < 1, `${one} and ${two} px`)
    const ends = [rows()[1]!.querySelector('button')!, grid()].map(e => e.getBoundingClientRect().right)
    ok(ends[0]! <= ends[1]!, 'it ends within the grid')
  })

  it('keys go over it: arrows from row to row, and Tab out of the sheet', async () => {
    await show({ Levain: [step('Mix', 'hands', '10 min')], 'Final dough': ofDough })
    await goTo(grid(), 'Sum')
    await press('ArrowDown')
    equal(focusIn(grid()), 'Final dough / ingredient')
    await press('ArrowUp')
    equal(focusIn(grid()), 'Sum of Levain / ingredient')
    await press('Control+End', 'ArrowDown', 'Tab')
    equal(textOf(grid().shadowRoot!.activeElement), 'Add a stage')
  })

  it('a press brings its steps into view with the focus in the first, Escape the stage in the grid', async () => {
    await setViewport({ width: 900, height: 420 })
    await show({ Levain: [step('Mix', 'hands', '10 min')], 'Final dough': ofDough })
    rows()[1]!.scrollIntoView({ block: 'center' })
    await clickRow(1)
    await isAt('Final dough', 'Mix')
    const { top, bottom } = field()!.getBoundingClientRect()
    ok(top > 0 && bottom < innerHeight, 'it is in sight')
    await press('Escape')
    deepEqual(around.wishes.at(-1), {
      want: 'find',
      stage: around.history.workbook.formulas[0]!.stages[1]!.id,
    })
  })

  it('keys go there by the menu of the stage, also to write the first step', async () => {
    await show({ 'Final dough': ofDough })
    for (const [stage, entry, first] of [
      ['Final dough', 'Go to its method', 'Mix'],
      ['Levain', 'Add a method', ''],
    ] as const) {
      await goTo(grid(), stage)
      await press('Shift+F10')
      await waitUntil(() => menu()?.matches(':popover-open'), 'the menu is open')
      const focused = () => textOf(menu()!.querySelector(':focus span'))
      for (let i = 0; focused() !== entry && i < 20; i++) await press('ArrowDown')
      await press('Enter')
      await isAt(stage, first)
    }
    await type('Feed')
    await press('Enter')
    await type('10 min')
    await press('Enter')
    await waitUntil(() => said()[0] === 'Method of Levain: Feed 10 min', 'it stands beneath its stage')
    around.history.undo()
    around.onEdit(around.history.workbook)
    await waitUntil(() => said().length === 1, 'it is gone with the edit')
  })

  it('where nothing can be changed it is read all the same', async () => {
    await show({ 'Final dough': ofDough }, { readOnly: true })
    equal(rows().length, 1)
    await clickRow(0)
    await isAt('Final dough', 'Mix')
  })
})

import { furnished } from '../../components/base/after-paint'
import type { EditRequest, Wish } from '../../components/base/events'
import { numberStyleOf } from '../../components/base/numbers'
import type { GridPlace, TbGrid } from '../../components/grid/tb-grid'
import '../../components/grid/tb-grid'
import { type Formula, finalDoughOf, type Hold } from '../../src/dough/document/formula'
import { emptyWorkbook } from '../../src/dough/document/workbook'
import { Refusal } from '../../src/dough/edits/edits'
import type { FormulaSheet } from '../../src/dough/formula-sheet'
import { openFormula } from '../../src/dough/formula-sheet'
import { History } from '../../src/storage/index'
import { ok, waitUntil } from '../assert'
import { formulaOf } from '../dough/notation'
import { dressPage } from './mount'

export const millWheat = `
  Levain:
    Ripe starter = 40 g
    Bread flour = 100 g
    Water = 80 g
  Final dough:
    Bread flour = 82%
    Wholemeal spelt = 18%
    Water = 69%
    Salt = 2.1%
    Levain = 210 g`

/** A grid between two buttons, with the least of an app around it: it makes the edits and takes them back. */
export interface Desk {
  readonly grid: TbGrid
  readonly sheet: FormulaSheet
  readonly done: string[] // labels of the edits made
  readonly said: string[]
  readonly wishes: Wish[]
}

let page: HTMLElement | undefined

/** A formula with holds, each with the ingredient of the final dough that gives: `['trueHydration', 0.75, 'Water']`. */
export const held =
  (...holds: readonly [Hold['reading'], number, string][]) =>
  (formula: Formula): Formula => ({
    ...formula,
    holds: holds.map(([reading, value, gives]) => ({
      reading,
      value,
      line: finalDoughOf(formula).lines.find(l => l.ingredient === gives)!.id,
    })),
  })

/** Six pieces of 900 g, a fiftieth lost in mixing, 50 g of the first stage kept back. */
export const sixLoaves = (formula: Formula): Formula => ({
  ...formula,
  batch: { make: 'pieces', pieces: [{ count: 6, weight: 900 }], loss: 0.02 },
  stages: formula.stages.map((s, i) => (i === 0 ? { ...s, keepBack: 50 } : s)),
})

/** Puts a grid on the page, in the place of the one before. */
export async function setUp(
  text = millWheat,
  options: {
    readonly readOnly?: boolean
    readonly language?: string
    readonly notes?: readonly string[]
    readonly change?: (formula: Formula) => Formula // as it stands when the grid is put up
    readonly atOnce?: boolean // before all that comes late is there
  } = {},
): Promise<Desk> {
  dressPage()
  page?.remove()
  const { notes = [] } = options // `Water: cold`, for lines of the final dough
  const bare = formulaOf(text)
  const noteOn = (ingredient: string) =>
    notes.find(n => n.startsWith(`${ingredient}: `))?.slice(ingredient.length + 2)
  const noted = bare.stages.map(s => ({
    ...s,
    lines: s.lines.map(l => ({ ...l, note: noteOn(l.ingredient) ?? '' })),
  }))
  const { change = same => same } = options
  const formula = change({ ...bare, name: 'Mill wheat', stages: noted })
  const sheet = openFormula(formula)
  const history = new History<GridPlace>({ ...emptyWorkbook, formulas: [formula] })
  const grid = document.createElement('tb-grid')
  const [done, said, wishes]: [string[], string[], Wish[]] = [[], [], []]
  history.subscribe(event => {
    grid.touched = sheet.update(event.workbook.formulas[0]!)
    grid.version++
    if (event.way === 'do') done.push(event.transaction.label)
    else if (event.place) grid.goTo(event.place)
  })
  grid.addEventListener('tb-edit', event => {
    const request = (event as CustomEvent<EditRequest>).detail
    try {
      const made = request.edit(history.workbook)
      if (made) history.apply(made, request.place as GridPlace)
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      request.refusal = error.message
    }
  })
  grid.addEventListener('tb-say', event => said.push((event as CustomEvent<string>).detail))
  grid.addEventListener('tb-wish', event => {
    const wanted = (event as CustomEvent<Wish>).detail
    wishes.push(wanted)
    if (wanted.want === 'undo') history.undo()
    if (wanted.want === 'redo') history.redo()
  })
  grid.sheet = sheet
  grid.numbers = numberStyleOf(options.language ?? 'en')
  grid.readOnly = options.readOnly ?? false
  grid.names = sheet.larder.ingredients.map(i => i.name)
  page = document.createElement('main')
  page.style.padding = '16px'
  page.append(button('before'), grid, button('after'))
  document.body.append(page)
  await grid.updateComplete
  await waitUntil(() => grid.narrow === grid.clientWidth < 600, 'the grid has measured itself')
  if (!options.atOnce) await furnished()
  await grid.updateComplete
  return { grid, sheet, done, said, wishes }
}

function button(id: string): HTMLButtonElement {
  const made = document.createElement('button')
  made.id = id
  made.textContent = id
  return made
}

/** The cell of a line or of another row by its first words: `Water`, `Add an ingredient`, `Sum`; of the second `Water`: `Water 2`. */
export function cell(grid: TbGrid, row: string, column = 'ingredient'): HTMLElement {
  const [, words, nth] = /^(.*?)(?: (\d))?$/.exec(row)!
  const rows = [...grid.shadowRoot!.querySelectorAll<HTMLElement>('tr[data-row]')].filter(r =>
    r.querySelector('.held, th')!.textContent!.replace(/^\+ /, '').trim().startsWith(words!),
  )
  const found = rows[Number(nth ?? 1) - 1]?.querySelector<HTMLElement>(`[data-column=${column}]`)
  ok(found, `there is a cell ${row} / ${column}`)
  return found
}

/** What a cell shows, in one line. */
export const shows = (at: HTMLElement): string =>
  [...at.childNodes]
    .filter(n => !(n instanceof Element && n.matches('.how, .editor')))
    .map(n => (n instanceof Comment ? '' : n.textContent))
    .join('')
    .replace(/ typed$/, '')
    .replace(/\s+/g, ' ')
    .trim()

/** Where the focus is, `row / column`; with `*` while its editor is open. */
export function focusIn(grid: TbGrid): string {
  const at = grid.shadowRoot!.activeElement
  const column = at?.closest<HTMLElement>('[data-column]')
  const row = at?.closest('tr')
  if (!at || !column || !row) return document.activeElement?.id ?? ''
  const name = (row.querySelector('.name') ?? row.querySelector('.held') ?? row.querySelector('th'))!
    .textContent!
  const words = name.replace(/^\+ /, '').replace(/\s+/g, ' ').trim()
  return `${words} / ${column.dataset.column}${at.matches('.field') ? '*' : ''}`
}

/** The amounts of a stage as kept: `Water 80 g; Salt`. */
export const amounts = (sheet: FormulaSheet, stage: number): string =>
  sheet.formula.stages[stage]!.lines.map(l => `${l.ingredient} ${l.amount}`.trim()).join('; ')

/** Puts the focus on a cell as a click would, without one. */
export async function goTo(grid: TbGrid, row: string, column = 'ingredient'): Promise<void> {
  const at = cell(grid, row, column)
  ;(at.querySelector<HTMLElement>('.dots') ?? at).focus()
  await grid.updateComplete
}

export const field = (grid: TbGrid): HTMLInputElement | null =>
  grid.shadowRoot!.querySelector<HTMLInputElement>('.field')

export const middleOf = (element: Element): [number, number] => {
  const { left, top, width, height } = element.getBoundingClientRect()
  return [Math.round(left + width / 2), Math.round(top + height / 2)]
}

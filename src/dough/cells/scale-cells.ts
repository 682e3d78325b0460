import { isWeightReading } from '../document/words.js'
import { cellOf } from '../outline/names.js'
import { counts, type Outline } from '../outline/outline.js'
import type { CellWriter, Owner } from './cell-writer.js'
import { writeJottings } from './jotting-cells.js'

/**
 * The formula scaled, its dough's weight being held while every line gives in proportion: each weight as it is written
 * has one beside it, so many times as much. What is written, and all that is worked out from it, stays as it is.
 */
export function writeScale(out: CellWriter, outline: Outline): void {
  const { final, stages } = outline
  const doughWeight = outline.doughWeight!
  const whole = [cellOf.stageWeight(final)]
  out.compute(cellOf.scale, 'times as written', `held at ${doughWeight}`, whole, ([w]) => doughWeight / w!)
  const write = (cell: string) => {
    const { words } = out.cells.get(cell)!
    out.compute(cellOf.scaled(cell), words, 'scaled', [cell, cellOf.scale], ([w, k]) => w! * k!)
  }
  const scaled = (cell: string, owner: Owner) => out.belonging(owner, () => write(cell))
  for (const stage of stages) {
    const { id } = stage.stage
    for (const line of stage.lines) scaled(cellOf.weight(line), { of: 'line', id: line.line.id })
    const cells = [cellOf.base, cellOf.stageWeight, cellOf.taken].map(cell => cell(stage))
    for (const count of counts) cells.push(cellOf.count(stage, count))
    for (const cell of cells) scaled(cell, { of: 'stage', id })
  }
  const { id } = final.stage
  for (const of of ['flour', 'water', 'levain']) scaled(cellOf.lines(final, of), { of: 'stage', id })
  for (const name of ['totalFlour', 'totalWater', 'doughWeight'].filter(isWeightReading))
    scaled(cellOf.reading(name), { of: 'reading', id: name })
  writeJottings(out, outline, (cell, taken) => {
    const name = cellOf.scaled(cell)
    if (taken === 'lines' || taken === 'far lines') out.common(name, () => write(cell)) // several of one name
    return taken === undefined || taken === 'jotting' || out.cells.has(name) ? name : cell
  })
}

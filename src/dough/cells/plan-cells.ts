import { LinearParts } from '../outline/linear-parts.js'
import type { LinePlan, Outline, StagePlan } from '../outline/outline.js'
import type { Revision } from '../outline/revise.js'
import type { Split } from '../outline/split.js'
import { takingAll } from '../outline/taking-all.js'
import { writeTimes } from './batch-cells.js'
import { CellWriter, type Definition, type Owner, type Part } from './cell-writer.js'
import { writeJottings } from './jotting-cells.js'
import { LineCells } from './line-cells.js'
import { writeHolds, writeScale } from './rare-cells.js'
import { writeFlourWeight, writeReadings } from './reading-cells.js'
import { StageCells } from './stage-cells.js'

/** What is to be done to a graph so that its cells are defined as they are planned. */
export interface CellEdits {
  readonly planned: number // cells that were written down to find that out
  readonly puts: ReadonlyMap<string, Definition>
  readonly gone: ReadonlyMap<string, Definition> // as they were
}

/** The cells that work a formula out, by name. They stay the same objects for as long as they are defined alike. */
export class CellPlan {
  readonly #out = new CellWriter()
  readonly #outline: Outline
  readonly #parts: LinearParts
  readonly #lines: LineCells
  readonly #stages: StageCells

  constructor(outline: Outline) {
    this.#outline = outline
    this.#parts = new LinearParts(outline)
    this.#lines = new LineCells(this.#out, outline, this.splits)
    this.#stages = new StageCells(this.#out, outline, this.splits, this.#lines)
    for (const stage of outline.stages) {
      for (const line of stage.lines) this.#write(line)
      this.#write(stage)
    }
    for (const part of ['holds', 'flour weight', 'readings', 'scale', 'batch', 'jottings'] as const)
      this.#write(part)
  }

  get cells(): ReadonlyMap<string, Definition> {
    return this.#out.cells
  }

  get splits(): ReadonlyMap<LinePlan, Split> {
    return this.#parts.splits
  }

  /** Whether a stage's base is not set by its own lines. */
  isFree(stage: StagePlan): boolean {
    return this.#stages.isFree(stage)
  }

  /** Whether parts of it cannot be planned by themselves: ids that stand twice. */
  get isTangled(): boolean {
    return this.#out.isTangled
  }

  /** What makes the cells of `former` those of this plan. */
  after(former: CellPlan | undefined): CellEdits {
    const edits = difference(former?.cells ?? new Map(), this.cells)
    return { planned: this.cells.size, ...edits }
  }

  /** Plans anew what a revision of the outline can have touched, and no more. */
  revised({ amounts, holds, flourWeight, batch }: Revision): CellEdits {
    const parts = new Set<Part>()
    const { moved, reshaped } = this.#parts.revised(amounts)
    for (const line of amounts) parts.add(line)
    for (const line of moved) parts.add(line)
    const hanging = takingAll?.hanging(this.#outline, { amounts, stages: reshaped, losses: batch })
    for (const line of hanging ?? []) parts.add(line)
    for (const stage of reshaped) {
      parts.add(stage)
      if (stage.isFinal) parts.add('holds')
    }
    if (holds) parts.add('holds').add('scale')
    if (flourWeight) parts.add('flour weight')
    if (batch) parts.add('batch')
    return this.#rewrite(parts)
  }

  #rewrite(parts: ReadonlySet<Part>): CellEdits {
    const out = this.#out
    const common = out.namesOf('common').length
    const before = new Map([...parts].flatMap(part => [...out.take(part)]))
    for (const part of parts) this.#write(part)
    const names = [...parts].flatMap(part => out.namesOf(part)).concat(out.namesOf('common').slice(common))
    const edits = difference(before, new Map(names.map(name => [name, out.cells.get(name)!])))
    return { planned: names.length, ...edits }
  }

  #write(part: Part): void {
    const outline = this.#outline
    this.#out.part(part, ownerOf(part), () => {
      if (typeof part === 'object') return 'line' in part ? this.#lines.write(part) : this.#stages.write(part)
      if (part === 'holds') return writeHolds(this.#out, outline, this.#stages, this.#lines)
      if (part === 'flour weight') return writeFlourWeight(this.#out, outline)
      if (part === 'readings') return writeReadings(this.#out, outline)
      if (part === 'batch') return writeTimes(this.#out, outline)
      if (part === 'scale') return writeScale(this.#out, outline)
      if (part === 'jottings') return writeJottings(this.#out, outline)
    })
  }
}

const ownerOf = (part: Part): Owner | undefined =>
  typeof part === 'string'
    ? undefined
    : 'line' in part
      ? { of: 'line', id: part.line.id }
      : { of: 'stage', id: part.stage.id }

function difference(
  before: ReadonlyMap<string, Definition>,
  now: ReadonlyMap<string, Definition>,
): Pick<CellEdits, 'puts' | 'gone'> {
  const puts = new Map<string, Definition>()
  const gone = new Map<string, Definition>()
  for (const [name, definition] of before) if (!now.has(name)) gone.set(name, definition)
  for (const [name, definition] of now)
    if (before.get(name)?.key !== definition.key) puts.set(name, definition)
  return { puts, gone }
}

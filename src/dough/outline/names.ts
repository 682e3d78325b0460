import { nameFor } from '../../engine/index.js'
import { allOfIt } from '../amounts/all-of-it.js'
import { readingsByName } from '../amounts/jottings.js'
import { gramsPerMeasure } from '../amounts/measures.js'
import type { Measure } from '../lexicon/units.js'
import { weightUnits } from '../lexicon/units.js'
import type { Meant } from './meant.js'
import type { Count, Counted, LinePlan, Outline, StagePlan } from './outline.js'
import { takingAll } from './taking-all.js'
import { type OutlineDiagnostic, outlineProblem } from './words.js'

/** Names of cells, made of ids, so that renaming an ingredient or a stage moves no cell. */
export const cellOf = {
  weight: (line: LinePlan) => `${line.line.id}.weight`,
  asTyped: (line: LinePlan) => `${line.line.id}.weight as typed`, // before it is seen to be above nothing
  fixed: (line: LinePlan) => `${line.line.id}.fixed`, // grams of it that do not depend on the base
  slope: (line: LinePlan) => `${line.line.id}.slope`, // grams of it a gram of base
  by: (line: LinePlan, giving: LinePlan) => `${line.line.id}.by ${giving.line.id}`, // grams of it a gram of a line that gives
  wholeDough: (line: LinePlan) => `${line.line.id}.whole dough`,
  base: (stage: StagePlan) => `${stage.stage.id}.base`,
  stageWeight: (stage: StagePlan) => `${stage.stage.id}.weight`,
  perBase: (stage: StagePlan) => `${stage.stage.id}.weight a gram of base`,
  taken: (stage: StagePlan) => `${stage.stage.id}.taken`,
  carried: (stage: StagePlan) => `${stage.stage.id}.carried`, // how much of it as written ends in the dough, fraction of 1
  count: (stage: StagePlan, count: Counted) => `${stage.stage.id}.${count}`,
  share: (stage: StagePlan, count: Counted) => `${stage.stage.id}.share of ${count}`,
  named: (stage: StagePlan, name: string) => `${stage.stage.id}.all ${name}`, // two lines of one name: their sum
  lines: (stage: StagePlan, of: string) => `${stage.stage.id}.${of} lines`,
  batch: (line: LinePlan) => `${line.line.id}.batch`, // grams of it in the batch
  build: (stage: StagePlan) => `${stage.stage.id}.build`, // grams made of it in the batch
  needed: (stage: StagePlan) => `${stage.stage.id}.needed`, // grams the batch takes of it
  times: (stage: StagePlan) => `${stage.stage.id}.times`, // how many times the stage as written is made
  reading: (name: string) => `reading.${name}`,
  jotting: (name: string) => `jotting.${name}`,
  flourWeight: 'flour weight',
  scale: 'scale', // how many times as much as is written, where the dough's weight is held in proportion
  scaled: (cell: string) => `${cell}, scaled`, // a weight so many times
} as const

const totals: ReadonlyMap<string, Count> = new Map([
  ['flour', 'flour'],
  ['water', 'water'],
  ['salt', 'salt'],
  ['total_flour', 'flour'],
  ['total_water', 'water'],
  ['total_salt', 'salt'],
])

/** The names by which a calculation can speak of things, each once: those of the dough first, or of the stage it stands in. */
export const namesToUse = (outline: Outline): string[] => [
  ...new Set([...namesIn(outline.final, outline), ...namesElsewhere(outline)]),
]

const linesOf = (stage: StagePlan): string[] =>
  stage.lines.filter(l => l.line.ingredient).map(l => nameFor(l.line.ingredient))

/** The names that stand in a stage for something of it or of the whole formula. */
export const namesIn = (stage: StagePlan, { jottings }: Outline): string[] => [
  ...linesOf(stage),
  ...jottings.keys(),
  ...readingsByName.keys(),
  'flour',
  'water',
  'salt',
]

/** The names of what is in earlier stages, each after its stage's. */
export const namesElsewhere = ({ final, stages }: Outline): string[] =>
  stages
    .filter(s => s !== final)
    .flatMap(s =>
      ['weight', ...linesOf(s), ...totals.keys()]
        .filter(name => !name.startsWith('total_'))
        .map(name => `${nameFor(s.stage.name)}.${name}`),
    )

const called = new WeakMap<StagePlan, ReadonlyMap<string, readonly LinePlan[]>>()

/** The lines of a stage that calculations call by a name. */
export function linesCalled(name: string, stage: StagePlan): readonly LinePlan[] {
  let lines = called.get(stage)
  if (!lines) {
    const found = new Map<string, LinePlan[]>()
    for (const line of stage.lines) {
      if (!line.line.ingredient) continue
      const its = nameFor(line.line.ingredient)
      const before = found.get(its)
      if (before) before.push(line)
      else found.set(its, [line])
    }
    lines = found
    called.set(stage, lines)
  }
  return lines.get(name) ?? []
}

/** A name after a stage's: one of its lines, else one of its totals. */
function inStage(stage: StagePlan, name: string): Meant | undefined {
  const lines = linesCalled(name, stage)
  if (lines.length) return { kind: 'far lines', lines, stage }
  const count = totals.get(name)
  if (count) return { kind: 'count', count, stage }
  if (name === 'weight') return { kind: 'stage weight', stage }
  if (name === 'base') return { kind: 'stage base', stage }
  return undefined
}

const unknown = (diagnostic: OutlineDiagnostic): Meant => ({
  kind: 'unknown',
  problem: outlineProblem(diagnostic),
})

function unitOf(line: LinePlan, unit: string): Meant {
  if (Object.hasOwn(weightUnits, unit))
    return { kind: 'unit', grams: weightUnits[unit as keyof typeof weightUnits], name: `unit ${unit}` }
  const { ingredient } = line
  const grams = ingredient && gramsPerMeasure(ingredient, unit as Measure)
  if (ingredient && grams !== undefined) return { kind: 'unit', grams, name: `${unit} of ${ingredient.id}` }
  const code = line.source ? 'stageInUnits' : ingredient ? 'unitNotInLarder' : 'ingredientNotInLarder'
  return unknown({ code, unit, ingredient: line.line.ingredient })
}

/** What else takes of the stage that a line takes all of. */
export const otherTakers = (line: LinePlan): LinePlan[] =>
  line.source!.takenBy.filter(other => other !== line)

/** What `name`, as it stands in the amount of `line`, stands for. A line of the stage goes before a total of it. */
export function meaningOf(name: string, line: LinePlan, outline: Outline): Meant {
  if (name === 'base') return { kind: 'base' }
  if (name.startsWith('unit:')) return unitOf(line, name.slice('unit:'.length))
  const { stage } = line
  if (name === allOfIt && takingAll) return takingAll.meant(line)
  if (outline.jottings.has(name)) return { kind: 'jotting', name }
  if (!name.includes('.')) {
    const own = inStage(stage, name)
    if (own?.kind === 'far lines') return { kind: 'lines', lines: own.lines }
    if (own) return own
    return inFormula(name, outline) ?? unknown({ code: 'unknownInAmount', name, stage: stage.stage.name })
  }
  return inFarStage(name, outline)
}

/** A jotting or a reading of the formula. */
function inFormula(name: string, outline: Outline): Meant | undefined {
  if (outline.jottings.has(name)) return { kind: 'jotting', name }
  const reading = readingsByName.get(name)
  return reading && { kind: 'reading', name: reading }
}

/** A dotted name: a stage's, and one of its lines or totals. */
function inFarStage(name: string, outline: Outline): Meant {
  const dot = name.indexOf('.')
  const [head, tail] = [name.slice(0, dot), name.slice(dot + 1)]
  const there = outline.stages.find(s => nameFor(s.stage.name) === head)
  if (!there) return unknown({ code: 'unknownStage', name: head })
  return inStage(there, tail) ?? unknown({ code: 'unknownInStage', name: tail, stage: there.stage.name })
}

/** What `name` stands for in a jotting: another jotting, a reading, or what a line of the final dough could say. */
export function meaningInJotting(name: string, outline: Outline): Meant {
  if (name.startsWith('unit:')) {
    const unit = name.slice('unit:'.length)
    if (Object.hasOwn(weightUnits, unit))
      return { kind: 'unit', grams: weightUnits[unit as keyof typeof weightUnits], name: `unit ${unit}` }
    return unknown({ code: 'unitOfNothing', unit })
  }
  if (name.includes('.')) return inFarStage(name, outline)
  return inFormula(name, outline) ?? inStage(outline.final, name) ?? unknown({ code: 'unknownName', name })
}

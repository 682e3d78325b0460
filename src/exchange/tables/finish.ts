import { type Formula, type Line, nameKey, usualFlourWeight } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { unnamed } from '../csv/columns.js'
import { quoted } from '../csv/row.js'
import { distinct } from '../values/distinct.js'
import { asPercentages, choose } from './both.js'
import {
  type ForeignFormula,
  type ForeignLine,
  type ForeignStage,
  type Told,
  wordsOf,
} from './table-draft.js'
import { checkTotals } from './totals.js'
import type { RowRead, TotalCheck } from './types.js'
import { bracketed, isFinalDough, isStageName } from './words.js'

/** Names the stages that the table leaves without a name, and has the final dough come last. */
function orderStages(formula: ForeignFormula, told: Told): ForeignStage {
  const { stages } = formula
  if (stages.length === 0) stages.push(formula.begin(unnamed.stage, true))
  const named = stages.filter(stage => isFinalDough(stage.name))
  const final =
    named.at(-1) ??
    (stages.at(-1)!.isNamed ? (stages.find(s => !s.isNamed) ?? takesOthers(stages)) : stages.at(-1)!)
  nameStages(formula, final, told)
  if (final !== stages.at(-1)) {
    stages.splice(stages.indexOf(final), 1)
    stages.push(final)
    told.say(
      'remark',
      final.lines[0]?.row,
      `${final.name} stands before other stages in the table. The final dough comes last here, so it was put there.`,
    )
  }
  return final
}

/** The one stage that takes others and is taken by none, or else the last. */
function takesOthers(stages: readonly ForeignStage[]): ForeignStage {
  const names = new Set(stages.map(stage => nameKey(stage.name)))
  const taken = new Set(stages.flatMap(stage => stage.lines.map(line => nameKey(line.ingredient))))
  const takers = stages.filter(
    ({ name, lines }) => !taken.has(nameKey(name)) && lines.some(line => names.has(nameKey(line.ingredient))),
  )
  return takers.length === 1 ? takers[0]! : stages.at(-1)!
}

function nameStages(formula: ForeignFormula, final: ForeignStage, told: Told): void {
  const nameless = formula.stages.filter(stage => !stage.isNamed)
  if (nameless.includes(final)) final.name = unnamed.stage
  const others = nameless.filter(stage => stage !== final)
  // a line of the final dough that can only be a stage names the one stage that has no name
  const lines = final.lines.filter(
    ({ ingredient, kind }) =>
      (kind === undefined || kind === 'starter') && isStageName(ingredient) && !formula.find(ingredient),
  )
  others.forEach((stage, at) => {
    const only = others.length === 1 && lines.length === 1 ? lines[0]!.ingredient : undefined
    stage.name = only ?? `Stage ${at + 1}`
    told.say(
      'warning',
      stage.lines[0]?.row,
      only
        ? `The lines from row ${stage.lines[0]?.row} on have no heading; ${final.name} takes ${only}, so they were taken as ${only}.`
        : `The lines from row ${stage.lines[0]?.row} on have no heading and were called ${stage.name}. Name them after the line that takes them.`,
    )
  })
  const names = distinct(formula.stages.map(({ name }) => name))
  formula.stages.forEach((stage, at) => {
    stage.name = names[at]!
  })
}

/** Which lines are an earlier stage, by name; in brackets behind it may stand what belongs into a note. */
function findStagesTaken(formula: ForeignFormula, told: Told): void {
  const earlier = new Map<string, ForeignStage>()
  for (const stage of formula.stages) {
    for (const line of stage.lines) {
      line.takes = earlier.get(nameKey(line.ingredient))
      const short = line.takes ? undefined : bracketed(line.ingredient)
      line.takes ??= short && earlier.get(nameKey(short.name))
      if (!line.takes || !short) continue
      line.ingredient = short.name
      line.note = [short.within, line.note].filter(Boolean).join('; ')
    }
    earlier.set(nameKey(stage.name), stage)
  }
  const taken = new Set(formula.lines.map(line => line.takes))
  const left = formula.stages.slice(0, -1).filter(stage => !taken.has(stage) && stage.lines.length > 0)
  // so many stages are no dough; nobody is helped by a comparison of each with all
  const doughs = left.length === 0 || left.length > 50 ? [] : formula.stages
  const free = doughs.map(({ lines }) =>
    lines.filter(line => !line.takes).map(line => ({ line, words: ` ${wordsOf(line.ingredient)} ` })),
  )
  for (const stage of left) {
    const words = ` ${wordsOf(stage.name)} `
    const after = free.slice(doughs.indexOf(stage) + 1).flat()
    const like = after.find(one => one.words.includes(words))?.line
    told.say(
      'warning',
      like?.row ?? stage.lines[0]!.row,
      like
        ? `No line takes ${stage.name}; row ${like.row}, ${quoted(like.ingredient)}, may be meant. If it is, give it the name of the stage.`
        : `No line takes ${stage.name}. Add one of that name to the stage that does.`,
    )
  }
}

export interface Finished {
  readonly formula: Formula
  readonly totals: readonly TotalCheck[]
  readonly reads: readonly RowRead[] // of its lines
}

/** A formula of the table as Tarebook keeps it; tells of what was decided and of totals that differ. */
export function finish(foreign: ForeignFormula, larder: Larder, told: Told): Finished {
  const final = orderStages(foreign, told)
  findStagesTaken(foreign, told)
  asPercentages(foreign, told)
  const { percentIn, flourWeight = usualFlourWeight, remark } = choose(foreign, final, told)
  const reads: RowRead[] = []
  const amountOf = (stage: ForeignStage, { weight, percent }: ForeignLine): string =>
    (percentIn.has(stage) ? (percent ?? weight) : (weight ?? percent))?.text ?? ''
  const stages = foreign.stages.map(stage => ({
    id: stage.id,
    name: stage.name,
    lines: stage.lines.map((line): Line => {
      const { id, ingredient, note, row } = line
      const amount = amountOf(stage, line)
      reads.push({
        row,
        became: 'line',
        formula: foreign.name,
        stage: stage.name,
        ingredient,
        amount,
        ...(note ? { text: note } : {}),
      })
      return { id, ingredient, amount, note }
    }),
  }))
  const totals =
    foreign.totals.length === 0
      ? []
      : checkTotals(foreign, final, baseFinder(foreign, final, flourWeight), larder)
  const differing = totals.filter(({ verdict }) => verdict === 'differs')
  for (const { row, sentence } of differing)
    told.say('warning', row, sentence, { formula: foreign.id }, 'totalDiffers')
  if (remark) {
    const { row, says, agreement, more } = remark
    told.say('remark', row, `${says}${differing.length > 0 ? '' : agreement}.`)
    if (more) told.say('remark', row, more)
  }
  const formula: Formula = {
    id: foreign.id,
    name: foreign.name,
    note: foreign.notes.join('\n'),
    flourWeight,
    stages,
    meanings: [],
    keptSettings: [],
  }
  return { formula, totals, reads }
}

/** Grams of 100 % of a line's stage: its flours' weight, or the formula's own where the final dough is all percentages. */
function baseFinder(
  foreign: ForeignFormula,
  final: ForeignStage,
  flourWeight: number,
): (line: ForeignLine) => number | undefined {
  const bases = new Map<ForeignLine, number | undefined>()
  for (const stage of foreign.stages) {
    const flours = stage.lines.filter(line => line.kind === 'flour')
    const weights = flours.map(line => line.grams)
    const isWeighed = flours.length > 0 && weights.every(weight => weight !== undefined)
    const isPercent =
      stage === final && flours.length > 0 && flours.every(line => !line.weight && line.percent)
    const base = isWeighed
      ? weights.reduce((sum, weight) => sum! + weight!, 0)
      : isPercent
        ? flourWeight
        : undefined
    for (const line of stage.lines) bases.set(line, base)
  }
  return line => bases.get(line)
}

import { type Formula, type Line, newId, usualFlourWeight } from '../../dough/document/formula.js'
import { tidy, unconfirmedNote } from '../../dough/document/words.js'
import { unnamed } from '../csv/columns.js'
import type { Quantity } from '../values/amount-cells.js'
import { distinct } from '../values/distinct.js'
import { EarlierStages, finalAmong, isForDough } from '../values/earlier-stages.js'
import { headingName, isStageName } from '../values/labels.js'
import { sumOf } from '../values/written-weights.js'
import { checkTotals, choose } from './check.js'
import type { DraftFormula, DraftLine, DraftStage, Told } from './draft.js'
import type { Names } from './row-features.js'
import type { RowRead } from './types.js'
import type { Reason } from './words.js'

/** Names the stages that the table leaves without a name, and has the final dough come last. */
function orderStages(formula: DraftFormula, told: Told): DraftStage {
  const { stages } = formula
  const final = finalAmong(stages)!
  nameStages(formula, final, told)
  if (final !== stages.at(-1)) {
    stages.splice(stages.indexOf(final), 1)
    stages.push(final)
    const row = final.lines[0]?.row
    told.say({ code: 'finalDoughLast', name: final.name, ...(row === undefined ? {} : { row }) })
  }
  return final
}

function nameStages(formula: DraftFormula, final: DraftStage, told: Told): void {
  if (!final.isNamed) final.name = unnamed.stage
  const nameless = formula.stages.filter(stage => !stage.isNamed && stage !== final)
  // a line of the final dough that can only be a stage names the one stage that has no name
  const lines = final.lines.filter(
    ({ ingredient, kind }) =>
      (kind === undefined || kind === 'starter') && isStageName(ingredient) && !formula.find(ingredient),
  )
  const taker = nameless.length === 1 && lines.length === 1 ? lines[0]!.ingredient : undefined
  for (const [at, stage] of nameless.entries()) {
    stage.name = taker ?? `Stage ${at + 1}`
    const of = { row: stage.lines[0]!.row, name: stage.name }
    if (taker) told.say({ code: 'namedByItsTaker', ...of, final: final.name })
    else told.say({ code: 'stageWithoutAName', ...of })
  }
  const names = distinct(formula.stages.map(({ name }) => name))
  for (const [at, stage] of formula.stages.entries()) stage.name = names[at]!
}

/** Which lines are an earlier stage; what is made for the dough and no line takes goes into it. */
function takeStages({ stages }: DraftFormula, told: Told): void {
  const earlier = new EarlierStages<DraftLine, DraftStage>(stages, line => ({
    ...line,
    ingredient: headingName(line.ingredient).name,
  }))
  const taken = new Set<DraftStage>()
  const take = (line: DraftLine, stage: DraftStage) => {
    const { name, remark } = headingName(line.ingredient)
    line.note = [earlier.besides(name, stage), remark, line.note].filter(Boolean).join('; ')
    line.ingredient = stage.name
    line.takes = stage
    taken.add(stage)
    const { grams } = stage
    if (!line.lacksAmount || grams === undefined) return
    line.weight = quantityOf(grams)
    told.say({ code: 'wholeTaken', row: line.row, name: stage.name, grams })
  }
  earlier.each((line, source) => source && take(line, source))
  const final = stages.at(-1)!
  const isLeft = (stage: DraftStage) => !taken.has(stage) && stage.lines.length > 0 && stage.kind !== 'other'
  for (const { stage, like } of earlier.left(isLeft)) {
    const { name, grams } = stage
    const { row } = stage.lines[0]!
    if (like) {
      told.say({ code: 'takenAs', row: like.row, like: like.ingredient, name })
      take(like, stage)
    } else if (isForDough(stage) && grams !== undefined) {
      const of = { weight: quantityOf(grams), percent: undefined, kind: undefined, grams, takes: stage }
      final.lines.unshift({ id: newId(), row, ingredient: name, note: '', isAdded: true, ...of })
      told.say({ code: 'noLineTakes', row, name, final: final.name, grams })
    } else told.say({ code: 'notTaken', name, row })
  }
  for (const { row, ingredient: name, lacksAmount, weight } of stages.flatMap(stage => stage.lines))
    if (lacksAmount && !weight) told.say({ code: 'withoutAnAmount', row, name })
}

const quantityOf = (grams: number): Quantity => {
  const value = Number(grams.toFixed(2))
  return { is: 'quantity', text: `${value} g`, value, unit: 'g', grams: value, step: 0.01, bare: false }
}

/** Shares of 1 where percentages are meant, as programs write them: flours that add to 1, and no sign of per cent. */
function asPercentages({ stages }: DraftFormula, told: Told): void {
  for (const { name, lines, flours } of stages) {
    const shares = lines.filter(line => line.percent !== undefined)
    const sum = sumOf(flours.map(line => line.percent?.percent ?? 0)) ?? 0
    if (!shares.every(line => line.percent!.bare) || Math.abs(sum - 0.01) > 1e-5) continue
    for (const line of shares) {
      const { percent = 0, step, ...rest } = line.percent!
      const share = tidy(percent * 100)
      line.percent = { ...rest, text: `${tidy(share * 100)}%`, percent: share, step: step * 100 }
    }
    told.say({ code: 'sharesOfOne', name: name || 'the dough', row: shares[0]!.row })
  }
}

/** What a row gives that was read as the likeliest of what it may mean; by its row. */
function doubtsIn({ problems }: Told): ReadonlyMap<number, string> {
  const doubts = new Map<number, string>()
  for (const problem of problems) {
    const told = problem as typeof problem & Reason
    const { row } = problem.where
    if (row === undefined) continue
    if (told.code === 'doubtfulSign' || told.code === 'wholeAndPart') doubts.set(row, told.typed)
    else if (told.code === 'takenAs') doubts.set(row, told.like)
    else if (told.code === 'readAsCounted') doubts.set(row, String(told.pieces))
    else if (told.code === 'twoWeights') doubts.set(row, `${told.first}, ${told.other}`)
  }
  return doubts
}

/** A formula of the table as Tarebook keeps it, with its totals and what its lines were read as; tells of what was decided and of totals that differ. */
export function finish(draft: DraftFormula, names: Names, told: Told) {
  const final = orderStages(draft, told)
  takeStages(draft, told)
  asPercentages(draft, told)
  const doubts = doubtsIn(told)
  const { percentIn, flourWeight = usualFlourWeight, tell } = choose(draft, final, told)
  const reads: RowRead[] = []
  const stages = draft.stages.map(stage => ({
    id: stage.id,
    name: stage.name,
    lines: stage.lines.map(({ id, ingredient, note, row, weight, percent, isAdded }): Line => {
      const amount = (stage === percentIn ? (percent ?? weight) : (weight ?? percent))?.text ?? ''
      const of = { formula: draft.name, stage: stage.name, ingredient, amount }
      if (!isAdded) reads.push({ row, became: 'line', ...of, ...(note ? { text: note } : {}) })
      const doubt = isAdded ? '' : doubts.get(row)
      return { id, ingredient, amount, note: doubt === undefined ? note : unconfirmedNote(note, doubt) }
    }),
  }))
  const totals = checkTotals(draft, final, flourWeight, names, told)
  tell(totals.every(({ verdict }) => verdict !== 'differs'))
  const { id, name, notes } = draft
  const formula: Formula = {
    ...{ id, name, note: notes.join('\n'), flourWeight, stages },
    ...{ meanings: [], keptSettings: [] },
  }
  return { formula, totals, reads }
}

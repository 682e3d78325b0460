import type { Formula } from '../../document/formula.js'
import { applyChanges, type Change, type Transaction, type Workbook } from '../../document/workbook.js'
import { type FollowBuilds, hasBuilds, useBuilds } from '../following-builds.js'
import { buildIn, changesTo, contentIn, withContent, withCopies } from './copies.js'
import { chainOf, isSameBuild, type StageOf, takenBy } from './kept-builds.js'
import { buildLabels, refuseBuild } from './words.js'

/** The builds of a formula that an edit changed. */
function changedBuilds(formula: Formula, before: Formula | undefined): StageOf[] {
  return formula.stages.flatMap(stage => {
    const was = before?.stages.find(s => s.id === stage.id)
    const of = { formula, stage }
    if (!stage.build || !before || was?.build !== stage.build || was === stage) return []
    return isSameBuild({ formula: before, stage: was }, of) ? [] : [of]
  })
}

/** What a build takes has to be a build as well: it is nowhere else otherwise. */
function checkTaken(of: StageOf): void {
  for (const line of of.stage.lines) {
    const taken = takenBy(of, line)
    if (taken && !taken.build)
      refuseBuild({ code: 'takesWhatIsNone', stage: of.stage.name, taken: taken.name })
  }
}

/** A formula with a build as it is in another. */
function following(formula: Formula, from: StageOf): Formula {
  const own = buildIn(formula, from.stage.build!)
  if (!own || isSameBuild({ formula, stage: own }, from)) return formula
  checkTaken(from)
  const chain = chainOf(from).filter(({ stage }) => stage !== from.stage)
  const with_ = withCopies(formula, formula.stages.indexOf(own), chain, ({ stage }) => stage.name)
  const stage = withContent(own, contentIn(from, with_, own))
  return { ...with_, stages: with_.stages.map(s => (s === own ? stage : s)) }
}

/**
 * The edit with what it brings along: a build that it changes in one formula changes in all that have it. Throws Refusal
 * where they cannot have it so.
 */
const follow: FollowBuilds = (workbook: Workbook, edit: Transaction): Transaction => {
  const ids = new Set(edit.changes.map(c => ('formula' in c ? c.formula : c.of === 'formula' ? c.id : '')))
  const edited = workbook.formulas.filter(f => ids.has(f.id) && hasBuilds(f))
  if (edited.length === 0) return edit
  const after = applyChanges(workbook, edit.changes).workbook.formulas
  const changed = edited.flatMap(before => {
    const now = after.find(f => f.id === before.id)
    return now && now !== before ? changedBuilds(now, before) : []
  })
  const others: Change[] = []
  const reached: string[] = []
  for (const formula of changed.length ? after : []) {
    const now = changed.reduce(
      (one, from) => (from.formula.id === one.id ? one : following(one, from)),
      formula,
    )
    if (now === formula) continue
    others.push(...changesTo(now, formula))
    reached.push(formula.name)
  }
  if (others.length === 0) return edit
  return { label: buildLabels.inOthers(edit.label, reached), changes: [...edit.changes, ...others] }
}
useBuilds(follow)

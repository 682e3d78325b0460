import { madeAlike } from '../../dough/about/made-alike.js'
import type { Day } from '../../dough/document/day.js'
import { type Formula, finalDoughOf, type Stage, sameName } from '../../dough/document/formula.js'
import { sharedKey } from '../course/day-problem.js'

/** A stage of a bread. */
export interface BuildAt {
  readonly bread: string // id
  readonly stage: string // id
}

/** A stage that several breads of a day have alike: it can be made at once for all of them. */
export interface SharedStage {
  readonly key: string // under which a day keeps that it is made together
  readonly name: string
  readonly builds: readonly BuildAt[] // at least two, or one that was alike before; the first one's method is followed
  readonly otherwise: readonly string[] // ids of breads whose stage of that name is like no other
  readonly isTogether: boolean
  readonly sameMethod: boolean
}

const methodText = (stage: Stage): string =>
  (stage.method ?? []).map(({ kind, does, text }) => `${kind} ${does.trim()}: ${text.trim()}`).join('\n')

/** A stage before the final dough, of a bread of the day. */
interface Named {
  readonly bread: string
  readonly formula: Formula
  readonly stage: Stage
}

/** The first of each name of each bread's earlier stages: by that name it is taken. */
function earlierStages(day: Day, formulas: readonly Formula[]): Named[] {
  return day.breads.flatMap(bread => {
    const formula = formulas.find(f => f.id === bread.formula)
    const earlier = formula?.stages.filter(stage => stage !== finalDoughOf(formula)) ?? []
    return earlier
      .filter((s, i) => earlier.findIndex(other => sameName(other.name, s.name)) === i)
      .map(stage => ({ bread: bread.id, formula: formula!, stage }))
  })
}

/** Those of one make-up, each group in the order of the breads. */
function groupsOf(named: readonly Named[]): Named[][] {
  const groups: Named[][] = []
  for (const one of named) {
    const group = groups.find(([first]) =>
      madeAlike(first!.formula, first!.stage.id, one.formula, one.stage.id),
    )
    if (group) group.push(one)
    else groups.push([one])
  }
  return groups
}

/** The stages of a day that can be made together, in the order in which they come; those that no longer can, where they were. */
export function sharedStages(day: Day, formulas: readonly Formula[]): SharedStage[] {
  const all = earlierStages(day, formulas)
  const keys = [...new Set(all.map(({ stage }) => sharedKey(stage.name)))]
  return keys.flatMap((key): SharedStage[] => {
    const groups = groupsOf(all.filter(({ stage }) => sharedKey(stage.name) === key))
    const isTogether = day.together.includes(key)
    const shared = groups.filter(group => group.length > 1)
    const told = shared.length === 0 && isTogether && groups.length > 1 ? groups.slice(0, 1) : shared
    const otherwise = groups.flatMap(group =>
      group.length > 1 || told.includes(group) ? [] : group.map(({ bread }) => bread),
    )
    return told.map(group => ({
      key,
      name: group[0]!.stage.name,
      builds: group.map(({ bread, stage }) => ({ bread, stage: stage.id })),
      otherwise,
      isTogether,
      sameMethod: new Set(group.map(({ stage }) => methodText(stage))).size === 1,
    }))
  })
}

import { type Formula, type Line, nameKey, newId, type Stage, sameName } from '../../document/formula.js'
import { type StageOf, takenBy } from './kept-builds.js'
import { buildNameIn } from './words.js'

/** The stage of a formula that is a build of that name. */
export const buildIn = ({ stages }: Formula, build: string): Stage | undefined =>
  stages.find(s => s.build !== undefined && nameKey(s.build) === nameKey(build))

/** What of a stage all formulas that have it as a build share. */
type Content = Pick<Stage, 'lines'> & Partial<Pick<Stage, 'ferments' | 'loss' | 'method'>>

/**
 * A build's content as it stands in another formula: what it takes is called as it is called there, and lines and steps
 * keep the ids of those of `own`, so that holds and the steps of a day still mean them.
 */
export function contentIn(from: StageOf, formula: Formula, own?: Stage): Content {
  const { lines, ferments, loss, method } = from.stage
  const left = [...(own?.lines ?? [])]
  const idOf = (ingredient: string, at: number): string => {
    const same =
      left.find(l => sameName(l.ingredient, ingredient)) ??
      (own?.lines.length === lines.length ? own.lines[at] : undefined)
    if (!same || !left.includes(same)) return newId()
    left.splice(left.indexOf(same), 1)
    return same.id
  }
  const called = (line: Line): string => {
    const build = takenBy(from, line)?.build
    return (build && buildIn(formula, build)?.name) || line.ingredient
  }
  return {
    lines: lines.map((line, at) => {
      const ingredient = called(line)
      return { ...line, ingredient, id: idOf(ingredient, at) }
    }),
    ...(ferments !== undefined && { ferments }),
    ...(loss !== undefined && { loss }),
    ...(method && { method: method.map((step, at) => ({ ...step, id: own?.method?.[at]?.id ?? newId() })) }),
  }
}

/** The stage with other content; its name and what is kept back of it are its own. */
export function withContent({ id, name, build, keepBack }: Stage, content: Content): Stage {
  return { id, name, ...content, ...(keepBack !== undefined && { keepBack }), ...(build && { build }) }
}

/** A formula with copies of builds, one after the other, before the stage at `index`; those that it has already are left out. */
export function withCopies(
  formula: Formula,
  index: number,
  chain: readonly StageOf[],
  nameOf: (of: StageOf) => string,
): Formula {
  let now = formula
  let at = index
  for (const from of chain) {
    const build = from.stage.build!
    if (buildIn(now, build)) continue
    const wanted = nameOf(from)
    const isTaken = now.stages.some(s => sameName(s.name, wanted))
    const name = isTaken ? buildNameIn(wanted, from.formula.name) : wanted
    const stage: Stage = { id: newId(), name, build, ...contentIn(from, now) }
    now = { ...now, stages: now.stages.toSpliced(at, 0, stage) }
    at += 1
  }
  return now
}

/** The changes that lead from the stages of a formula to those of a later form of it, its holds on lines that are gone let go. */
export function changesTo(now: Formula, before: Formula) {
  const stages = now.stages.flatMap((value, index) => {
    const was = before.stages.find(s => s.id === value.id)
    if (was === value) return []
    return [{ of: 'stage' as const, formula: now.id, id: value.id, value, ...(was ? {} : { index }) }]
  })
  const lines = new Set(now.stages.flatMap(s => s.lines.map(l => l.id)))
  const holds = before.holds?.filter(({ line }) => line === '' || lines.has(line))
  const isLess = holds && holds.length < before.holds!.length
  return isLess ? [...stages, { of: 'fields' as const, formula: now.id, value: { holds } }] : stages
}

import './follow-builds.js'
import { nameFor, parse } from '../../../engine/index.js'
import { readingsByName } from '../../amounts/jottings.js'
import { type Formula, finalDoughOf, nameKey, type Stage, sameName } from '../../document/formula.js'
import type { Change, Transaction, Workbook } from '../../document/workbook.js'
import { unitWords } from '../../lexicon/unit-words.js'
import { formulaIn, type LineAt, lineIn, type StageAt, stageIn } from '../edit-places.js'
import { buildIn, changesTo, withCopies } from './copies.js'
import { buildsOf, chainOf, isSameBuild, type StageOf, takenBy } from './kept-builds.js'
import { type BuildDiagnostic, buildLabels, buildNameIn, refuseBuild } from './words.js'

/** The names that amounts of a stage speak of and that only its formula has: of jottings, readings, stages that it does not take. */
function namesOfItsOwn(of: StageOf): string[] {
  const { lines } = of.stage
  const jottings = new Set(of.formula.jottings?.map(({ name }) => nameFor(name)))
  const own = new Set(lines.map(l => nameFor(l.ingredient)))
  const taken = new Set(lines.filter(l => takenBy(of, l)).map(l => nameFor(l.ingredient)))
  const isElsewhere = (name: string) =>
    jottings.has(name) ||
    (name.includes('.') ? !taken.has(name.split('.')[0]!) : readingsByName.has(name) && !own.has(name))
  const spoken = lines.flatMap(({ amount }) => {
    try {
      return parse(amount, { units: unitWords }).names
    } catch {
      return [] // what it is, is said beneath its line
    }
  })
  return [...new Set(spoken.filter(isElsewhere))]
}

/** Why a stage, with what it takes, cannot be a build; undefined where it can. */
function whyNot(of: StageOf): BuildDiagnostic | undefined {
  for (const one of chainOf(of)) {
    if (one.stage.lines.length === 0) return { code: 'nothingInIt', stage: one.stage.name }
    const names = namesOfItsOwn(one)
    if (names.length) return { code: 'namesOfItsOwn', stage: one.stage.name, names }
  }
  return undefined
}

/** The name under which the workbook keeps a stage: a final dough is called like its formula. */
function nameOfBuild(of: StageOf, formulas: readonly Formula[]): string {
  const { formula, stage } = of
  const wanted = stage === finalDoughOf(formula) ? formula.name : stage.name
  const builds = buildsOf(formulas)
  const isFree = (name: string) => {
    const there = builds.get(nameKey(name))?.[0]
    return !there || isSameBuild(there, of)
  }
  let name = wanted
  for (let tries = 1; !isFree(name); tries++)
    name =
      tries === 1
        ? buildNameIn(stage.name, formula.name)
        : `${buildNameIn(stage.name, formula.name)} ${tries}`
  return name
}

/** The formula with a stage, and all that it takes, kept as builds. */
function withBuilds(of: StageOf, formulas: readonly Formula[]): Formula {
  const why = whyNot(of)
  if (why) refuseBuild(why)
  let now = of.formula
  for (const { stage } of chainOf(of)) {
    if (stage.build) continue
    const build = nameOfBuild({ formula: now, stage: now.stages.find(s => s.id === stage.id)! }, formulas)
    now = { ...now, stages: now.stages.map(s => (s.id === stage.id ? { ...s, build } : s)) }
  }
  return now
}

/** Keeps a stage, and the stages that it takes, as builds of the workbook. Throws Refusal where its amounts need this formula. */
export function keepAsBuild(workbook: Workbook, at: StageAt): Transaction {
  const formula = formulaIn(workbook, at.formula)
  const stage = stageIn(workbook, at)
  const now = withBuilds({ formula, stage }, workbook.formulas)
  return { label: buildLabels.keep(stage.name), changes: changesTo(now, formula) }
}

/** Makes a stage its formula's own again, as it stands. */
export function letBuildGo(workbook: Workbook, at: StageAt): Transaction {
  const { build: _, ...own } = stageIn(workbook, at)
  const value: Stage = own
  return {
    label: buildLabels.letGo(own.name),
    changes: [{ of: 'stage', formula: at.formula, id: at.stage, value }],
  }
}

/** What a line of a formula can take by a name: a build of the workbook, or another formula's dough. */
export function takeable(formulas: readonly Formula[], formula: Formula, name: string): StageOf | undefined {
  const build = buildsOf(formulas)
    .get(nameKey(name))
    ?.find(of => of.formula.id !== formula.id)
  if (build) return build
  const other = formulas.find(f => f.id !== formula.id && sameName(f.name, name))
  return other && { formula: other, stage: finalDoughOf(other) }
}

/** Has a line take a build or another formula's dough: its stages come to stand before the line's own. Throws Refusal. */
export function takeBuild(workbook: Workbook, at: LineAt, from: StageAt): Transaction {
  const formula = formulaIn(workbook, at.formula)
  const stage = stageIn(workbook, at)
  const { ingredient } = lineIn(workbook, at)
  const other = formulaIn(workbook, from.formula)
  const source = { formula: other, stage: stageIn(workbook, from) }
  const inside = chainOf(source).some(({ stage: { build } }) => {
    const here = build && buildIn(formula, build)
    return here && chainOf({ formula, stage: here }).some(one => one.stage === stage)
  })
  if (inside) refuseBuild({ code: 'takesItself', build: ingredient, formula: formula.name })
  const kept = withBuilds(source, workbook.formulas)
  const chain = chainOf({ formula: kept, stage: kept.stages.find(s => s.id === from.stage)! })
  const last = chain.at(-1)!
  const now = withCopies(formula, formula.stages.indexOf(stage), chain, of =>
    of === last ? ingredient.trim() : of.stage.name,
  )
  const called = buildIn(now, last.stage.build!)!.name
  const changes: Change[] = [...changesTo(kept, other), ...changesTo(now, formula)]
  if (!sameName(called, ingredient))
    changes.push({
      of: 'line',
      formula: formula.id,
      stage: stage.id,
      id: at.line,
      value: { ...lineIn(workbook, at), ingredient: called },
    })
  return { label: buildLabels.take(ingredient.trim()), changes }
}

import { type FormulaSheet, type LineFigures, type ReadingName, readingNames } from './figures.js'
import { nameKey, type Stage } from './formula.js'

/** A figure of two formulas; undefined where one has none. */
export interface Pair {
  readonly left: number | undefined
  readonly right: number | undefined
}

export interface LinePair {
  readonly ingredient: string
  readonly only: 'left' | 'right' | undefined // which formula alone has the line
  readonly weight: Pair // grams as written
  readonly percent: Pair // of the stage's base, fraction of 1
}

export interface StagePair {
  readonly name: string
  readonly only: 'left' | 'right' | undefined
  readonly lines: readonly LinePair[]
}

/** Two formulas side by side: stages by name, the final doughs with each other, lines by ingredient. */
export interface Beside {
  readonly readings: readonly ({ readonly name: ReadingName } & Pair)[] // those that one of them has
  readonly stages: readonly StagePair[]
}

/** Right less left; undefined where one is missing or they are the same to twelve digits. */
export function differenceOf({ left, right }: Pair): number | undefined {
  if (left === undefined || right === undefined) return undefined
  const difference = right - left
  return Math.abs(difference) <= 1e-12 * Math.max(Math.abs(left), Math.abs(right)) ? undefined : difference
}

/** Items of two lists with the same key side by side, the first with the first; the left's order, what only the right has last. */
function matched<T>(
  left: readonly T[],
  right: readonly T[],
  key: (item: T) => string,
): [T | undefined, T | undefined][] {
  const rest = [...right]
  const pairs = left.map((l): [T, T | undefined] => {
    const at = rest.findIndex(r => key(r) === key(l))
    return [l, at < 0 ? undefined : rest.splice(at, 1)[0]]
  })
  return [...pairs, ...rest.map((r): [undefined, T] => [undefined, r])]
}

const onlyOne = (l: unknown, r: unknown): 'left' | 'right' | undefined =>
  l && r ? undefined : l ? 'left' : 'right'

/** Sets two formulas beside each other, line by line. */
export function besides(left: FormulaSheet, right: FormulaSheet): Beside {
  const readings = readingNames
    .map(name => ({ name, left: left.reading(name), right: right.reading(name) }))
    .filter(r => (r.left ?? 0) !== 0 || (r.right ?? 0) !== 0)
  const key = (sheet: FormulaSheet) => (stage: Stage) =>
    stage === sheet.formula.stages.at(-1) ? '\n final dough' : nameKey(stage.name)
  const keys = new Map<Stage, string>(
    [left, right].flatMap(s => s.formula.stages.map(stage => [stage, key(s)(stage)] as const)),
  )
  const stages = matched(left.formula.stages, right.formula.stages, stage => keys.get(stage)!).map(
    ([l, r]): StagePair => {
      const lines = matched(l?.lines ?? [], r?.lines ?? [], line => nameKey(line.ingredient))
      return {
        name: (l ?? r)!.name,
        only: onlyOne(l, r),
        lines: lines.map(([a, b]): LinePair => {
          const figures: readonly [LineFigures | undefined, LineFigures | undefined] = [
            a && left.line(a.id),
            b && right.line(b.id),
          ]
          return {
            ingredient: (a ?? b)!.ingredient,
            only: onlyOne(a, b),
            weight: { left: figures[0]?.weight, right: figures[1]?.weight },
            percent: { left: figures[0]?.percent, right: figures[1]?.percent },
          }
        }),
      }
    },
  )
  // The final doughs stand last, as they are mixed.
  const final = stages.findIndex(s => s.name === left.formula.stages.at(-1)!.name && s.only !== 'right')
  return { readings, stages: [...stages.filter((_, i) => i !== final), stages[final]!] }
}

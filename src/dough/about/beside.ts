import { finalDoughOf, type Line, nameKey, type Stage } from '../document/formula.js'
import { type ReadingName, readingNames } from '../document/reading-names.js'
import type { FigureSheet, LineFigures } from '../sheet/figures.js'
import { hasSoaker } from '../sheet/ranges.js'

interface Both<T> {
  readonly left: T
  readonly right: T
}

/** A figure of two formulas; undefined where one has none. */
export type Pair = Both<number | undefined>

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
export function besides(left: FigureSheet, right: FigureSheet): Beside {
  const readings = readingNames
    .map(name => ({ name, left: left.reading(name), right: right.reading(name) }))
    .filter(r => (r.left ?? 0) !== 0 || (r.right ?? 0) !== 0)
    .filter(({ name }) => name !== 'hydrationWithoutSoakers' || [left, right].some(sheet => hasSoaker(sheet)))
  const sides = [left, right].map(sheet => ({ sheet, final: finalDoughOf(sheet.formula) }))
  const [l, r] = sides.map(({ sheet, final }) => sheet.formula.stages.filter(s => s !== final))
  const [leftFinal, rightFinal] = sides.map(({ final }) => final)
  const earlier = matched(l!, r!, stage => nameKey(stage.name))
  // The final doughs stand with each other and last, as they are mixed, whatever they are called.
  const stages = [...earlier, [leftFinal, rightFinal] as const].map(([a, b]): StagePair => {
    const lines = matched(linesOf(left, a), linesOf(right, b), l => l.key)
    return {
      name: (a ?? b)!.name,
      only: onlyOne(a, b),
      lines: lines.map(([one, other]): LinePair => {
        const figures: Both<LineFigures | undefined> = {
          left: one && left.line(one.line.id),
          right: other && right.line(other.line.id),
        }
        return {
          ingredient: (one ?? other)!.line.ingredient,
          only: onlyOne(one, other),
          weight: { left: figures.left?.weight, right: figures.right?.weight },
          percent: { left: figures.left?.percent, right: figures.right?.percent },
        }
      }),
    }
  })
  return { readings, stages }
}

/** The lines of a stage that say something, with what makes two of them the same: a stage's name, else the larder's ingredient. */
function linesOf(sheet: FigureSheet, stage: Stage | undefined): { line: Line; key: string }[] {
  const stages = new Set(sheet.formula.stages.map(s => nameKey(s.name)))
  return (stage?.lines ?? [])
    .filter(line => line.ingredient || line.amount)
    .map(line => {
      const name = nameKey(line.ingredient)
      return { line, key: stages.has(name) ? name : (sheet.larder.find(name)?.id ?? name) }
    })
}

import type { Formula, KeptState } from '../../src/dough/document/formula.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { besideWords } from './words.js'

/** One of the two that stand beside each other: a formula as it is now, or a kept state of it. */
export interface Side {
  readonly key: string // its ids, for a choice in a list
  readonly of: Formula
  readonly state: KeptState | undefined
  readonly formula: Formula // to be worked out
}

const keyOf = (formula: string, state?: string): string => (state ? `${formula} ${state}` : formula)

/** Everything of a workbook that can stand there, by formula: as it is now, then its states, the latest first. */
export function sidesOf({ formulas }: Workbook): readonly (readonly Side[])[] {
  return formulas.map(of => [
    { key: keyOf(of.id), of, state: undefined, formula: of },
    ...[...(of.states ?? [])]
      .reverse()
      .map((state): Side => ({ key: keyOf(of.id, state.id), of, state, formula: state.formula })),
  ])
}

/** What is asked for: ids of formulas, and of a kept state of the left one. */
export interface Asked {
  readonly left?: string
  readonly right?: string
  readonly state?: string
}

/**
 * The keys to begin with. A kept state has its formula as it is now at its right. A formula has the open one
 * there, or else its latest state, or else the next formula on the shelf.
 */
export function firstPair(
  workbook: Workbook,
  asked: Asked,
  open: string | undefined,
): [left: string, right: string] {
  const groups = sidesOf(workbook)
  const left = groups.find(([now]) => now?.of.id === asked.left) ?? groups[0]
  if (!left?.[0]) return ['', '']
  const state = left.find(s => s.state && s.state.id === asked.state)
  if (state) return [state.key, asked.right ?? left[0].key]
  const others = groups.filter(group => group !== left)
  const right =
    groups.find(([now]) => now?.of.id === asked.right)?.[0] ??
    others.find(([now]) => now?.of.id === open)?.[0] ??
    left[1] ??
    others[0]?.[0] ??
    left[0]
  return [left[0].key, right.key]
}

/** `Mill wheat`, `before the new flour`. Beside a state of its own, a formula is `Mill wheat now`. */
export function nameOf(side: Side, other: Side): string {
  if (side.of === other.of) return side.state?.name ?? besideWords.now(side.of.name)
  return side.state ? besideWords.stateOf(side.of.name, side.state.name) : side.of.name
}

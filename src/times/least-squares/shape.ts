import type { Network } from '../network/network.js'
import type { Arc, Spring } from '../problem/constraints.js'

/**
 * What all relaxations of one network share, as flat arrays. Arcs are numbered: those that always hold, then both
 * sides of each choice (`sideOf`), then one stay a body, which ties it to body 0 until something else does.
 */
export interface Shape {
  readonly size: number
  readonly own: number // the first arcs, of spans, holds and the lengths of uses
  readonly always: number // those, and the sides of choices that bounds have decided
  readonly stays: number // the number of the first stay
  readonly from: Int32Array
  readonly to: Int32Array
  readonly limit: Float64Array
  readonly springs: readonly Spring[]
  readonly fixedCost: number
}

/** `choices` are the network's that are still open, `arcs` its arcs with the sides of those that are not. */
export function shapeOf(
  { size, springs, fixedCost, arcs: own }: Network,
  arcs: readonly Arc[],
  choices: readonly (readonly [Arc, Arc])[],
): Shape {
  const stays = Array.from({ length: size }, (_, to): Arc => ({ from: 0, to, limit: 0 }))
  const all = [...arcs, ...choices.flat(), ...stays]
  return {
    size,
    own: own.length,
    always: arcs.length,
    stays: all.length - size,
    from: Int32Array.from(all, arc => arc.from),
    to: Int32Array.from(all, arc => arc.to),
    limit: Float64Array.from(all, arc => arc.limit),
    springs,
    fixedCost,
  }
}

/** The arc of a side (0 or 1) of a choice. */
export const sideOf = (shape: Shape, choice: number, side: number) => shape.always + 2 * choice + side

export const arcOf = ({ from, to, limit }: Shape, arc: number): Arc => ({
  from: from[arc]!,
  to: to[arc]!,
  limit: limit[arc]!,
})

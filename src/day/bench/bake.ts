import type { Formula } from '../../dough/document/formula.js'

/** What is measured of a bake, each with where on the way it is. */
export const figureNames = [
  'flour', // °C
  'water', // °C
  'room', // °C
  'dough', // °C
  'oven', // °C
  'rise', // % by which the dough has grown
  'pH',
  'raw', // g of a piece, before baking
  'baked', // g of a piece, after
] as const
export type FigureName = (typeof figureNames)[number]

/** The scales of a verdict, from 1 to 5; none of them is good or bad. */
export const tasteNames = ['sour', 'open', 'dark', 'high', 'keeps'] as const
export type TasteName = (typeof tasteNames)[number]

/** A moment of a bake, by the name that the plan of its day gives it. Instants: ISO 8601, UTC. */
export interface BakeMoment {
  readonly moment: string
  readonly planned?: string // when it was to be, when the bench began
  readonly at?: string // when it was
  readonly later?: string // it was put off: not before this
}

/** Something that was weighed. */
export interface BakeWeight {
  readonly moment: string // of its step
  readonly line: string // id, of the first of them where a stage is made for several breads
  readonly wanted?: number // grams, as they were to be weighed
  readonly grams?: number // that really went in; left out: not known
}

/** A figure that was measured. */
export interface BakeFigure {
  readonly moment: string // of the step at which it was
  readonly what: FigureName
  readonly value: number
}

/** What a bowl weighs that stands on the scale untared. */
export interface BakeBowl {
  readonly moment: string // of the step at which it is filled
  readonly grams: number
}

/** A timer of the baker's own: a moment at which it rings, and no counter. */
export interface BakeTimer {
  readonly id: string
  readonly name: string
  readonly begun: string // ISO 8601, UTC
  readonly ends: string
}

/** What happened when a formula was baked, and the bench while it is: the formula as it stood, times and weights as they were. */
export interface Bake {
  readonly id: string
  readonly at: string // ISO 8601, UTC: when its bench began, or when it was baked
  readonly name: string
  readonly formula: Formula // as it stood, with its batch
  readonly day?: string // id of the day it was baked on; left out: on none
  readonly bread: string // id that the names of its moments begin with
  readonly zone: string // IANA name
  readonly moments: readonly BakeMoment[]
  readonly weighed: readonly BakeWeight[]
  readonly figures: readonly BakeFigure[]
  readonly timers: readonly BakeTimer[]
  readonly bowls?: readonly BakeBowl[] // left out: the scale was tared
  readonly finished?: string // ISO 8601, UTC
  readonly note: string
  readonly verdict: string // in the baker's own words
  readonly tastes?: Readonly<Partial<Record<TasteName, number>>>
}

/** Minutes since 1970, UTC, of a moment as it is kept. */
export const minutesOf = (iso: string): number => Date.parse(iso) / 60_000

/** The same back, to the second. */
export const isoOf = (minutes: number): string =>
  `${new Date(Math.round(minutes * 60) * 1000).toISOString().slice(0, 19)}Z`

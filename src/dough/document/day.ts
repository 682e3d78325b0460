import type { Batch } from './batch.js'

/** How far a wait of one time may move until the workbook says otherwise, a fraction of 1. */
export const usualLeeway = 0.15

/** A formula baked on a day, and how much of it. */
export interface DayBread {
  readonly id: string
  readonly formula: string // id
  readonly batch: Batch
  readonly ready?: string // `8:30`, where it is not the day's own
  readonly oven?: string // id; left out: the first
}

/** Something that bakes a load at a time. */
export interface Oven {
  readonly id: string
  readonly name: string
  readonly atOnce?: number // pieces, for steps that do not say
  readonly between: number // minutes to recover from one load to the next
  readonly change: number // minutes from one temperature to another
  readonly heating: number // minutes before the first load
}

/** A moment of the day kept at a time: the beginning of a step. */
export interface DayHold {
  readonly moment: string // as the plan names it
  readonly at: string // local date and time, `2026-12-05T06:30`
}

/** What was said or measured of one mixing, °C; what is left out follows. */
export interface DayMix {
  readonly bread: string // id
  readonly stage: string // id
  readonly wanted?: number // of the dough
  readonly rise?: number // that mixing makes
  readonly water?: number // measured: then the dough's temperature follows
  readonly room?: number // while it is mixed; left out: the day's kitchen
  readonly lines?: readonly { readonly line: string; readonly celsius: number }[]
}

/** A date, the formulas baked on it, and what the kitchen is like. Clock times are those of the day's zone. */
export interface Day {
  readonly id: string
  readonly name: string
  readonly date: string // `2026-12-05`: when the bread is to be ready, or where it begins, when it begins
  readonly zone: string // IANA name of the time zone
  readonly breads: readonly DayBread[]
  readonly people?: number // that they were made for, where it was said
  readonly ready?: string // `8:00`; left out: planned forward from `begin`
  readonly begin?: string // `7:00`
  readonly asleep: readonly { readonly from: string; readonly until: string }[] // every night
  readonly bakers: number
  readonly ovens: readonly Oven[] // at least one
  readonly kitchen: number // °C
  readonly fridge: number
  readonly freezer?: number
  readonly tap?: number
  readonly proofer?: number // °C of a warm place of one's own
  readonly together: readonly string[] // keys of stages that several formulas share and that are made together
  readonly holds: readonly DayHold[]
  readonly mixes?: readonly DayMix[]
  readonly note: string
}

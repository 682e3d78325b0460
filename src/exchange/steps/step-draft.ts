import type { Step } from '../../dough/document/formula.js'
import type { SaidLength } from './lengths.js'
import type { Tongue } from './sentences.js'
import type { StepReason } from './words.js'

/** Minutes: from, to. */
export interface Stretch {
  readonly least: number
  readonly most: number
}

/** A step while a method is being read. */
export interface StepDraft {
  readonly row: number
  stage: number
  key: string // of what is done, or '' where that is guessed
  does: string
  kind: Step['kind']
  words: string[] // of the recipe, as they stand
  saysMore: boolean // than the step's own text
  length?: Stretch | undefined
  each?: boolean
  heat?: { readonly text: string; readonly celsius: number } | undefined
  inFridge?: boolean
  folds?: { readonly times: number; readonly minutes: number; readonly every: number }
  atOnce?: number
  adds: string[]
  asTyped?: string // the text of a step that was written as one
  note?: string // where it has one of its own
  reasons: StepReason[]
}

const tidy = (value: number): string => String(Number(value.toFixed(2)))

function timeText(minutes: number, days: string): string {
  if (minutes < 1 || (minutes < 3 && !Number.isInteger(minutes))) return `${tidy(minutes * 60)} s`
  if (minutes >= 2880 && minutes % 1440 === 0) return `${minutes / 1440} ${days}`
  if (minutes < 60 || (minutes < 120 && minutes % 30 !== 0)) return `${tidy(minutes)} min`
  const rest = Math.round(minutes % 60)
  return rest === 0
    ? `${Math.floor(minutes / 60)} h`
    : `${Math.floor(minutes / 60)} h ${String(rest).padStart(2, '0')}`
}

/** A length as a step has it: `30 min`, `1 h 30`, `12–15 h`. */
export function lengthWritten({ least, most }: Stretch, tongue: Tongue): string {
  const days = tongue === 'french' ? 'j' : 'd'
  if (least === most) return timeText(least, days)
  if (most >= 2880 && least % 1440 === 0 && most % 1440 === 0) return `${least / 1440}–${most / 1440} ${days}`
  if (most >= 120 && least % 15 === 0 && most % 15 === 0) return `${tidy(least / 60)}–${tidy(most / 60)} h`
  return `${tidy(least)}–${tidy(most)} min`
}

/** The length of a said time, of one that has figures. */
export const stretchOf = ({ least, most }: SaidLength): Stretch => ({ least, most })

/** The text of a step: its time, then what else matters. */
export function stepText(draft: StepDraft, tongue: Tongue): string {
  if (draft.asTyped !== undefined) return draft.asTyped
  const { length, each, heat, inFridge, folds, atOnce, adds } = draft
  const isFrench = tongue === 'french'
  return [
    length && `${lengthWritten(length, tongue)}${each ? (isFrench ? ' chacune' : ' each') : ''}`,
    heat?.text,
    inFridge && (isFrench ? 'au frigo' : 'in the fridge'),
    folds &&
      `${folds.times} × ${timeText(folds.minutes, 'd')} ${isFrench ? 'toutes les' : 'every'} ${timeText(folds.every, 'd')}`,
    atOnce && `${atOnce} ${isFrench ? 'à la fois' : 'at once'}`,
    adds.length > 0 && `${isFrench ? 'ajoute' : 'adds'} ${adds.join(', ')}`,
  ]
    .filter(Boolean)
    .join(', ')
}

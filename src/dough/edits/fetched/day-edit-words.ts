import { type Sentences, wording } from '../../../engine/index.js'
import { per100 } from '../../document/words.js'
import { Refusal } from '../words.js'

/** Why an edit of a day cannot be. */
export type DayEditDiagnostic =
  | { readonly code: 'dayGone' | 'breadGone' | 'dayWithoutName' }
  | { readonly code: 'formulaNotOnShelf' }

export const dayEditSentences: Sentences<DayEditDiagnostic> = {
  dayGone: 'That day is no longer planned.',
  breadGone: 'That bread is no longer baked on this day.',
  dayWithoutName: 'A day needs a name, such as “Saturday oven”.',
  formulaNotOnShelf: 'That formula is not on the shelf, so it cannot be baked on a day.',
}

const dayEditProblem = wording(dayEditSentences)

export function refuseDay(diagnostic: DayEditDiagnostic): never {
  throw new Refusal(dayEditProblem(diagnostic))
}

/** What each edit of a day is called when it is told and when it is undone. */
export const dayLabels = {
  add: (name: string) => `Plan ${name}`,
  copy: (name: string, date: string) => `Plan ${name} like that of ${date}`,
  rename: (name: string, to: string) => `Rename ${name} to ${to}`,
  change: (name: string) => `Change ${name}`,
  remove: (name: string) => `Remove ${name}`,
  addBread: (bread: string, day: string) => `Bake ${bread} on ${day}`,
  changeBread: (bread: string, day: string) => `Change ${bread} on ${day}`,
  removeBread: (bread: string, day: string) => `Take ${bread} off ${day}`,
  hold: (what: string, clock: string) => `Hold ${what} at ${clock}`,
  release: (what: string) => `Release ${what}`,
  makeTogether: (stage: string) => `Make ${stage} together`,
  makeApart: (stage: string) => `Make ${stage} for each by itself`,
  mix: (stage: string) => `Temperatures of ${stage}`,
  leeway: (part: number) => `Waits move by ${per100(part)}`,
  aBread: 'a bread',
  aMoment: 'a moment',
  aMixing: 'a mixing',
} as const

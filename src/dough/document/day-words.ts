import { type Sentences, wording } from '../../engine/index.js'

/** What a day cannot be. */
export type DayDiagnostic =
  | { readonly code: 'dayDateUnknown' | 'dayZoneUnknown' | 'dayClockUnknown' | 'dayLocalUnknown' }
  | { readonly code: 'dayWithoutOven' | 'ovenTimeNegative' | 'ovenHoldsNothing' }
  | { readonly code: 'dayWithoutBaker' | 'temperatureOutOfRange' | 'riseOutOfRange' }
  | { readonly code: 'leewayOutOfRange' }

export const daySentences: Sentences<DayDiagnostic> = {
  dayDateUnknown: 'A day has a date, such as 2026-12-05.',
  dayZoneUnknown: 'The time zone of a day is one that is known, such as Europe/Paris.',
  dayClockUnknown: 'A time of a day is one on the clock, such as 8:30.',
  dayLocalUnknown: 'A moment is held at a date and a time, such as 2026-12-05T06:30.',
  dayWithoutOven: 'A day has at least one oven.',
  ovenTimeNegative: 'The minutes an oven takes are a number, 0 or more.',
  ovenHoldsNothing: 'An oven holds a number of pieces above 0 at once.',
  dayWithoutBaker: 'There is at least one baker.',
  temperatureOutOfRange: 'A temperature is a number of °C from −50 to 100.',
  riseOutOfRange: 'The rise that mixing makes is a number of °C from 0 to 50.',
  leewayOutOfRange: 'A leeway is a percentage from 0 to below 100.',
}

/** A diagnostic of a day with its sentence. */
export const dayProblem = wording(daySentences)

export { type NearestTime, nearestTimes } from './conflicts/nearest.js'
export { type Shortfall, type ShortfallStep, shortfallOf } from './conflicts/shortfall.js'
export type {
  AloneGroup,
  TimeConflict,
  TimeHold,
  TimePlan,
  TimeProblem,
  TimeSpan,
  TimeUse,
} from './problem.js'
export { Search, type SearchOptions, type SearchProgress, solveTimes } from './search.js'

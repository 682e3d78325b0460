export { type Shortfall, type ShortfallStep, shortfallOf } from './conflicts/shortfall.js'
export { type NearestTime, nearestTimes } from './nearest.js'
export type {
  AloneGroup,
  TimeConflict,
  TimeHold,
  TimePlan,
  TimeProblem,
  TimeSpan,
  TimeUse,
} from './problem/time-problem.js'
export { Search, type SearchOptions, type SearchProgress, solveTimes } from './search.js'

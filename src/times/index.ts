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

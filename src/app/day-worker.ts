/** Plans days off the main thread, in slices, so that it hears when it is to stop. */
import { type FromPlanner, Planning, type ToPlanner } from '../day/plan/planning.js'

// TypeScript's library for workers cannot be loaded beside that of pages: here is what is used of it.
interface PlannerScope {
  postMessage(message: FromPlanner): void
  addEventListener(name: 'message', hear: (event: MessageEvent<ToPlanner>) => void): void
}
const planner = self as unknown as PlannerScope

const slice = 30 // milliseconds of work between two looks at what has come
const apart = 120 // milliseconds from one word on how far it is to the next

let now: { readonly ask: number; readonly planning: Planning } | undefined
let told = 0

function goOn(ask: number): void {
  if (now?.ask !== ask) return // another day is wanted, or no more of this one
  const { planning } = now
  const end = performance.now() + slice
  while (performance.now() < end) if (planning.step(5)) return tell()
  if (performance.now() - told > apart) {
    told = performance.now()
    planner.postMessage({ ask, progress: planning.progress })
  }
  setTimeout(() => goOn(ask))
}

function tell(): void {
  const { ask, planning } = now!
  now = undefined
  planner.postMessage({ ask, found: planning.found() })
}

planner.addEventListener('message', ({ data }) => {
  if ('stop' in data) {
    if (now?.ask === data.stop) tell()
    return
  }
  const { ask, ...of } = data
  now = { ask, planning: new Planning(of) }
  told = performance.now()
  goOn(ask)
})

import assert from 'node:assert/strict'
import { Session } from 'node:inspector'
import { setFlagsFromString } from 'node:v8'

// Code that was compiled before counting began has no counters in its branches and loops: it begins with this module.
// Nor does code that V8 has optimised count all it does. All of a file that imports this runs slower.
setFlagsFromString('--no-opt')
const session = new Session()
session.connect()
session.post('Profiler.enable')
session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true })

/** What was counted since it was last asked. */
function counted(): number {
  let sum = 0
  session.post('Profiler.takePreciseCoverage', (error, { result }) => {
    if (error) throw error
    for (const { functions } of result.filter(script => script.url.startsWith('file:')))
      for (const { ranges } of functions) for (const { count } of ranges) sum += count
  })
  return sum
}

/**
 * How much work something makes, whatever the machine: how often V8 ran each function and each branch and loop of the
 * code in it, added up. What is built in is not counted: matching an expression is one step, however long.
 */
export function workOf(run: () => void): number {
  counted()
  run()
  return counted()
}

/** Fails where twice as much makes more than twice the work, but for a tenth. */
export function growsInStep(run: (size: number) => void, size: number): void {
  run(2) // makes what is made only once
  const [once, twice] = [workOf(() => run(size)), workOf(() => run(2 * size))]
  assert.ok(twice <= 2.2 * once, `${once} steps for ${size}, and ${twice} for twice as much`)
}

/** The engine's rows in Node, to be run with --expose-gc. */
import { doughRows } from './dough'
import { engineRows } from './engine'
import { readingRows } from './reading'
import { timesRows } from './times'

const collect = (globalThis as { gc?: () => void }).gc
if (!collect) throw new Error('Run this with --expose-gc.')
const memory = () => {
  collect()
  collect() // what the first let go of may free more
  const { heapUsed, arrayBuffers } = process.memoryUsage()
  return heapUsed + arrayBuffers
}
process.stdout.write(
  JSON.stringify(
    [
      ...engineRows(() => performance.now(), memory),
      ...doughRows(() => performance.now()),
      ...timesRows(() => performance.now()),
      ...readingRows(() => performance.now()),
    ],
    null,
    1,
  ),
)

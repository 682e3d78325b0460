/** The engine's rows in Node, to be run with --expose-gc. */
import { doughRows } from './dough'
import { engineRows } from './engine'
import { fuzzRows } from './fuzz-rows'
import { readingRows } from './reading'
import type { Row } from './row'
import { timesRows } from './times'

const collect = (globalThis as { gc?: () => void }).gc
if (!collect) throw new Error('Run this with --expose-gc.')
const memory = () => {
  collect()
  collect() // what the first let go of may free more
  const { heapUsed, arrayBuffers } = process.memoryUsage()
  return heapUsed + arrayBuffers
}
const now = () => performance.now()
const parts: Readonly<Record<string, () => Row[] | Promise<Row[]>>> = {
  node: () => [...engineRows(now, memory), ...doughRows(now), ...timesRows(now), ...readingRows(now)],
  fuzz: () => fuzzRows(now),
}
const wanted = process.argv.slice(2)
const rows: Row[] = []
for (const [part, measure] of Object.entries(parts))
  if (wanted.includes(part)) rows.push(...(await measure()))
process.stdout.write(JSON.stringify(rows, null, 1))

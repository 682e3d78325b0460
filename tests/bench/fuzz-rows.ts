import { fuzz } from '../exchange/fuzz'
import type { Row } from './row'

const seed = 20260410

/** What became of 50,000 inputs. What throws is told with its seed on the error stream, so that it can be run again. */
export async function fuzzRows(now: () => number): Promise<Row[]> {
  const started = now()
  const { inputs, read, refused, formulas, threw } = await fuzz(seed, 50_000)
  const took = now() - started
  for (const told of threw.slice(0, 20)) console.error(told)
  const row = (name: string, value: number, unit = 'inputs'): Row => ({
    name: `fuzz, seed ${seed}: ${name}`,
    value,
    unit,
  })
  return [
    row('inputs taken in', inputs),
    row('read', read),
    row('refused with a sentence', refused),
    row('opened and written', formulas, 'formulas'),
    { ...row('threw', threw.length), budget: 0 },
    row('time of one', took / inputs, 'ms'),
  ]
}

import flatbread from '../../examples/held-back-flatbread.csv'
import wheat from '../../examples/mill-wheat.csv'
import buns from '../../examples/morning-buns.csv'
import baguette from '../../examples/poolish-baguette.csv'
import spelt from '../../examples/seeded-spelt-tin.csv'
import rye from '../../examples/two-build-rye.csv'
import type { Formula } from '../dough/document/formula.js'
import { readFormulas } from '../exchange/index.js'

/**
 * The formulas of the example files. Run while building, so that a first start needs no reader of files;
 * ids are numbers, so that the same files build the same site.
 */
export function exampleFormulas(): Formula[] {
  const read = [wheat, rye, baguette, flatbread, buns, spelt].flatMap(file => readFormulas(file).formulas)
  let count = 0
  const id = () => `example-${count++}`
  return read.map(formula => ({
    ...formula,
    id: id(),
    stages: formula.stages.map(s => ({
      ...s,
      id: id(),
      lines: s.lines.map(l => ({ ...l, id: id() })),
      ...(s.method && { method: s.method.map(step => ({ ...step, id: id() })) }),
    })),
  }))
}

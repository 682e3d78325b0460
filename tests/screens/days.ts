import millWheatCsv from '../../examples/mill-wheat.csv' with { type: 'text' }
import speltCsv from '../../examples/seeded-spelt-tin.csv' with { type: 'text' }
import ryeCsv from '../../examples/two-build-rye.csv' with { type: 'text' }
import type { Day } from '../../src/dough/document/day'
import type { Formula } from '../../src/dough/document/formula'
import { readFormulas } from '../../src/exchange/index'

const formulaOf = (csv: string): Formula => readFormulas(csv).formulas[0]!

/** Mill wheat, two-build rye, seeded spelt tin: as the Saturday oven bakes them. */
export const breads = (): readonly Formula[] => [millWheatCsv, ryeCsv, speltCsv].map(formulaOf)

/** The Saturday oven in Paris, ready at 15:00: pieces of each formula in their order, by default twelve, four and three. */
export const saturdayOven = (
  formulas: readonly Formula[],
  more: Partial<Day> = {},
  pieces: readonly number[] = [12, 4, 3],
): Day => ({
  id: 'saturday',
  name: 'Saturday oven',
  date: '2026-12-05',
  zone: 'Europe/Paris',
  ready: '15:00',
  breads: formulas.map(({ id }, i) => ({
    id: `b${i + 1}`,
    formula: id,
    batch: { make: 'pieces', pieces: [{ count: pieces[i]!, weight: 900 }] },
  })),
  asleep: [{ from: '22:30', until: '6:00' }],
  bakers: 1,
  ovens: [{ id: 'stone', name: 'Stone oven', between: 15, change: 20, heating: 60, atOnce: 6 }],
  kitchen: 21,
  fridge: 4,
  together: [],
  holds: [],
  note: '',
  ...more,
})

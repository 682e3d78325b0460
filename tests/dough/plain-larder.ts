import { type Ingredient, larderOf } from '../../src/dough/document/larder.js'

const plain: Omit<Ingredient, 'id' | 'name' | 'kind' | 'countsAs'> = {
  otherNames: [],
  moisture: 0,
  fat: 0,
  sugar: 0,
  protein: 0,
  salt: 0,
  allergens: { us: [], eu: [], canada: [] },
  note: '',
}
const of = (name: string, kind: string, more: Partial<Ingredient> = {}): Ingredient => ({
  id: name,
  name,
  kind,
  countsAs: { kind: 'other' },
  ...plain,
  ...more,
})
const starter = (name: string, hydration: number) =>
  of(name, 'starter', { countsAs: { kind: 'starter', hydration } })
/** A few ingredients with round figures, by one-word names. */
export const plainLarder = larderOf([
  of('flour', 'flour', { countsAs: { kind: 'flour' } }),
  of('rye', 'flour', { countsAs: { kind: 'flour' } }),
  of('spelt', 'flour', { countsAs: { kind: 'flour' } }),
  of('water', 'water', { countsAs: { kind: 'water' }, cup: 237 }),
  of('salt', 'salt', { countsAs: { kind: 'salt' }, tsp: 6 }),
  starter('starter', 1),
  starter('firm starter', 0.6),
  starter('loose starter', 1.25),
  of('yeast', 'yeast'),
  of('seeds', 'seed'),
  of('linseed', 'seed'),
  of('oil', 'fat', { fat: 1, tbsp: 13.5 }),
  of('milk', 'dairy', { moisture: 0.8813, fat: 0.0325, sugar: 0.0505 }),
  of('egg', 'egg', { moisture: 0.7615, fat: 0.0951, sugar: 0.0037, each: 50 }),
  of('butter', 'fat', { moisture: 0.1794, fat: 0.8111, sugar: 0.0006 }),
  of('sugar', 'sugar', { sugar: 0.998 }),
])

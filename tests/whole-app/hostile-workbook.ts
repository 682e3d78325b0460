import type { Formula, Stage } from '../../src/dough/document/formula.js'
import type { Ingredient } from '../../src/dough/document/larder.js'
import { emptyWorkbook, type Workbook } from '../../src/dough/document/workbook.js'
import { saturday } from '../day/notation.js'
import { hostileValues } from '../exchange/hostile-values.js'

const joined = hostileValues.filter(value => value.length < 100).join(' ')

/** A formula and a larder with every hostile text wherever there is one. */
const final: Stage = {
  id: 'dough',
  name: 'Final dough',
  lines: [
    { id: 'flour', ingredient: 'Bread flour', amount: '1000 g', note: joined },
    { id: 'taken', ingredient: `${hostileValues[0]} levain`, amount: '100 g', note: '' },
    ...hostileValues.map((value, at) => ({ id: `l${at}`, ingredient: value, amount: '1 g', note: value })),
    ...hostileValues.map((value, at) => ({ id: `a${at}`, ingredient: 'Salt', amount: value, note: '' })),
  ],
  method: hostileValues.flatMap((value, at) => [
    { id: `m${at}`, does: value, kind: 'hands' as const, text: value, note: value },
    { id: `n${at}`, does: 'Mix', kind: 'hands' as const, text: '5 min', note: value },
  ]),
}
const levain: Stage = {
  id: 'levain',
  name: `${hostileValues[0]} levain`,
  lines: [{ id: 'seed', ingredient: 'Bread flour', amount: '50 g', note: joined }],
}
export const bare: Formula = {
  id: 'hostile',
  name: hostileValues[1]!,
  note: joined,
  flourWeight: 1000,
  stages: [levain, final],
  meanings: hostileValues.map(ingredient => ({ ingredient, countsAs: { kind: 'flour' as const } })),
  keptSettings: hostileValues.map(value => ({ stage: value, setting: value, amount: value, note: value })),
  jottings: hostileValues.map((value, at) => ({ id: `j${at}`, name: value, text: value })),
}
const formula: Formula = {
  ...bare,
  states: hostileValues.map((name, at) => ({
    id: `s${at}`,
    name,
    keptAt: '2026-11-28T06:00:00.000Z',
    formula: bare,
  })),
}
const ingredient: Ingredient = {
  id: 'own',
  name: hostileValues[2]!,
  otherNames: hostileValues,
  kind: 'flour',
  countsAs: { kind: 'flour' },
  moisture: 0,
  fat: 0,
  sugar: 0,
  protein: 0,
  salt: 0,
  allergens: { us: ['Wheat'], eu: [joined], canada: [joined] },
  note: joined,
}
export const workbook: Workbook = {
  ...emptyWorkbook,
  name: joined,
  formulas: [
    formula,
    ...hostileValues.map((name, at) => ({ ...bare, id: `f${at}`, name, stages: [levain] })),
  ],
  larder: [ingredient],
  days: [{ ...saturday([[formula, 6]]), name: joined, note: joined }],
}

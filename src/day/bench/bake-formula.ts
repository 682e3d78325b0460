import { copyOf, type Formula, type KeptState, newId } from '../../dough/document/formula.js'
import type { Transaction, Workbook } from '../../dough/document/workbook.js'
import { freeName } from '../../dough/edits/fetched/shelf-edits.js'
import { withLength } from '../mixing/step-rewriting.js'
import type { Bake } from './bake.js'
import type { BakeRecord } from './bake-record.js'
import { benchLabels } from './words.js'

/** The formula as it was baked: what really went in, in grams, and how long each step really took. */
export function formulaAsBaked({ formula }: Bake, { steps, weights }: BakeRecord): Formula {
  const took = new Map(steps.map(({ id, took }) => [id, took]))
  const grams = new Map(weights.map(({ id, grams, wanted }) => [id, grams ?? wanted]))
  const { batch: _batch, holds: _holds, states: _states, group: _group, ...rest } = formula
  return {
    ...rest,
    stages: formula.stages.map(stage => ({
      ...stage,
      lines: stage.lines.map(line => {
        const weight = grams.get(line.id)
        return weight === undefined ? line : { ...line, amount: `${Number(weight.toFixed(2))} g` }
      }),
      ...(stage.method && {
        method: stage.method.map(step => {
          const minutes = took.get(step.id)
          return minutes === undefined || minutes < 1
            ? step
            : { ...step, text: withLength(step.text, { least: minutes, usual: minutes, most: minutes }) }
        }),
      }),
    })),
  }
}

/**
 * Keeps a formula as it was baked: as a state of the one on the shelf, or where that is gone as a formula of its own. `name` is the
 * state's.
 */
export function keepAsBaked(workbook: Workbook, bake: Bake, record: BakeRecord, name: string): Transaction {
  const baked = formulaAsBaked(bake, record)
  const label = benchLabels.asBaked(bake.name)
  const shelved = workbook.formulas.find(({ id }) => id === bake.formula.id)
  if (!shelved) {
    const value = copyOf(baked, freeName(workbook, bake.name))
    return { label, changes: [{ of: 'formula', id: value.id, value }] }
  }
  const state: KeptState = { id: newId(), name, keptAt: bake.at, formula: baked }
  return {
    label,
    changes: [{ of: 'fields', formula: shelved.id, value: { states: [...(shelved.states ?? []), state] } }],
  }
}

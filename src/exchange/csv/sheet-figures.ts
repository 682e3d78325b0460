import '../../dough/cells/rare-cells-at-once.js'
import '../../dough/weighed/weighed-batch.js'
import type { Scale } from '../../dough/document/batch.js'
import { type Formula, hasBatch } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { isUnsaid } from '../../dough/sheet/figures.js'
import { openSheet } from '../../dough/sheet/sheet.js'
import type { WriteOptions } from './write-formulas.js'

/** The figures of a formula's sheet, for `writeFormulas`: as written, and beside them what is weighed of its batch on a scale. */
export const sheetFigures =
  (larder?: Larder, scale?: Scale): NonNullable<WriteOptions['figures']> =>
  (formula: Formula) => {
    const sheet = openSheet(formula, larder, scale)
    const isBatch = hasBatch(formula)
    const lines = new Map(formula.stages.flatMap(s => s.lines).map(line => [line.id, line]))
    return id => {
      const figures = sheet.line(id)
      const { weight, percent, wholeDough } = figures
      return isUnsaid(lines.get(id)!, figures)
        ? {}
        : {
            grams: weight,
            percent,
            wholeDough,
            batch: isBatch ? (sheet.weighed(id)?.grams ?? figures.batch) : undefined,
          }
    }
  }

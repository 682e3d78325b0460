import { dateText } from '../../src/day/out/day-text.js'
import type { Batch } from '../../src/dough/document/batch.js'
import type { Day, DayBread } from '../../src/dough/document/day.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { type NumberStyle, showNumber } from '../base/numbers.js'
import { degrees, saidWords } from './words.js'

const countOf = (batch: Batch, style: NumberStyle): string =>
  'pieces' in batch
    ? showNumber(
        batch.pieces.reduce((sum, { count }) => sum + count, 0),
        style,
      )
    : ''

/** `Ready by 9:00 on Saturday 5 December: 6 Mill wheat. Kitchen 22 °C. Asleep 22:30–6:00.` */
export function factsInWords(day: Day, { formulas }: Workbook, style: NumberStyle): string {
  const name = ({ formula }: DayBread) => formulas.find(({ id }) => id === formula)?.name ?? ''
  const breads = day.breads.map(bread => [countOf(bread.batch, style), name(bread)].filter(Boolean).join(' '))
  return [
    saidWords.when(day.begin, day.ready, dateText(day.date, style.language), breads),
    saidWords.kitchen(degrees(day.kitchen)),
    ...day.asleep.map(({ from, until }) => saidWords.asleep(from, until)),
  ].join(' ')
}

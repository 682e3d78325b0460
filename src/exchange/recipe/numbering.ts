import { kitchen } from '../values/kitchen-words.js'
import { ofSentence } from './clues.js'
import { type Row, rowOf } from './recipe-row.js'

const counted = /^\s*(\d{1,2})(?:[.)]|\s?[-–](?=\s)|(?=\s+\p{Lu}|\s*$))/u
const fewest = 3 // steps that are counted

/** A row of text; `isStep`: it is one of several that are counted. */
interface Counted {
  readonly at: number
  readonly row: Row
  readonly isStep: boolean
}

/** Is more done in most rows than named? */
const areSteps = (rows: readonly Row[]): boolean =>
  rows.filter(row => kitchen.verbs.has(row.words[0]?.key ?? '') || ofSentence(row).some(([, holds]) => holds))
    .length *
    2 >
  rows.length

/**
 * `1 Mix …`, `2- Rest …`, or `1` on a row of its own over what is done: rows that are counted from 1 and of
 * which most say what to do are steps, whatever amounts are in them. Numbers alone on a row are left out.
 */
export function withSteps(rows: readonly { readonly at: number; readonly row: Row }[]): Counted[] {
  const steps = new Map<number, Row>()
  const numbers = new Set<number>()
  let run: { readonly nth: number; readonly step: number; readonly row: Row }[] = []
  const close = () => {
    if (run.length >= fewest && areSteps(run.map(({ row }) => row)))
      for (const { nth, step, row } of run) {
        steps.set(step, row)
        if (step !== nth) numbers.add(nth)
      }
    run = []
  }
  for (const [nth, { row }] of rows.entries()) {
    const [sign, number] = counted.exec(row.text) ?? []
    if (sign === undefined) continue
    if (Number(number) !== run.length + 1) close()
    if (Number(number) !== run.length + 1) continue
    const isAlone = sign.trim() === row.text.trim()
    const step = isAlone ? nth + 1 : nth
    const text = rows[step]?.row.text
    if (text === undefined) continue
    const blank = isAlone ? text : ' '.repeat(sign.length) + text.slice(sign.length)
    run.push({ nth, step, row: { ...rowOf(blank), text, numbered: true } })
  }
  close()
  return rows.flatMap(({ at, row }, nth) =>
    numbers.has(nth) ? [] : [{ at, row: steps.get(nth) ?? row, isStep: steps.has(nth) }],
  )
}

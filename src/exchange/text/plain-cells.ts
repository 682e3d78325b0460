/** A cell of the plain text that holds nothing. */
export const nothing = '–'
export const titleLine = '═'
export const stageLine = '─'
/** How the line over the cups and spoons of a plain text begins; its reader passes over what is beneath. */
export const householdHeading = 'Cups and spoons'
/** The heading over the batches of several formulas, before the first of them; what is beneath is passed over. */
export const batchesHeading = 'Batches'
/** The heading over the allergens and cautions; in a plain text they are passed over likewise. */
export const cautionsHeading = 'Allergens and cautions'

const startsFormula = /^[=+\-@＝＋－＠]|[;\t]\s*'*[=+\-@＝＋－＠]/
const inQuotes = /[=+\-@＝＋－＠]/g

/** Whether a text can stand as it is: words with single spaces between them, and none of the signs used here. */
const isPlain = (text: string): boolean =>
  /^[^\s"]\S*(?: \S+)*$/.test(text) &&
  !/[\p{Cc}\p{Cs}]/u.test(text) &&
  !/^[═─]+$/.test(text) &&
  text !== nothing &&
  !text.startsWith('> ') &&
  !startsFormula.test(text)

/**
 * A text as a cell: as it is; `–` for nothing; or else between quotation marks, as in JSON. No cell starts a formula in an
 * office program.
 */
export function cell(text: string): string {
  if (text === '') return nothing
  if (isPlain(text)) return text
  return JSON.stringify(text).replace(
    inQuotes,
    sign => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )
}

/** The text of a cell. */
export function uncell(cell: string): string {
  if (cell === nothing) return ''
  if (!cell.startsWith('"')) return cell
  try {
    const text: unknown = JSON.parse(cell)
    return typeof text === 'string' ? text : cell
  } catch {
    return cell
  }
}

/** The cells of a row: two spaces or more are between them. */
export const cellsIn = (row: string): string[] =>
  row.match(/"(?:[^"\\]|\\.)*"(?= {2}| *$)|\S+(?: \S+)*/g) ?? []

/** A sentence in lines that fit a message; a number stays with its sign. */
export const inLines = (sentence: string): string[] =>
  sentence
    .replaceAll(' %', '\u00a0%')
    .match(/.{1,72}(?: |$)|\S+(?: |$)/g)!
    .map(line => line.trim().replaceAll('\u00a0', ' '))

/** A sentence that holds names as they were typed, on one line; no part of it starts a formula in an office program. */
export const sentence = (text: string): string =>
  text
    .replace(/[\p{Cc}\p{Cs}\s]+/gu, ' ')
    .replace(/;(?=\s*'*[=+\-@＝＋－＠])/g, ',')
    .trim()

const widest = 40
const width = (text: string): number => [...text].length

/** Rows of cells as aligned text; the columns at `right` are set to the right. Long cells take the room they need. */
export function aligned(rows: readonly (readonly string[])[], right: ReadonlySet<number>): string[] {
  const columns = Math.max(0, ...rows.map(row => row.length))
  const widths = Array.from({ length: columns }, (_, at) =>
    Math.min(
      widest,
      rows.reduce((most, row) => Math.max(most, width(row[at] ?? '')), 0),
    ),
  )
  return rows.map(row =>
    row
      .map((text, at) => {
        const gap = ' '.repeat(Math.max(0, widths[at]! - width(text)))
        return right.has(at) ? gap + text : text + gap
      })
      .join('  ')
      .trimEnd(),
  )
}

/** A text of several lines, each behind `> `; undefined where that would not come back as it was. */
export function block(text: string): string[] | undefined {
  if (/[\p{Cc}\p{Cs}]/u.test(text.replaceAll('\n', '')) || startsFormulaWithin(text)) return undefined
  const lines = text.split('\n')
  if (lines.some(line => line !== line.trimEnd())) return undefined
  return lines.map(line => (line === '' ? '>' : `> ${line}`))
}

const startsFormulaWithin = (text: string): boolean => /[;\t]\s*'*[=+\-@＝＋－＠]/.test(text)

import { tradeTextWords as words } from './words.js'

/** A table in plain text: columns padded so that figures stand beneath each other. */
const padded = (rows: readonly (readonly [string, string])[]): string[] => {
  const wide = Math.max(0, ...rows.map(([name]) => name.length))
  const figures = Math.max(0, ...rows.map(([, figure]) => figure.length))
  return rows.map(([name, figure]) => `  ${name.padEnd(wide)}  ${figure.padStart(figures)}`.trimEnd())
}

/** A line of what is to be ordered, or of what is weighed; texts as they are shown. */
export interface TextLine {
  readonly name: string
  readonly figure: string
  readonly about?: string
}

/** What to weigh and order as plain text: the totals, what each dough costs, and the weighing lists. */
export interface TradeTexts {
  readonly name: string // of the day or the formula
  readonly date: string // '' where there is none
  readonly needs: readonly TextLine[]
  readonly remarks: readonly string[]
  readonly costs: readonly TextLine[]
  readonly notes?: string // what is to know of those on the lists
  readonly lists: readonly { readonly name: string; readonly lines: readonly TextLine[] }[]
}

export function writeTradeText({ name, date, needs, remarks, costs, notes, lists }: TradeTexts): string {
  const section = (heading: string, lines: readonly string[]): string[] =>
    lines.length ? ['', heading.toUpperCase(), ...lines] : []
  const withAbout = (all: readonly TextLine[]): string[] =>
    padded(all.map(({ name, figure }) => [name, figure])).flatMap((row, i) => {
      const { about } = all[i]!
      return about ? [row, `    ${about}`] : [row]
    })
  return [
    [name, date].filter(Boolean).join(', '),
    ...section(words.order, [...withAbout(needs), ...remarks]),
    ...section(words.costs, withAbout(costs)),
    ...section(words.weigh, [
      ...(notes ? [notes, ''] : []),
      ...lists.flatMap(list => ['', list.name, ...withAbout(list.lines)]).slice(1),
    ]),
    '',
  ].join('\n')
}

import assert from 'node:assert/strict'
import { type Formula, finalDoughOf, type Problem } from '../../src/dough/document/formula.js'
import { readFormulas } from '../../src/exchange/index.js'

/** A formula as text: its own facts, then a stage a paragraph, a line a row, `*` for base, then its steps, numbered. Ids are left out. */
export function shown(formula: Formula): string {
  const own = [
    formula.name,
    formula.note && `note: ${formula.note}`,
    formula.flourWeight !== 1000 && `flour weight: ${formula.flourWeight}`,
    ...formula.meanings.map(({ ingredient, countsAs: c }) =>
      c.kind === 'starter' ? `${ingredient} is a starter of ${c.hydration}` : `${ingredient} is ${c.kind}`,
    ),
    formula.batch && `make: ${JSON.stringify(formula.batch)}`,
    ...(formula.holds ?? []).map(hold => {
      const line = finalDoughOf(formula).lines.findIndex(l => l.id === hold.line)
      return `hold: ${hold.reading} at ${hold.value}, line ${line + 1} gives`
    }),
    ...formula.keptSettings.map(
      k =>
        `kept: ${[k.stage, k.setting, k.amount, k.note, ...(k.ingredient ? [k.ingredient] : [])].join(' | ')}`,
    ),
  ]
  const stages = formula.stages.flatMap(stage => [
    [
      `${stage.name}:`,
      stage.ferments === undefined ? '' : stage.ferments ? ' ferments' : ' does not ferment',
      stage.keepBack ? ` keeps back ${stage.keepBack}` : '',
      stage.loss ? ` loses ${stage.loss}` : '',
    ].join(''),
    ...stage.lines.map(
      line => `  ${line.base ? '*' : ''}${line.ingredient} ${line.amount}${line.note && ` (${line.note})`}`,
    ),
    ...(stage.method ?? []).map(
      ({ kind, does, text, note }, at) =>
        `  ${at + 1}. ${kind} ${does}${text && `: ${text}`}${note && ` “${note}”`}`,
    ),
  ])
  return [...own.filter(Boolean), ...stages].join('\n')
}

/** Lines as text, without the indentation of the test they stand in. */
export const text = (strings: TemplateStringsArray): string => {
  const lines = strings
    .join('')
    .replace(/^\n|\n *$/g, '')
    .split('\n')
  const indent = Math.min(...lines.filter(l => l.trim()).map(l => l.search(/\S/)))
  return lines.map(l => l.slice(indent)).join('\n')
}

/** What reasons say, one behind the other. */
export const inWords = (reasons: readonly { readonly message: string }[] = []): string =>
  reasons.map(({ message }) => message).join(' ')

export const told = (problems: readonly Problem[]): string[] =>
  problems.map(({ where, severity, message }) => `${where.row ?? '-'} ${severity}: ${message}`)

/** Formulas of a file that has nothing wrong with it. */
export function readWell(csv: string): Formula[] {
  const { formulas, problems } = readFormulas(csv)
  assert.deepEqual(told(problems), [])
  return formulas
}

import { columnUses, type ForeignTable, headingsKey, type Mapping, stageMarks } from '../tables/index.js'

/** What bakers said of tables before, by their headings (`headingsKey`); anything may be in it: it was stored. */
export type RememberedColumns = Readonly<Record<string, unknown>>

/** What is worth remembering of a mapping for the next table with these headings; its titles and names are its own. */
export const columnsToRemember = ({ columns, stages, decimal }: Mapping): unknown => ({
  columns,
  stages,
  decimal,
})

const isOneOf = <T extends string>(words: readonly T[], value: unknown): value is T =>
  words.some(word => word === value)

/**
 * The mapping of a table as it was once corrected for the same headings; undefined where nothing is remembered, or
 * nothing that would fit. The decimal sign is the old one only where this table shows none.
 */
export function rememberedMapping(table: ForeignTable, remembered: RememberedColumns): Mapping | undefined {
  const key = headingsKey(table)
  const kept = Object.hasOwn(remembered, key) ? remembered[key] : undefined
  if (typeof kept !== 'object' || kept === null) return undefined
  const { columns, stages, decimal } = kept as Record<string, unknown>
  if (!Array.isArray(columns) || columns.length !== table.mapping.columns.length) return undefined
  if (!columns.every(use => isOneOf(columnUses, use)) || !isOneOf(stageMarks, stages)) return undefined
  const isOpen = table.guesses.some(guess => guess.about === 'decimal' && guess.ask)
  return {
    ...table.mapping,
    columns,
    stages,
    decimal: isOpen && isOneOf(['.', ','] as const, decimal) ? decimal : table.mapping.decimal,
  }
}

import type { LabelRun } from '../../dough/label/allergens-named.js'
import { aligned, cell, inLines, sentence } from '../text/plain-cells.js'
import { type LabelBlocks, labelRules } from './label-blocks.js'
import { checkHeading, labelWords } from './words.js'

const capitals = ({ text, isAllergen }: LabelRun): string => (isAllergen ? text.toUpperCase() : text)

const items = (sentences: readonly string[]): string[] =>
  sentences.flatMap(said => inLines(sentence(said)).map((line, at) => `${at ? '  ' : '• '}${line}`))

function oneText(label: LabelBlocks): string[] {
  const { name, ingredients, contains, netWeight, rows, calculated } = label
  const paragraph = (heading: string, text: string) =>
    text ? ['', ...inLines(sentence(`${heading} ${text}`))] : []
  const table = rows.map(({ of, says, isPart }) => [`${isPart ? '  ' : ''}${of}`, says])
  return [
    cell(name),
    ...paragraph(labelWords.ingredients, ingredients.map(capitals).join('')),
    ...paragraph(labelWords.contains, contains),
    ...paragraph(labelWords.netWeight, netWeight),
    ...(table.length ? ['', `${labelWords.nutrition}:`, ...aligned(table, new Set([1]))] : []),
    ...(calculated ? inLines(sentence(calculated)) : []),
    '',
  ]
}

/** Labels as plain text, allergens in capitals; what is to be checked before they are used stands beneath them. */
export function labelText(labels: readonly LabelBlocks[]): string {
  const own = labels.flatMap(({ name, toCheck }) =>
    toCheck.map(said => (labels.length > 1 ? `${name}: ${said}` : said)),
  )
  const lines = [...labels.flatMap(oneText), `${checkHeading}:`, ...items([...own, ...labelRules(labels)])]
  return `${lines.join('\n')}\n`
}

import type { LabelRun } from '../../dough/label/allergens-named.js'
import { type LabelBlocks, labelRules } from './label-blocks.js'
import { checkHeading, labelWords } from './words.js'

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }
const plain = (text: string): string =>
  text.replace(/[\p{Cc}\p{Cs}\s]+/gu, ' ').replace(/[&<>"]/g, sign => entities[sign]!)

const bold = ({ text, isAllergen }: LabelRun): string =>
  isAllergen ? `<strong>${plain(text)}</strong>` : plain(text)

function oneLabel(label: LabelBlocks): string[] {
  const { name, ingredients, contains, netWeight, rows, calculated } = label
  const paragraph = (heading: string, written: string) =>
    written ? [`<p><strong>${plain(heading)}</strong> ${written}</p>`] : []
  const indent = ' style="padding-left: 1em"'
  const table = rows.map(
    ({ of, says, isPart }) =>
      `<tr><th scope="row" align="left"${isPart ? indent : ''}>${plain(of)}</th><td align="right">${plain(says)}</td></tr>`,
  )
  const caption = `<caption>${plain(labelWords.nutrition)}</caption>`
  return [
    `<h2>${plain(name)}</h2>`,
    ...paragraph(labelWords.ingredients, ingredients.map(bold).join('')),
    ...paragraph(labelWords.contains, plain(contains)),
    ...paragraph(labelWords.netWeight, plain(netWeight)),
    ...(table.length ? [`<table>${caption}`, ...table, '</table>', `<p>${plain(calculated)}</p>`] : []),
  ]
}

/** Labels as HTML, allergens bold; whatever they are made of is text. What is to be checked before they are used stands beneath them. */
export function labelHtml(labels: readonly LabelBlocks[]): string {
  const own = labels.flatMap(({ name, toCheck }) =>
    toCheck.map(said => (labels.length > 1 ? `${name}: ${said}` : said)),
  )
  return [
    '<meta charset="utf-8">',
    ...labels.flatMap(oneLabel),
    `<h3>${plain(checkHeading)}</h3>`,
    '<ul>',
    ...[...own, ...labelRules(labels)].map(said => `<li>${plain(said)}</li>`),
    '</ul>',
  ].join('\n')
}

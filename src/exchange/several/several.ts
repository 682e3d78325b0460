import { batchWords } from '../../dough/document/batch-words.js'
import { finalDoughOf } from '../../dough/document/formula.js'
import { per100 } from '../../dough/document/words.js'
import type { ListName } from '../../dough/larder/allergen-lists.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { row, shown, writeMarkdown } from '../text/markdown.js'
import { aligned, batchesHeading, cell } from '../text/plain-cells.js'
import { writePlainText } from '../text/plain-text.js'
import { gramsSaid } from '../text/printed.js'
import { sumOf } from '../values/written-weights.js'
import { severalWords } from './words.js'

/** A formula of several: what is made of it, and what that weighs as dough. */
interface Made {
  readonly name: string
  readonly batch: string
  readonly dough: string
}

function madeOf(sheet: FigureSheet): Made {
  const { formula } = sheet
  const { batch = { make: 'as written' as const } } = formula
  const { lines, id } = finalDoughOf(formula)
  const dough = sumOf(lines.map(line => sheet.weighed(line.id)?.grams)) ?? sheet.stage(id).build
  return {
    name: formula.name,
    batch: [
      batchWords(batch),
      ...(batch.loss ? [severalWords.lost(per100(batch.loss))] : []),
      ...(batch.bakeLoss ? [severalWords.lostInBaking(per100(batch.bakeLoss))] : []),
    ].join(', '),
    dough: dough === undefined ? '–' : severalWords.dough(gramsSaid(dough)),
  }
}

/**
 * Several formulas as plain text, what is made of each before all of them; `beneath` adds to the text of each. `readPlainText` reads them again.
 */
export function writeSeveral(
  sheets: readonly FigureSheet[],
  list: ListName,
  beneath: (sheet: FigureSheet) => string = () => '',
): string {
  const texts = sheets.map(sheet => writePlainText(sheet, list) + beneath(sheet))
  if (sheets.length < 2) return texts.join('')
  const made = sheets.map(madeOf).map(({ name, batch, dough }) => [`> ${cell(name)}`, batch, dough])
  return [`${[`${batchesHeading}:`, ...aligned(made, new Set([2]))].join('\n')}\n`, ...texts].join('\n\n')
}

/** The same as Markdown, in a table. `readMarkdown` reads them again. */
export function writeSeveralMarkdown(sheets: readonly FigureSheet[], list: ListName): string {
  const texts = sheets.map(sheet => writeMarkdown(sheet, list))
  if (sheets.length < 2) return texts.join('')
  const table = [
    row([batchesHeading, severalWords.toMake, severalWords.doughHead]),
    row(['---', '---', '---:']),
    ...sheets.map(madeOf).map(({ name, batch, dough }) => row([shown(name), shown(batch), dough])),
  ]
  return [`${table.join('\n')}\n`, ...texts].join('\n\n')
}

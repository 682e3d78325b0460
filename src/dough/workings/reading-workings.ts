import { isOwn } from '../cells/stage-cells.js'
import type { ReadingName } from '../document/reading-names.js'
import { grams, isWeightReading, per100 } from '../document/words.js'
import { cellOf } from '../outline/names.js'
import type { Count } from '../outline/outline.js'
import { type FigureReader, overFlour } from './figure-reader.js'
import { workingWords } from './words.js'
import type { Working } from './working.js'

/** The working of a reading. */
export function readingWorking(read: FigureReader, name: ReadingName): Working {
  const { final } = read.at.outline
  const title = workingWords.readingTitle(name)
  const cell = cellOf.reading(name)
  const value = read.number(cell)
  const count = overFlour[name]
  const end = value === undefined ? '' : isWeightReading(name) ? grams(value) : per100(value)
  if (count) {
    const [part, flour] = [read.grams(cellOf.count(final, count)), read.grams(cellOf.count(final, 'flour'))]
    const sources = [...read.brought(final, count), ...read.brought(final, 'flour')]
    return read.done(title, cell, workingWords.overFlour(count), `${part} ÷ ${flour} = ${end}`, sources)
  }
  const lines = (kind: 'flour' | 'water' | 'levain') =>
    final.lines.filter(l => isOwn(l, kind)).map(l => read.line(l))
  const over = (kind: 'water' | 'levain', words: string) => {
    const [part, flour] = [read.grams(cellOf.lines(final, kind)), read.grams(cellOf.lines(final, 'flour'))]
    return read.done(title, cell, words, `${part} ÷ ${flour} = ${end}`, [...lines(kind), ...lines('flour')])
  }
  switch (name) {
    case 'hydrationWithoutSoakers': {
      const of = (count: Count) => read.grams(cellOf.count(final, count))
      return read.done(
        title,
        cell,
        workingWords.withoutSoakers,
        `(${of('water')} − ${of('soaked')}) ÷ ${of('flour')} = ${end}`,
        (['water', 'soaked', 'flour'] as const).flatMap(count => read.brought(final, count)),
      )
    }
    case 'listedHydration':
      return over('water', workingWords.listedHydration)
    case 'levainOnFlour':
      return over('levain', workingWords.levainOnFlour)
    case 'doughWeight':
      return read.done(
        title,
        cell,
        workingWords.doughWeight,
        read.sum(final.lines, end),
        final.lines.map(l => read.line(l)),
      )
    default: {
      const total = name === 'totalFlour' ? 'flour' : 'water'
      const sources = read.brought(final, total)
      return read.done(
        title,
        cell,
        workingWords.linesAndCarried(total),
        `${sources.map(s => s.figure).join(' + ')} = ${end}`,
        sources,
      )
    }
  }
}

import { batchWords } from '../../../src/dough/document/batch-words.js'
import { type Formula, isInProportion, usualFlourWeight } from '../../../src/dough/document/formula.js'
import { grams, holdWords, per100 } from '../../../src/dough/document/words.js'
import type { NumberStyle } from '../../base/numbers.js'
import { asTheyWrite } from '../../base/numbers.js'
import { factNames, factWords } from './words.js'

/** What a formula holds beside its lines, in sentences without a full stop, each with what it is called. */
export function formulaFacts(
  formula: Formula,
  numbers: NumberStyle,
): (readonly [called: string, says: string])[] {
  const { batch, holds = [], jottings = [], stages, note, keptSettings, flourWeight } = formula
  const facts: (readonly [string, string])[] = []
  if (batch) {
    const { loss, bakeLoss } = batch
    const lost = [
      ...(loss ? [factWords.lostOnTheWay(per100(loss))] : []),
      ...(bakeLoss ? [factWords.lostInTheOven(per100(bakeLoss))] : []),
    ]
    facts.push([factNames.make, [batchWords(batch), ...lost].join(', ')])
  }
  if (flourWeight !== usualFlourWeight) facts.push([factNames.flourWeight, grams(flourWeight)])
  const nameOf = (id: string) => stages.flatMap(stage => stage.lines).find(line => line.id === id)?.ingredient
  for (const hold of holds) {
    const ingredient = nameOf(hold.line) ?? factWords.lineGone
    const words = holdWords(hold, ingredient)
    facts.push([
      factNames.hold,
      hold.reading === 'wholeDough'
        ? words
        : isInProportion(hold)
          ? factWords.inProportion(words)
          : factWords.gives(words, ingredient),
    ])
  }
  for (const { name, ferments, keepBack, loss, lines } of stages) {
    if (keepBack !== undefined)
      facts.push([name, keepBack === 'seed' ? factWords.seedKeptBack : factWords.keptBack(grams(keepBack))])
    if (loss) facts.push([name, factWords.lost(per100(loss))])
    if (ferments !== undefined) facts.push([name, ferments ? factWords.ferments : factWords.doesNotFerment])
    const base = lines.filter(line => line.base).map(line => line.ingredient)
    if (base.length > 0) facts.push([name, factWords.isBase(base)])
  }
  for (const { name, text } of jottings)
    facts.push([factNames.jotting, factWords.jotting(name, asTheyWrite(text, numbers))])
  for (const { stage, setting, amount } of keptSettings)
    facts.push([factNames.kept, [stage, setting, amount].filter(part => part !== '').join(': ')])
  if (note) facts.push([factNames.note, note])
  return facts
}

import { type Formula, usualFlourWeight } from '../../../src/dough/document/formula.js'
import { batchWords, grams, holdWords, per100 } from '../../../src/dough/document/words.js'
import type { NumberStyle } from '../../base/numbers.js'
import { asTheyWrite } from '../../base/numbers.js'

/** What a formula holds beside its lines, in sentences without a full stop, each with what it is called. */
export function formulaFacts(
  formula: Formula,
  numbers: NumberStyle,
): (readonly [called: string, says: string])[] {
  const { batch, holds = [], jottings = [], stages, note, keptSettings, flourWeight } = formula
  const facts: (readonly [string, string])[] = []
  const lost = (loss: number | undefined, where: string) => (loss ? `, ${per100(loss)} lost ${where}` : '')
  if (batch)
    facts.push([
      'Make',
      `${batchWords(batch)}${lost(batch.loss, 'on the way')}${lost(batch.bakeLoss, 'in the oven')}`,
    ])
  if (flourWeight !== usualFlourWeight) facts.push(['Flour weight', grams(flourWeight)])
  const nameOf = (id: string) => stages.flatMap(stage => stage.lines).find(line => line.id === id)?.ingredient
  for (const hold of holds) {
    const ingredient = nameOf(hold.line) ?? 'a line that is not there'
    const words = holdWords(hold, ingredient)
    facts.push(['Hold', hold.reading === 'wholeDough' ? words : `${words}; ${ingredient} gives`])
  }
  for (const { name, ferments, keepBack, loss, lines } of stages) {
    if (keepBack !== undefined)
      facts.push([name, `${keepBack === 'seed' ? 'as much as went in' : grams(keepBack)} kept back`])
    if (loss) facts.push([name, `${per100(loss)} lost`])
    if (ferments !== undefined) facts.push([name, ferments ? 'ferments' : 'does not ferment'])
    const base = lines.filter(line => line.base).map(line => line.ingredient)
    if (base.length > 0) facts.push([name, `${base.join(' and ')} is 100 %`])
  }
  for (const { name, text } of jottings) facts.push(['Jotting', `${name} = ${asTheyWrite(text, numbers)}`])
  for (const { stage, setting, amount } of keptSettings)
    facts.push(['Kept as it stands', [stage, setting, amount].filter(part => part !== '').join(': ')])
  if (note) facts.push(['Note', note])
  return facts
}

import { html, type TemplateResult } from 'lit'
import { type Formula, nameKey } from '../../../src/dough/document/formula.js'
import type { FigureSheet } from '../../../src/dough/sheet/figures.js'
import type { Row } from '../table/table.js'

/** A name an editor offers. */
export interface Choice {
  readonly name: string
  readonly says: string // beside it: `stage`
}

/** The name being typed where the caret stands in an amount. */
export interface NameTyped {
  readonly from: number // of its first letter, in the text
  readonly text: string
}

/** What finds the names that an editor offers. */
export interface Offers {
  readonly ingredients: (
    typed: string,
    formula: Formula,
    stage: string,
    names: readonly string[],
  ) => readonly Choice[]
  readonly nameAt: (text: string, caret: number) => NameTyped | undefined
  readonly names: (typed: string, sheet: FigureSheet, row: Row) => readonly Choice[]
}

/** A name as the larder or the formula spells it, where only case or spaces differ. */
export function knownSpelling(typed: string, formula: Formula, names: readonly string[]): string {
  const key = nameKey(typed)
  return (
    formula.stages.find(s => nameKey(s.name) === key)?.name ??
    names.find(n => nameKey(n) === key) ??
    typed.trim()
  )
}

export const choiceId = (index: number): string => `choice-${index}`

export const choiceList = (choices: readonly Choice[], chosen: number, label: string): TemplateResult => html`
  <ul id="choices" role="listbox" aria-label=${label} ?hidden=${choices.length === 0}>
    ${choices.map(
      (choice, i) => html`<li
        role="option"
        id=${choiceId(i)}
        data-choice=${i}
        aria-selected=${i === chosen}
      >${choice.name}${choice.says ? html` <small>${choice.says}</small>` : ''}</li>`,
    )}
  </ul>
`

import { html, type TemplateResult } from 'lit'
import { type Formula, nameKey } from '../../../src/dough/document/formula.js'
import { choiceMarks } from './words.js'

/** A name an editor offers. */
export interface Choice {
  readonly name: string
  readonly says: string // beside it: `stage`
}

const folded = (text: string): string => nameKey(text.normalize('NFD').replace(/\p{M}/gu, ''))

/** How well a name meets what was typed: 0 best; undefined not at all. */
function distance(name: string, typed: string): number | undefined {
  const text = folded(name)
  if (text.startsWith(typed)) return 0
  if (text.includes(` ${typed}`)) return 1
  return text.includes(typed) ? 2 : undefined
}

/** The names that meet what was typed: stages that come before `stage` first, then the larder's; at most eight. */
export function choicesFor(
  typed: string,
  formula: Formula,
  stage: string,
  names: readonly string[],
): Choice[] {
  const wanted = folded(typed)
  const before = formula.stages.slice(
    0,
    Math.max(
      0,
      formula.stages.findIndex(s => s.id === stage),
    ),
  )
  const stages = before.map(s => ({ name: s.name, says: choiceMarks.stage }))
  if (!wanted) return stages
  const isStage = new Set(stages.map(s => nameKey(s.name)))
  const known = names.filter(n => !isStage.has(nameKey(n))).map(name => ({ name, says: '' }))
  const met = (choice: Choice) => {
    const far = distance(choice.name, wanted)
    return far === undefined ? [] : [{ choice, far }]
  }
  const best = (choices: readonly Choice[]) => choices.flatMap(met).sort((a, b) => a.far - b.far)
  return [...best(stages), ...best(known)].slice(0, 8).map(m => m.choice)
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

import { html, nothing, type TemplateResult } from 'lit'
import { guessCountsAs } from '../../src/dough/counts-as-guess.js'
import { type Formula, nameKey } from '../../src/dough/formula.js'
import type { Larder } from '../../src/dough/larder.js'
import { counted } from '../bring-in-plan.js'

const namesShown = 20

/** The ingredients of these formulas that nobody has said anything of: no larder, no stage and no meaning that came along. */
function notKnown(formulas: readonly Formula[], larder: Larder): string[] {
  const names = new Map<string, string>()
  for (const { stages, meanings } of formulas) {
    const said = new Set([...stages.map(s => s.name), ...meanings.map(m => m.ingredient)].map(nameKey))
    for (const { ingredient } of stages.flatMap(stage => stage.lines)) {
      const key = nameKey(ingredient)
      if (key !== '' && !names.has(key) && !said.has(key) && !larder.find(ingredient))
        names.set(key, ingredient.trim())
    }
  }
  return [...names.values()]
}

const likely = (name: string): string => {
  const kind = guessCountsAs(name)
  return kind ? `${name} (most likely ${kind})` : name
}

/** Says, before anything is added, which ingredients will count as nothing but their weight. */
export function notInLarder(formulas: readonly Formula[], larder: Larder): TemplateResult | typeof nothing {
  const names = notKnown(formulas, larder)
  if (names.length === 0) return nothing
  const shown = names.slice(0, namesShown).map(likely).join(', ')
  const more = names.length - namesShown
  return html`<p class="remark unknown" role="note">
    <b>Not in the larder:</b> ${shown}${more > 0 ? ` and ${counted(more, 'more', 'more')}` : nothing}.
    ${names.length === 1 ? 'Only its weight is counted until you say what it counts as.' : 'Only their weight is counted until you say what they count as.'}
  </p>`
}

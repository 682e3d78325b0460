import { html, nothing, type TemplateResult } from 'lit'
import { allergenLists } from '../src/dough/allergen-lists.js'
import type { Allergens } from '../src/dough/larder.js'
import { allergensFor, substances } from '../src/dough/substances.js'

const none: Allergens = { us: [], eu: [], canada: [] }

/** A box for each substance the public lists name, and the words of each list for those that are ticked. */
export function allergenFields(fields: {
  readonly contains: ReadonlySet<string> // names of substances
  readonly before: Allergens | undefined // entries the ingredient came with
  readonly carriesFlour: boolean // it is a starter
  readonly readOnly: boolean
  readonly change: (contains: ReadonlySet<string>) => void
}): TemplateResult {
  const { contains, before, carriesFlour, readOnly, change } = fields
  const toggle = (name: string, on: boolean) =>
    change(new Set(on ? [...contains, name] : [...contains].filter(n => n !== name)))
  const lists = allergensFor(contains, before ?? none)
  return html`<fieldset>
    <legend>Contains, by the public allergen lists</legend>
    <div class="contains">
      ${substances.map(
        ({ name }) => html`<label class="choice">
          <input
            type="checkbox"
            .checked=${contains.has(name)}
            ?disabled=${readOnly}
            @change=${(e: Event) => toggle(name, (e.target as HTMLInputElement).checked)}
          />
          <span>${name}</span>
        </label>`,
      )}
    </div>
    ${
      allergenLists.some(({ list }) => lists[list].length)
        ? html`<dl class="lists" aria-label="How the lists name it">
            ${allergenLists.map(
              ({ list, name }) => html`<div>
                <dt>${name}</dt>
                <dd>${lists[list].join(', ') || 'not on its list'}</dd>
              </div>`,
            )}
          </dl>`
        : nothing
    }
    <p class="hint">
      ${carriesFlour ? 'A starter carries the flour it is fed with. ' : ''}For information only. The supplier's label
      and local food law decide.
    </p>
  </fieldset>`
}

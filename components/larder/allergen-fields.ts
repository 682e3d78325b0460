import { html, nothing, type TemplateResult } from 'lit'
import { type Allergens, isUnlisted } from '../../src/dough/document/larder.js'
import { allergenLists } from '../../src/dough/larder/allergen-lists.js'
import { allergensFor, type Said, substances } from '../../src/dough/larder/substances.js'

/** A box for each substance the public lists name and one for none of them, and what the lists call those that are ticked. */
export function allergenFields(fields: {
  readonly said: Said
  readonly before: Allergens | undefined // entries the ingredient came with
  readonly carriesFlour: boolean // it is a starter
  readonly readOnly: boolean
  readonly change: (said: Said) => void
}): TemplateResult {
  const { said, before, carriesFlour, readOnly, change } = fields
  const toggle = (name: string, on: boolean) =>
    change({
      contains: new Set([...said.contains].filter(n => n !== name).concat(on ? name : [])),
      none: false,
    })
  const lists = allergensFor(said, before)
  const box = (name: string, checked: boolean, tick: (on: boolean) => void) =>
    html`<label class="choice">
      <input
        type="checkbox"
        .checked=${checked}
        ?disabled=${readOnly}
        @change=${(e: Event) => tick((e.target as HTMLInputElement).checked)}
      />
      <span>${name}</span>
    </label>`
  return html`<fieldset aria-describedby="unsaid">
    <legend>Contains, by the public allergen lists</legend>
    <p class="hint unsaid" id="unsaid">
      ${lists ? '' : 'Not said yet: it stands as not known on the sheet and the card. Tick what it contains, or None of these.'}
    </p>
    <div class="contains">
      ${substances.map(({ name }) => box(name, said.contains.has(name), on => toggle(name, on)))}
      ${box('None of these', said.none, none => change({ contains: new Set(), none }))}
    </div>
    ${
      lists && !isUnlisted(lists)
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

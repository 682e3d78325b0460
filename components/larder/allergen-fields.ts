import { html, nothing, type TemplateResult } from 'lit'
import { type Allergens, isUnlisted } from '../../src/dough/document/larder.js'
import { allergenLists } from '../../src/dough/larder/allergen-lists.js'
import { allergensFor, type Said, substances } from '../../src/dough/larder/substances.js'
import { allergenWords } from './words.js'

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
    <legend>${allergenWords.contains}</legend>
    <p class="hint unsaid" id="unsaid">
      ${lists ? '' : allergenWords.notSaid}
    </p>
    <div class="contains">
      ${substances.map(({ name }) => box(name, said.contains.has(name), on => toggle(name, on)))}
      ${box(allergenWords.noneOfThese, said.none, none => change({ contains: new Set(), none }))}
    </div>
    ${
      lists && !isUnlisted(lists)
        ? html`<dl class="lists" aria-label=${allergenWords.listNames}>
            ${allergenLists.map(
              ({ list, name }) => html`<div>
                <dt>${name}</dt>
                <dd>${lists[list].join(', ') || allergenWords.notListed}</dd>
              </div>`,
            )}
          </dl>`
        : nothing
    }
    <p class="hint">${carriesFlour ? allergenWords.starterInformation : allergenWords.information}</p>
  </fieldset>`
}

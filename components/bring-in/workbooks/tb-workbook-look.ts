import { html, nothing, type TemplateResult } from 'lit'
import type { Formula } from '../../../src/dough/document/formula.js'
import type { Ingredient } from '../../../src/dough/document/larder.js'
import type { Incoming, OnDifference, RestorePlan } from '../../../src/exchange/index.js'
import { BaseElement } from '../../base/base-element.js'
import { fieldStyles } from '../../base/field-styles.js'
import { linesAsRead, linesAsReadStyles } from '../plan/lines-as-read.js'
import { decisionOf, type RestoreWish } from './restore-wish.js'
import { differingWords, lookWords, mergeWords, namesWords, replaceWords } from './words.js'
import { workbookStyles } from './workbook-styles.js'

const namesShown = 30
const choicesShown = 60 // of things that differ; for the rest both are kept

/** What a workbook file would change here, and the choice what it shall. */
export class TbWorkbookLook extends BaseElement {
  static override properties = {
    plan: { attribute: false },
    wanted: { attribute: false },
  }

  declare plan: RestorePlan
  declare wanted: RestoreWish

  #tell(change: Partial<RestoreWish>): void {
    this.dispatchEvent(new CustomEvent('tb-restore', { detail: { ...this.wanted, ...change } }))
  }

  #decide(id: string, then: OnDifference): void {
    this.#tell({ each: new Map(this.wanted.each).set(id, then) })
  }

  override render() {
    return html`
      <div class="ways" role="radiogroup" aria-label=${lookWords.whatToDo}>
        ${this.#way('merge', lookWords.merge, lookWords.mergeHint)}
        ${this.#way('replace', lookWords.replace, lookWords.replaceHint)}
      </div>
      ${this.wanted.way === 'merge' ? this.#merging() : this.#replacing()}
    `
  }

  #way(way: RestoreWish['way'], words: string, hint: string): TemplateResult {
    return html`<label class="choice">
      <input
        type="radio"
        name="way"
        value=${way}
        .checked=${this.wanted.way === way}
        @change=${() => this.#tell({ way })}
      />
      <span>${words}<small>${hint}</small></span>
    </label>`
  }

  #merging(): TemplateResult {
    const { formulas, ingredients, name, later } = this.plan
    return html`
      ${named(mergeWords.newFormulas, newOnes(formulas))}
      ${this.#differing(mergeWords.differentFormulas, formulas, item => this.#formula(item))}
      ${named(mergeWords.sameFormulas, sameOnes(formulas))}
      ${named(mergeWords.newIngredients, newOnes(ingredients))}
      ${this.#differing(mergeWords.differentIngredients, ingredients, item => this.#ingredient(item))}
      ${named(mergeWords.sameIngredients, sameOnes(ingredients))}
      ${named(mergeWords.later, later)}
      ${name?.current ? html`<p class="quiet">${mergeWords.keepsName(name.current)}</p>` : nothing}
    `
  }

  #replacing(): TemplateResult {
    const { formulas, ingredients, missing, name, scaleDiffers } = this.plan
    const changed = [...formulas, ...ingredients].filter(item => item.is === 'different')
    return html`
      ${named(replaceWords.gone, [...missing.formulas, ...missing.ingredients].map(nameOf), true)}
      ${named(
        replaceWords.changed,
        changed.map(item => nameOf(item.incoming)),
        true,
      )}
      ${named(replaceWords.isNew, [...newOnes(formulas), ...newOnes(ingredients)])}
      ${named(replaceWords.same, [...sameOnes(formulas), ...sameOnes(ingredients)])}
      ${name ? html`<p>${replaceWords.called(name.incoming, name.current)}</p>` : nothing}
      ${scaleDiffers ? html`<p>${replaceWords.scale}</p>` : nothing}
    `
  }

  #differing<T extends Formula | Ingredient>(
    heading: string,
    items: readonly Incoming<T>[],
    one: (item: Incoming<T>) => TemplateResult,
  ): TemplateResult | typeof nothing {
    const differ = items.filter(item => item.is === 'different')
    if (differ.length === 0) return nothing
    return html`<section class="differ">
      <h3>${heading} <small>${differ.length}</small></h3>
      ${differ.slice(0, choicesShown).map(one)}
      ${
        differ.length > choicesShown
          ? html`<p class="quiet">${mergeWords.restIsKept(differ.length - choicesShown)}</p>`
          : nothing
      }
    </section>`
  }

  #formula(item: Incoming<Formula>): TemplateResult {
    const { incoming, current } = item
    const size = (formula: Formula | undefined) => {
      const stages = formula?.stages ?? []
      const lines = stages.reduce((sum, stage) => sum + stage.lines.length, 0)
      return differingWords.size(stages.length, lines)
    }
    return html`<div class="one">
      <h4>${incoming.name}</h4>
      <p class="quiet">${differingWords.sizes(size(current), size(incoming))}</p>
      ${this.#decision(item)}
      <details>
        <summary>${differingWords.linesInFile}</summary>
        ${linesAsRead(incoming, this.numbers)}
      </details>
    </div>`
  }

  #ingredient(item: Incoming<Ingredient>): TemplateResult {
    return html`<div class="one">
      <h4>${item.incoming.name}</h4>
      ${this.#decision(item)}
    </div>`
  }

  #decision(item: Incoming<Formula | Ingredient>): TemplateResult {
    const { id, name } = item.incoming
    const now = decisionOf(this.wanted, item)
    const radio = (then: OnDifference, words: string) => html`<label class="choice">
      <input type="radio" name=${id} .checked=${now === then} @change=${() => this.#decide(id, then)} />
      <span>${words}</span>
    </label>`
    return html`<div class="decision" role="radiogroup" aria-label=${differingWords.whatToDo(name)}>
      ${radio('beside', differingWords.both)}${radio('take', differingWords.theirs)}${radio('keep', differingWords.mine)}
    </div>`
  }

  static override styles = [fieldStyles, linesAsReadStyles, workbookStyles]
}

const nameOf = ({ name }: { readonly name: string }): string => name
const newOnes = <T extends Formula | Ingredient>(items: readonly Incoming<T>[]) =>
  items.filter(item => item.is === 'new').map(item => item.incoming.name)
const sameOnes = <T extends Formula | Ingredient>(items: readonly Incoming<T>[]) =>
  items.filter(item => item.is === 'same').map(item => item.incoming.name)

function named(heading: string, names: readonly string[], isGrave = false): TemplateResult | typeof nothing {
  if (names.length === 0) return nothing
  return html`<section class=${isGrave ? 'names grave' : 'names'}>
    <h3>${heading} <small>${names.length}</small></h3>
    <p>${namesWords(names.slice(0, namesShown), names.length - namesShown)}</p>
  </section>`
}

customElements.define('tb-workbook-look', TbWorkbookLook)

declare global {
  interface HTMLElementTagNameMap {
    'tb-workbook-look': TbWorkbookLook
  }
}

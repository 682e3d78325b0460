import { html, nothing, type TemplateResult } from 'lit'
import type { Bake } from '../../../src/day/bench/bake.js'
import type { Day } from '../../../src/dough/document/day.js'
import type { Formula } from '../../../src/dough/document/formula.js'
import type { Ingredient } from '../../../src/dough/document/larder.js'
import type { Cleared } from '../../../src/dough/document/workbook.js'
import { readCleared } from '../../../src/dough/edits/cleared/cleared-edits.js'
import type { Incoming, OnDifference, RestorePlan } from '../../../src/exchange/index.js'
import { BaseElement } from '../../base/base-element.js'
import { fieldStyles } from '../../styles/field-styles.js'
import { linesAsRead, linesAsReadStyles } from '../plan/lines-as-read.js'
import { decisionOf, type RestoreWish } from './restore-wish.js'
import {
  bakeWords,
  dayWords,
  differingWords,
  lookWords,
  mergeWords,
  namesWords,
  replaceWords,
} from './words.js'
import { workbookStyles } from './workbook-styles.js'

const namesShown = 30
const choicesShown = 60 // of things that differ; for the rest both are kept

type Thing = Formula | Ingredient | Day

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
    const { formulas, ingredients, days, bakes, name, cleared, later, currencies } = this.plan
    return html`
      ${named(mergeWords.newFormulas, newOnes(formulas).map(nameOf))}
      ${this.#differing(mergeWords.differentFormulas, formulas, item => this.#formula(item))}
      ${named(mergeWords.sameFormulas, sameOnes(formulas).map(nameOf))}
      ${named(mergeWords.newIngredients, newOnes(ingredients).map(nameOf))}
      ${this.#differing(mergeWords.differentIngredients, ingredients, item => this.#choice(item, item.incoming.name))}
      ${named(mergeWords.sameIngredients, sameOnes(ingredients).map(nameOf))}
      ${named(mergeWords.newDays, newOnes(days).map(dayName))}
      ${this.#differing(mergeWords.differentDays, days, item => this.#choice(item, dayName(item.incoming)))}
      ${named(mergeWords.sameDays, sameOnes(days).map(dayName))}
      ${named(mergeWords.newBakes, newOnes(bakes).map(bakeName))}
      ${named(
        mergeWords.differentBakes,
        bakes.filter(({ is }) => is === 'different').map(({ incoming }) => bakeName(incoming)),
      )}
      ${named(mergeWords.cleared, cleared.map(deletedName))}
      ${named(mergeWords.later, later)}
      ${name?.current ? html`<p class="quiet">${mergeWords.keepsName(name.current)}</p>` : nothing}
      ${currencies ? html`<p>${mergeWords.otherCurrency(currencies.incoming, currencies.current)}</p>` : nothing}
    `
  }

  #replacing(): TemplateResult {
    const { formulas, ingredients, days, bakes, missing, name, cleared, currencies } = this.plan
    const { scaleDiffers, leewayDiffers } = this.plan
    const all: readonly Incoming<Thing>[] = [...formulas, ...ingredients, ...days]
    const changed = all.filter(item => item.is === 'different')
    const gone = [...missing.formulas, ...missing.ingredients, ...missing.days]
    return html`
      ${named(replaceWords.gone, gone.map(called), true)}
      ${named(
        replaceWords.changed,
        changed.map(item => called(item.incoming)),
        true,
      )}
      ${named(replaceWords.bakesGone, missing.bakes.map(bakeName), true)}
      ${named(replaceWords.isNew, [...newOnes(all).map(called), ...newOnes(bakes).map(bakeName)])}
      ${named(replaceWords.same, sameOnes(all).map(called))}
      ${named(mergeWords.cleared, cleared.map(deletedName))}
      ${name ? html`<p>${replaceWords.called(name.incoming, name.current)}</p>` : nothing}
      ${currencies ? html`<p>${replaceWords.currency(currencies.incoming)}</p>` : nothing}
      ${leewayDiffers ? html`<p>${replaceWords.leeway}</p>` : nothing}
      ${scaleDiffers ? html`<p>${replaceWords.scale}</p>` : nothing}
    `
  }

  #differing<T extends Thing>(
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

  #choice(item: Incoming<Ingredient | Day>, name: string): TemplateResult {
    return html`<div class="one">
      <h4>${name}</h4>
      ${this.#decision(item)}
    </div>`
  }

  #decision(item: Incoming<Thing>): TemplateResult {
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
const dayName = ({ name, date }: Day): string => dayWords(name, date)
const deletedName = (cleared: Cleared): string => readCleared(cleared)?.thing.name ?? ''
const bakeName = ({ name, at }: Bake): string => bakeWords(name, at)
const called = (thing: Thing): string => ('breads' in thing ? dayName(thing) : thing.name)
const newOnes = <T>(items: readonly Incoming<T>[]): T[] =>
  items.filter(item => item.is === 'new').map(item => item.incoming)
const sameOnes = <T>(items: readonly Incoming<T>[]): T[] =>
  items.filter(item => item.is === 'same').map(item => item.incoming)

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

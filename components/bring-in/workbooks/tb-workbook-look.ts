import { html, nothing, type TemplateResult } from 'lit'
import type { Day } from '../../../src/dough/document/day.js'
import type { Formula } from '../../../src/dough/document/formula.js'
import type { Ingredient } from '../../../src/dough/document/larder.js'
import type { Incoming, OnDifference, RestorePlan } from '../../../src/exchange/index.js'
import { BaseElement } from '../../base/base-element.js'
import { fieldStyles } from '../../base/field-styles.js'
import { counted } from '../plan/bring-in-plan.js'
import { linesAsRead, linesAsReadStyles } from '../plan/lines-as-read.js'
import { decisionOf, type RestoreWish } from './restore-wish.js'
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
      <div class="ways" role="radiogroup" aria-label="What to do with the file">
        ${this.#way('merge', 'Add to this workbook', 'All that is here stays, but for what you choose below.')}
        ${this.#way('replace', 'Replace everything here', 'This workbook becomes what the file holds.')}
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
    const { formulas, ingredients, days, name, later } = this.plan
    return html`
      ${named('New formulas, to be added', newOnes(formulas).map(nameOf))}
      ${this.#differing('Formulas that differ from yours', formulas, item => this.#formula(item))}
      ${named('The same here and in the file', sameOnes(formulas).map(nameOf))}
      ${named('New in the larder', newOnes(ingredients).map(nameOf))}
      ${this.#differing('Of the larder, unlike yours', ingredients, item => this.#choice(item, item.incoming.name))}
      ${named('Of the larder, the same', sameOnes(ingredients).map(nameOf))}
      ${named('Days, to be added', newOnes(days).map(dayName))}
      ${this.#differing('Days that differ from yours', days, item => this.#choice(item, dayName(item.incoming)))}
      ${named('Days, the same', sameOnes(days).map(dayName))}
      ${named('For a later Tarebook, kept as it is', later)}
      ${name?.current ? html`<p class="quiet">The workbook keeps its name, ${name.current}.</p>` : nothing}
    `
  }

  #replacing(): TemplateResult {
    const { formulas, ingredients, days, missing, name, scaleDiffers, leewayDiffers } = this.plan
    const all: readonly Incoming<Thing>[] = [...formulas, ...ingredients, ...days]
    const changed = all.filter(item => item.is === 'different')
    const gone = [...missing.formulas, ...missing.ingredients, ...missing.days]
    return html`
      ${named('Gone from here, not in the file', gone.map(called), true)}
      ${named(
        'Changed to what the file says',
        changed.map(item => called(item.incoming)),
        true,
      )}
      ${named('New', newOnes(all).map(called))}
      ${named('The same', sameOnes(all).map(called))}
      ${name ? html`<p>The workbook is called ${name.incoming || 'nothing'}, no longer ${name.current || 'nothing'}.</p>` : nothing}
      ${leewayDiffers ? html`<p>How far waits may move is taken from the file.</p>` : nothing}
      ${scaleDiffers ? html`<p>How your scale weighs is taken from the file.</p>` : nothing}
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
          ? html`<p class="quiet">Of ${counted(differ.length - choicesShown, 'more', 'more')} both are kept, or what is here in the larder.</p>`
          : nothing
      }
    </section>`
  }

  #formula(item: Incoming<Formula>): TemplateResult {
    const { incoming, current } = item
    const size = (formula: Formula | undefined) => {
      const stages = formula?.stages ?? []
      const lines = stages.reduce((sum, stage) => sum + stage.lines.length, 0)
      return `${counted(stages.length, 'stage')}, ${counted(lines, 'line')}`
    }
    return html`<div class="one">
      <h4>${incoming.name}</h4>
      <p class="quiet">Yours: ${size(current)}. In the file: ${size(incoming)}.</p>
      ${this.#decision(item, 'Keep both', 'Take the file’s', 'Keep mine')}
      <details>
        <summary>The lines in the file</summary>
        ${linesAsRead(incoming, this.numbers)}
      </details>
    </div>`
  }

  #choice(item: Incoming<Ingredient | Day>, name: string): TemplateResult {
    return html`<div class="one">
      <h4>${name}</h4>
      ${this.#decision(item, 'Keep both', 'Take the file’s', 'Keep mine')}
    </div>`
  }

  #decision(item: Incoming<Thing>, both: string, theirs: string, mine: string): TemplateResult {
    const { id, name } = item.incoming
    const now = decisionOf(this.wanted, item)
    const radio = (then: OnDifference, words: string) => html`<label class="choice">
      <input type="radio" name=${id} .checked=${now === then} @change=${() => this.#decide(id, then)} />
      <span>${words}</span>
    </label>`
    return html`<div class="decision" role="radiogroup" aria-label="What to do with ${name}">
      ${radio('beside', both)}${radio('take', theirs)}${radio('keep', mine)}
    </div>`
  }

  static override styles = [fieldStyles, linesAsReadStyles, workbookStyles]
}

const nameOf = ({ name }: { readonly name: string }): string => name
/** `Saturday oven, 2026-12-05` */
const dayName = ({ name, date }: Day): string => `${name}, ${date}`
const called = (thing: Thing): string => ('breads' in thing ? dayName(thing) : thing.name)
const newOnes = <T extends Thing>(items: readonly Incoming<T>[]): T[] =>
  items.filter(item => item.is === 'new').map(item => item.incoming)
const sameOnes = <T extends Thing>(items: readonly Incoming<T>[]): T[] =>
  items.filter(item => item.is === 'same').map(item => item.incoming)

function named(heading: string, names: readonly string[], isGrave = false): TemplateResult | typeof nothing {
  if (names.length === 0) return nothing
  return html`<section class=${isGrave ? 'names grave' : 'names'}>
    <h3>${heading} <small>${names.length}</small></h3>
    <p>${names.slice(0, namesShown).join(' · ')}${names.length > namesShown ? ` and ${names.length - namesShown} more` : nothing}</p>
  </section>`
}

customElements.define('tb-workbook-look', TbWorkbookLook)

declare global {
  interface HTMLElementTagNameMap {
    'tb-workbook-look': TbWorkbookLook
  }
}

import { html, type TemplateResult } from 'lit'
import type { Composition, Ingredient } from '../../src/dough/document/larder.js'
import { withOwnLabel } from '../../src/dough/label/own-label.js'
import { type NumberStyle, showNumber } from '../base/numbers.js'
import { readNumber } from '../typed/typed-numbers.js'
import { onLabelWords, unitWords } from './words.js'

export const nutrients = ['fat', 'saturates', 'carbohydrate', 'sugars', 'fibre', 'protein', 'salt'] as const
export type Nutrient = (typeof nutrients)[number]
export type LabelField = `label-${Nutrient}`

/** What a supplier's label says of an ingredient, as it is typed: grams in 100 g. */
export type OnLabel = Readonly<Record<'madeOf' | Nutrient, string>>
export type OnLabelErrors = Partial<Record<LabelField, string>>

const must: readonly Nutrient[] = ['fat', 'carbohydrate', 'fibre', 'protein', 'salt']

export function onLabelOf(known: Ingredient | undefined, numbers: NumberStyle): OnLabel {
  const { madeOf = '', composition } = known ? withOwnLabel(known) : {}
  const shown = (of: Nutrient) => {
    const part = composition?.[of]
    return part === undefined ? '' : showNumber(part * 100, numbers)
  }
  return { madeOf, ...(Object.fromEntries(nutrients.map(of => [of, shown(of)])) as Record<Nutrient, string>) }
}

const isEmpty = (typed: OnLabel): boolean => nutrients.every(of => !typed[of].trim())

/** What is wrong with the figures; those that a label always has are wanted once there are any. */
export function onLabelErrors(typed: OnLabel, numbers: NumberStyle): OnLabelErrors {
  if (isEmpty(typed)) return {}
  const errors: OnLabelErrors = {}
  for (const of of nutrients) {
    const text = typed[of].trim()
    const value = readNumber(text, numbers)
    if (!text) {
      if (must.includes(of)) errors[`label-${of}`] = onLabelWords.wanted
    } else if (value === undefined || value < 0 || value > 100)
      errors[`label-${of}`] = onLabelWords.notGrams(text)
  }
  return errors
}

/** What an ingredient keeps of it; a figure left as it was stays as it is kept. */
export function onLabelIn(
  typed: OnLabel,
  known: Ingredient | undefined,
  numbers: NumberStyle,
): Pick<Ingredient, 'madeOf' | 'composition'> {
  const madeOf = typed.madeOf.trim()
  const before = onLabelOf(known, numbers)
  const kept = known && withOwnLabel(known).composition
  const part = (of: Nutrient) =>
    typed[of] === before[of] ? kept?.[of] : (readNumber(typed[of], numbers) ?? Number.NaN) / 100
  const parts = nutrients.flatMap(of => (typed[of].trim() ? [[of, part(of)] as const] : []))
  return {
    ...(madeOf && { madeOf }),
    ...(parts.length && { composition: Object.fromEntries(parts) as unknown as Composition }),
  }
}

/** The fields for what a label says: what it is made of, and what 100 g of it hold. */
export function labelFields(fields: {
  readonly typed: OnLabel
  readonly start: OnLabel | undefined // before anything was typed
  readonly errors: OnLabelErrors
  readonly typedAs: (field: string) => string
  readonly readOnly: boolean
  readonly change: (part: Partial<OnLabel>) => void
  readonly check: (field: LabelField) => void
}): TemplateResult {
  const { typed, start, errors, typedAs, readOnly, change, check } = fields
  const figure = (of: Nutrient) => {
    const id = `label-${of}` as const
    return html`<div class="field number">
      <label for=${id}>${onLabelWords[of]}<span class="unseen">${unitWords.g}</span></label>
      <span class="with-unit">
        <input
          id=${id}
          data-typed=${typedAs(id)}
          inputmode="decimal"
          autocomplete="off"
          .defaultValue=${start?.[of] ?? ''}
          .value=${typed[of]}
          ?readonly=${readOnly}
          aria-invalid=${errors[id] ? 'true' : 'false'}
          aria-describedby="${id}-error"
          @input=${(e: InputEvent) => change({ [of]: (e.target as HTMLInputElement).value })}
          @change=${() => check(id)}
        />
        <span aria-hidden="true">g</span>
      </span>
      <p class="error" id="${id}-error">${errors[id]}</p>
    </div>`
  }
  return html`<fieldset>
    <legend>${onLabelWords.legend}</legend>
    <div class="field">
      <label for="madeOf">${onLabelWords.madeOf}</label>
      <textarea
        id="madeOf"
        data-typed=${typedAs('madeOf')}
        rows="2"
        aria-describedby="madeOf-hint"
        .defaultValue=${start?.madeOf ?? ''}
        .value=${typed.madeOf}
        ?readonly=${readOnly}
        @input=${(e: InputEvent) => change({ madeOf: (e.target as HTMLTextAreaElement).value })}
      ></textarea>
      <p class="hint" id="madeOf-hint">${onLabelWords.madeOfHint}</p>
    </div>
    <p class="hint">${onLabelWords.holdsHint}</p>
    <div class="numbers">${nutrients.map(figure)}</div>
  </fieldset>`
}

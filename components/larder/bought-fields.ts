import { html, nothing, type TemplateResult } from 'lit'
import { currencies, currencyName, moneyText } from '../../src/day/trade/currency.js'
import { type NumberStyle, showNumber } from '../base/numbers.js'
import { readNumber, readWeight } from '../typed/typed-numbers.js'
import {
  type BoughtField,
  boughtFields,
  type Draft,
  type DraftErrors,
  weightAsTyped,
} from './ingredient-draft.js'
import { boughtWords } from './words.js'

/** What the fields are shown of, and who is told of them. */
interface Shown {
  readonly draft: Draft
  readonly before: Draft | undefined // as it was opened
  readonly errors: DraftErrors
  readonly numbers: NumberStyle
  readonly currency: string
  readonly readOnly: boolean
  readonly open: boolean // it is shown whatever the baker does
  typedAs(field: string): string
  set(part: Partial<Draft>): void
  check(field: BoughtField): void
  payIn(currency: string): void
}

/** Whether something is said of how it is bought, or something wrong. */
export const isBoughtSaid = ({ pack, price, stock, supplier }: Draft, errors: DraftErrors): boolean =>
  [pack, price, stock, supplier].some(text => text.trim() !== '') || boughtFields.some(field => errors[field])

/** What a pack holds and costs, whose it is and what is there: put away until one of them is said. */
export function boughtFieldsOf(shown: Shown): TemplateResult {
  const { draft, readOnly, typedAs, set } = shown
  return html`<details class="bought" ?open=${shown.open}>
    <summary>${boughtWords.bought}</summary>
    <p class="hint">${boughtWords.hint}</p>
    <div class="numbers">
      ${field(shown, 'pack')} ${field(shown, 'price')} ${field(shown, 'stock')}
      <div class="field number">
        <label for="supplier">${boughtWords.supplier}</label>
        <input
          id="supplier"
          data-typed=${typedAs('supplier')}
          autocomplete="off"
          .defaultValue=${shown.before?.supplier ?? ''}
          .value=${draft.supplier}
          ?readonly=${readOnly}
          @input=${(e: InputEvent) => set({ supplier: (e.target as HTMLInputElement).value })}
        />
      </div>
    </div>
    <p class="hint each">${perKilo(shown)}</p>
    <div class="field currency">
      <label for="currency">${boughtWords.currency}</label>
      ${currencyChoice(shown)}
      <p class="hint" id="currency-hint">${boughtWords.currencyHint}</p>
    </div>
  </details>`
}

function currencyChoice({ currency, numbers, readOnly, payIn }: Shown): TemplateResult {
  const codes = currencies()
  const all = codes.includes(currency) ? codes : [currency, ...codes]
  return html`<select
    id="currency"
    ?disabled=${readOnly}
    aria-describedby="currency-hint"
    @change=${(e: Event) => payIn((e.target as HTMLSelectElement).value)}
  >
    ${all.map(
      code =>
        html`<option value=${code} .selected=${code === currency}>${boughtWords.named(code, currencyName(code, numbers.language))}</option>`,
    )}
  </select>`
}

/** What a kilogram costs, where pack and price say so. */
function perKilo({ draft, numbers, currency }: Shown): string {
  const [price, pack] = [readNumber(draft.price, numbers), readWeight(draft.pack, numbers)]
  if (price === undefined || !pack || price < 0 || pack < 0) return ''
  const money = (amount: number) => moneyText(amount, currency, numbers.language)
  return boughtWords.each(money((price / pack) * 1000), `${money(price)} ÷ ${weightAsTyped(pack, numbers)}`)
}

function field(shown: Shown, name: BoughtField): TemplateResult {
  const { draft, before, errors, numbers, currency, readOnly, typedAs, set, check } = shown
  const isPrice = name === 'price'
  return html`<div class="field number">
    <label for=${name}>${boughtWords[name]}${isPrice ? html`<span class="unseen">, ${currency}</span>` : nothing}</label>
    <span class="with-unit">
      <input
        id=${name}
        data-typed=${typedAs(name)}
        inputmode=${isPrice ? 'decimal' : 'text'}
        autocomplete="off"
        placeholder=${name === 'pack' ? boughtWords.packExample(showNumber(25, numbers)) : ''}
        .defaultValue=${before?.[name] ?? ''}
        .value=${draft[name]}
        ?readonly=${readOnly}
        aria-invalid=${errors[name] ? 'true' : 'false'}
        aria-describedby="${name}-error"
        @input=${(e: InputEvent) => set({ [name]: (e.target as HTMLInputElement).value })}
        @change=${() => check(name)}
      />
      ${isPrice ? html`<span aria-hidden="true">${currency}</span>` : nothing}
    </span>
    <p class="error" id="${name}-error">${errors[name]}</p>
  </div>`
}

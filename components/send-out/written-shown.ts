import { html, nothing, type TemplateResult } from 'lit'
import type { FormName, Written } from './send-out-forms.js'
import { columnWords, csvWords, writtenWords } from './words.js'

const aboutCsv = html`<details>
    <summary>${csvWords.columns}</summary>
    <dl>
      ${columnWords.map(
        ([column, holds]) => html`<div>
          <dt>${column}</dt>
          <dd>${holds}</dd>
        </div>`,
      )}
    </dl>
  </details>
  <details>
    <summary>${csvWords.opening}</summary>
    <p>${csvWords.decimalCommas}</p>
    <p>${csvWords.apostrophes}</p>
  </details>`

/** What there is to know of a form beyond its sentence. */
export function aboutForm(form: FormName, hasStates: boolean): TemplateResult | typeof nothing {
  const states =
    hasStates && form !== 'workbook' ? html`<p class="hint">${writtenWords.statesStay}</p>` : nothing
  return html`${states}${form === 'csv' ? aboutCsv : nothing}`
}

const whole = new Intl.NumberFormat('en')
const linesShown: Partial<Record<FormName, number>> = { csv: 9, link: 6 }

/** What is sent, to look at: as text in a field, or as what it looks like. */
export function showWritten(of: {
  readonly form: FormName
  readonly file: string
  readonly written: Written | undefined
}): TemplateResult {
  const { form, file, written } = of
  const problem = written?.problem ? html`<p class="problem" role="alert">${written.problem}</p>` : nothing
  if (written?.problem && !written.text) return html`${problem}`
  if (form === 'table')
    return html`<div class="field written">
      <p class="label" id="looks">${writtenWords.asItLooks}</p>
      <div class="page" role="region" aria-labelledby="looks" tabindex="0" .innerHTML=${written?.html ?? ''}></div>
    </div>`
  const text = written?.text ?? ''
  const length =
    form === 'link' && text
      ? html`<p class="hint" id="length">${writtenWords.characters(whole.format(text.length))}</p>`
      : nothing
  return html`<div class="field written">
    <label for=${form}>${form === 'link' ? writtenWords.link : writtenWords.file(file)}</label>
    <textarea
      id=${form}
      rows=${linesShown[form] ?? 14}
      readonly
      wrap=${form === 'link' ? 'soft' : 'off'}
      spellcheck="false"
      aria-busy=${written === undefined}
      aria-describedby=${form === 'link' ? 'length' : nothing}
      .value=${text}
    ></textarea>
    ${length}
  </div>${problem}`
}

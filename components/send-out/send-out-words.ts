import { html, nothing, type TemplateResult } from 'lit'
import type { FormName, Written } from './send-out-forms.js'

/** The columns of the CSV file, for those who open it elsewhere. */
const columnWords: readonly (readonly [column: string, holds: string])[] = [
  [
    'formula, stage, ingredient',
    'Where the line is, and what it is of. The name of an earlier stage is that stage.',
  ],
  ['amount', 'As you typed it: 70%, 20 g, 2 tsp. This is what Tarebook reads back.'],
  ['note', 'Your note on the line.'],
  [
    'counts as',
    'Flour, water, salt, starter with its hydration, or other, so that it means the same in a reader’s workbook.',
  ],
  [
    'setting',
    'Only on rows that are not lines: the flour weight, a note on the formula, whether a stage ferments.',
  ],
  [
    'grams, percent, whole dough percent',
    'Worked out, for people who read it. Not read back while there is an amount.',
  ],
]

const aboutCsv = html`<details>
    <summary>What the columns hold</summary>
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
    <summary>Opening it in an office program</summary>
    <p>
      A program set to decimal commas may put a whole row into one cell. There, import the file as text, and choose
      the comma as separator, the point as decimal sign and UTF-8 as encoding.
    </p>
    <p>
      Text that such a program could take for a calculation leaves with an apostrophe in front. Bringing the file
      in takes it away again.
    </p>
  </details>`

/** What there is to know of a form beyond its sentence. */
export function aboutForm(form: FormName, hasStates: boolean): TemplateResult | typeof nothing {
  const states =
    hasStates && form !== 'workbook'
      ? html`<p class="hint">Kept states stay here. The workbook file takes them along.</p>`
      : nothing
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
  if (written?.problem) return html`<p class="problem" role="alert">${written.problem}</p>`
  if (form === 'table')
    return html`<div class="field written">
      <p class="label" id="looks">As it looks where it is pasted</p>
      <div class="page" role="region" aria-labelledby="looks" tabindex="0" .innerHTML=${written?.html ?? ''}></div>
    </div>`
  const text = written?.text ?? ''
  const length =
    form === 'link' && text
      ? html`<p class="hint" id="length">${whole.format(text.length)} characters.
        Chat programs cut long links; a file goes through everywhere.</p>`
      : nothing
  return html`<div class="field written">
    <label for=${form}>${form === 'link' ? 'The link' : html`The file, <span class="file-name">${file}</span>`}</label>
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
  </div>`
}

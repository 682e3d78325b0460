import { html, type TemplateResult } from 'lit'
import { askWords } from './words.js'

/** Where what arrives comes from: a file chosen, or a text pasted. */
export const asking = (
  pasted: string,
  onFile: (file: File) => void,
  onPasted: (text: string) => void,
): TemplateResult => html`<p>${askWords.about}</p>
  <div class="field">
    <label for="file">${askWords.file}</label>
    <input
      id="file"
      type="file"
      accept=".csv,.tsv,.txt,.md,.json,.html,.htm,text/csv,text/tab-separated-values,text/plain,text/markdown,application/json,text/html"
      data-first
      @change=${(e: Event) => {
        const file = (e.target as HTMLInputElement).files?.[0]
        if (file) onFile(file)
      }}
    />
  </div>
  <div class="field">
    <label for="pasted">${askWords.paste}</label>
    <textarea
      id="pasted"
      data-typed="pasted"
      .defaultValue=${''}
      rows="7"
      spellcheck="false"
      autocapitalize="off"
      .value=${pasted}
      @input=${(e: InputEvent) => onPasted((e.target as HTMLTextAreaElement).value)}
    ></textarea>
  </div>`

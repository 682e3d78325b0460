import { html, type TemplateResult } from 'lit'

/** Where what arrives comes from: a file chosen, or a text pasted. */
export const asking = (
  pasted: string,
  onFile: (file: File) => void,
  onPasted: (text: string) => void,
): TemplateResult => html`<p>
    A formula file, a table from anywhere, a recipe in words, or a whole workbook: Tarebook works out what it
    is. Nothing is added before you have seen how it was read.
  </p>
  <div class="field">
    <label for="file">Choose a file, or drop one here</label>
    <input
      id="file"
      type="file"
      accept=".csv,.tsv,.txt,.md,.json,text/csv,text/tab-separated-values,text/plain,text/markdown,application/json"
      data-first
      @change=${(e: Event) => {
        const file = (e.target as HTMLInputElement).files?.[0]
        if (file) onFile(file)
      }}
    />
  </div>
  <div class="field">
    <label for="pasted">Or paste a recipe, a table or a link</label>
    <textarea
      id="pasted"
      rows="7"
      spellcheck="false"
      autocapitalize="off"
      .value=${pasted}
      @input=${(e: InputEvent) => onPasted((e.target as HTMLTextAreaElement).value)}
    ></textarea>
  </div>`

import { html, type TemplateResult } from 'lit'
import { atBenchWords } from './words.js'

/** What moved, and what no longer fits: of several the first can be read at once, the others when it is opened. */
export function benchNotices(moved: string, late: readonly string[]): TemplateResult {
  // That nothing moved is worth a line only where there is nothing else to say.
  const isWorth = moved && (moved !== atBenchWords.nothingMoved || late.length === 0)
  const all = [
    ...(isWorth ? [{ words: moved, look: 'moved' }] : []),
    ...late.map(words => ({ words, look: 'warn' })),
  ]
  const said = ({ words, look }: (typeof all)[number]) => html`<p class=${look}>${words}</p>`
  const [first, ...more] = all
  return html`<div role="status" class="status">
    ${
      first && more.length
        ? html`<details class=${late.length ? 'warn' : ''}>
            <summary><span class=${first.look}>${first.words}</span> <small>${atBenchWords.more(more.length)}</small></summary>
            ${more.map(said)}
          </details>`
        : all.map(said)
    }
  </div>`
}

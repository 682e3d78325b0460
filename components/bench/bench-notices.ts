import { html, type TemplateResult } from 'lit'
import { atBenchWords } from './words.js'

/** A sentence about the times of the day. */
interface Said {
  readonly words: string
  readonly look: 'moved' | 'warn'
}

/** What moved, and what no longer fits. */
function saidOf(moved: string, late: readonly string[]): Said[] {
  // That nothing moved is worth a line only where there is nothing else to say.
  const isWorth = moved && (moved !== atBenchWords.nothingMoved || late.length === 0)
  return [
    ...(isWorth ? [{ words: moved, look: 'moved' } as const] : []),
    ...late.map(words => ({ words, look: 'warn' }) as const),
  ]
}

const shown = ({ words, look }: Said): TemplateResult => html`<p class=${look}>${words}</p>`

/** What moved, and what no longer fits: of several the first can be read at once, the others when it is opened. */
function together(all: readonly Said[], isOld: boolean): TemplateResult {
  const [first, ...more] = all
  return html`<div role="status" class="status ${isOld ? 'old' : ''}">
    ${
      first && more.length
        ? html`<details class=${all.some(({ look }) => look === 'warn') ? 'warn' : ''}>
            <summary><span class=${first.look}>${first.words}</span> <small>${atBenchWords.more(more.length)}</small></summary>
            ${more.map(shown)}
          </details>`
        : all.map(shown)
    }
  </div>`
}

/**
 * Where it is said what moved and what no longer fits: above a thing to do, until work on it begins. From then on nothing
 * comes or goes there, for that would move what is weighed from under the finger; what is new stands beside the buttons.
 */
export class BenchNotices {
  #key = '' // of the thing to do
  #above: readonly Said[] = []

  /** `isAnswer`: what moved was asked for with the buttons. */
  of(
    key: string,
    isBegun: boolean,
    moved: string,
    late: readonly string[],
    isAnswer: boolean,
  ): { readonly above: TemplateResult; readonly beside: TemplateResult } {
    const all = saidOf(moved, late)
    const isOther = key !== this.#key
    if (isOther || !isBegun) this.#above = all
    this.#key = key
    const words = new Set(this.#above.map(one => one.words))
    const fresh = all.filter(one => !words.has(one.words))
    const isOld = all.length > 0 && fresh.length === all.length
    const beside = isAnswer ? all.filter(one => fresh.includes(one) || one.look === 'moved') : fresh
    return {
      above: together(this.#above, isOld),
      beside: html`<div class="answer">${beside.map(shown)}</div>`,
    }
  }
}

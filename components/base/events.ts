import type { Transaction, Workbook } from '../../src/dough/document/workbook.js'
import type { CellName } from '../../src/dough/workings/working.js'

/** Makes the transaction on the workbook as it stands; may throw Refusal; undefined: nothing to do. */
export type Edit = (workbook: Workbook) => Transaction | undefined

/** What an element asks of the app when the baker edits. The app fills in `refusal` before dispatch returns. */
export interface EditRequest {
  readonly edit: Edit
  readonly place?: unknown // where the baker is, to be given back on undo
  refusal?: string // why nothing was changed, in a sentence
}

/**
 * Asks the app to make an edit, at once. Returns the sentence of a refusal, or undefined when it is done.
 * Every change of the workbook goes this way.
 */
export function askEdit(from: EventTarget, edit: Edit, place?: unknown): string | undefined {
  const request: EditRequest = place === undefined ? { edit } : { edit, place }
  from.dispatchEvent(new CustomEvent('tb-edit', { detail: request, bubbles: true, composed: true }))
  return request.refusal
}

/** Asks the app to say a sentence to those who listen and, for a moment, to those who look. */
export function say(from: EventTarget, sentence: string): void {
  from.dispatchEvent(new CustomEvent('tb-say', { detail: sentence, bubbles: true, composed: true }))
}

/** Other things elements ask of the app, without a change of the workbook. */
export type Wish =
  | {
      readonly want: 'undo' | 'redo' | 'new' | 'take-over' | 'use-new-version' | 'close-working'
    }
  | { readonly want: 'bring-in'; readonly restore?: boolean } // restore: a workbook file is chosen, and put in place of nothing or of examples at once
  | { readonly want: 'larder' | 'cleared' | 'help' } // cleared: what was deleted
  | {
      readonly want: 'send-out' | 'card' | 'label' | 'handout' // to print: a formula on one page, what a bread is made of, formulas for a class
      readonly formula?: string // id; left out: the open one
      readonly formulas?: readonly string[] // ids of several
      readonly day?: string // id: a handout of what it bakes
    }
  | { readonly want: 'open'; readonly formula: string; readonly toName?: true } // toName: a new one, to be named at once
  | { readonly want: 'define'; readonly ingredient: string } // a name the larder does not know, or one to change
  | { readonly want: 'go'; readonly to: 'shelf' | 'sheet' | 'tally' | 'days' }
  | { readonly want: 'find'; readonly stage?: string; readonly line?: string } // brings a place of the sheet into view
  // sets two formulas beside each other; `state` is a kept state of `left`, and right is left as it is now unless said
  | { readonly want: 'beside'; readonly left?: string; readonly right?: string; readonly state?: string }
  | { readonly want: 'working'; readonly cell: CellName } // shows how a number came about
  | { readonly want: 'light'; readonly lines: readonly string[] } // ids of the lines a working speaks of; none: no more

export function wish(from: EventTarget, detail: Wish): void {
  from.dispatchEvent(new CustomEvent('tb-wish', { detail, bubbles: true, composed: true }))
}

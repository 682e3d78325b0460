import type { Formula, Problem } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { larderWith } from '../../dough/larder/usual-larder.js'
import type { Watch } from '../tables/index.js'
import { arrivalFrom } from './arrival-source.js'
import type { Arrival, Arrived, Way } from './arriving.js'
import type { RememberedColumns } from './remembered-columns.js'
import { type ArrivedRow, type ArrivedStep, arrivedSteps } from './rows.js'
import { arrivingProblem } from './words.js'

/** How a text is to be read. What is left out is worked out. */
export interface ArriveOptions extends Way {
  readonly larder?: Larder // whose names are known; left out: the usual one
  readonly remembered?: RememberedColumns // what was said of tables with the same headings before
  readonly watch?: Watch // told how far it is
  readonly earlier?: Arrivals // what the same text came to before, to be read in another way: what it is is not worked out again
}

/** What a pasted or dropped text came to; nothing of it is kept anywhere yet. */
export interface Arrivals {
  readonly formulas: readonly Formula[] // as they would be put on the shelf; none where the text is refused
  readonly rows: readonly ArrivedRow[] // the lines of those formulas, each beside the text it was read from
  readonly steps: readonly ArrivedStep[] // the steps of their methods, each beside the words it was read from
  readonly problems: readonly Problem[] // what was not understood, by code, place and sentence; a refused text is one error
  readonly arrived: Arrived // what the text is, and what screens show of it: columns, totals, what no line was made of
  readonly remark?: string // on the file's encoding, in a sentence
}

/** What was worked out of a text, for reading it in another way. */
const arrivals = new WeakMap<Arrivals, { readonly arrival: Arrival; readonly remark?: string }>()

/**
 * Reads a text that was pasted, or the bytes of a file that was dropped, as the page does: formulas that Tarebook wrote
 * (CSV, plain text, Markdown, HTML, a workbook file), a table from elsewhere, or a recipe in words; `as` says which, where
 * that is known. A recipe's own method, English or French, comes as steps of the stages they belong to, with the times,
 * temperatures and repetitions its sentences state; what is guessed of a step has its reason. Numbers are read whichever decimal sign they have; every line says what was guessed of it, each guess by
 * the code of the reader it comes from (`LineReason` of a recipe, the `Reason` of a table) with its figures and its
 * sentence. Never throws. Needs no browser.
 */
export function arrive(source: string | Uint8Array, options: ArriveOptions = {}): Arrivals {
  const { larder = larderWith([]), remembered = {}, watch, earlier, as, mapping, batch } = options
  const from =
    (earlier && arrivals.get(earlier)) ??
    arrivalFrom(typeof source === 'string' ? { text: source } : { bytes: source }, larder, remembered)
  if ('refusal' in from) return refused(from.refusal)
  const way: Way = { ...(as ? { as } : {}), ...(mapping ? { mapping } : {}), ...(batch ? { batch } : {}) }
  const arrived = from.arrival.read(way, watch)
  const formulas =
    arrived.as === 'refused'
      ? []
      : arrived.as === 'workbook'
        ? (arrived.workbook?.formulas ?? [])
        : arrived.formulas
  const came: Arrivals =
    arrived.as === 'refused'
      ? refused(arrived.why)
      : {
          formulas,
          rows: from.arrival.rows(),
          steps: arrivedSteps(formulas, arrived.as === 'recipe' ? arrived.steps : []),
          problems: arrived.problems,
          arrived,
          ...(from.remark === undefined ? {} : { remark: from.remark }),
        }
  arrivals.set(came, from)
  return came
}

const refused = (why: string): Arrivals => ({
  formulas: [],
  rows: [],
  steps: [],
  problems: [{ ...arrivingProblem({ code: 'notRead', sentence: why }), where: {}, severity: 'error' }],
  arrived: { as: 'refused', why },
})

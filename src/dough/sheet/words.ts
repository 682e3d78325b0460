import { type Sentences, type Worded, wording } from '../../engine/index.js'

/** Why a sheet has no figure. `path` and `holds` are in words; `why` is another room's reason, where that says it all. */
export type SheetDiagnostic =
  | { readonly code: 'figuresInCircle'; readonly path: readonly string[]; readonly holds: readonly string[] }
  | { readonly code: 'aroseElsewhere'; readonly at: string; readonly why: Worded }
  | { readonly code: 'noFlourYet' | 'noFlourLine' | 'jottingTwice' }
  | { readonly code: 'jottingAlsoALine'; readonly ingredient: string; readonly jotting: string }

const spelled = 12 // steps of a circle that are spelled out

export const sheetSentences: Sentences<SheetDiagnostic> = {
  figuresInCircle: ({ path, holds }) => {
    const way = holds.length
      ? `Release the hold (${holds.join(', ')}), or give one of them a number.`
      : 'Give one of them a number.'
    const more = path.length - spelled
    const steps = more > 1 ? [...path.slice(0, spelled - 1), `${more} more`, path.at(-1)] : path
    return `${steps.join(' is worked out from ')}: they wait for each other. ${way}`
  },
  aroseElsewhere: ({ at, why }) => `${at}: ${why.message}`,
  noFlourYet: 'There is no flour in the formula yet.',
  noFlourLine: 'The final dough has no flour line of its own.',
  jottingTwice: 'There is another jotting of this name; the first one is used.',
  jottingAlsoALine: ({ ingredient, jotting }) =>
    `${ingredient} is an ingredient as well; amounts that say ${jotting} mean the jotting.`,
}

/** A diagnostic of a sheet with its sentence. */
export const sheetProblem: (diagnostic: SheetDiagnostic) => Worded<SheetDiagnostic> = wording(sheetSentences)

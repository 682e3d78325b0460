import { type GraphDiagnostic, type Sentences, wording } from '../../engine/index.js'

/** What the graph finds without knowing what the cells are; a circle is told by the words of its cells (`words.ts`). */
export type FigureDiagnostic = Exclude<GraphDiagnostic, { code: 'cellsInCircle' }>

export const figureSentences: Sentences<FigureDiagnostic> = {
  unknownCell: ({ name }) => `Nothing here is called "${name}".`,
  notWorkedOutYet: ({ name }) => `"${name}" is worked out when this edit is done.`,
  noResult: 'This has no result: something in it is divided by zero, or is too large to work with.',
}

/** What the graph has found, with its sentence. */
export const figureProblem = wording(figureSentences)

import { type Sentences, wording } from '../expression/diagnostic.js'

/** Why a cell has no number. Cells go by their names. */
export type GraphDiagnostic =
  | { readonly code: 'unknownCell' | 'notWorkedOutYet'; readonly name: string }
  | { readonly code: 'noResult' }
  | { readonly code: 'cellsInCircle'; readonly path: readonly string[] } // each takes from the next, the first once more at the end

const spelled = 12 // names of a cycle spelled out before it is cut short

export const graphSentences: Sentences<GraphDiagnostic> = {
  unknownCell: ({ name }) => `Nothing here is called "${name}".`,
  notWorkedOutYet: ({ name }) => `"${name}" is worked out when this edit is done.`,
  noResult: 'This has no result: something in it is divided by zero, or is too large to work with.',
  cellsInCircle: ({ path }) => {
    const last = path.length - 1
    const left = last > spelled ? spelled - 2 : last
    let sentence = `${path[0]} takes from ${path[1]}`
    for (let i = 2; i <= left; i++) sentence += `, which takes from ${path[i]}`
    if (left < last)
      sentence += `, and so on through ${last - 1 - left} more, the last of which takes from ${path[0]}`
    return `${sentence}.`
  },
}

/** A diagnostic of the graph with its sentence. */
export const graphProblem = wording(graphSentences)

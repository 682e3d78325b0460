import { type Sentences, wording } from '../../engine/index.js'
import type { Batch } from './batch.js'
import { grams, tidy } from './words.js'

/** A batch in a few words: `6 × 900 g`, `3 × 852 g, round tin`, `5,400 g of dough`, `all of 310 g levain`. `weigh` says a weight, rounded unless otherwise said. */
export function batchWords(batch: Batch, weigh = grams): string {
  switch (batch.make) {
    case 'as written':
      return 'as written'
    case 'pieces':
    case 'baked pieces': {
      const baked = batch.make === 'baked pieces' ? ' baked' : ''
      const isNamed = batch.pieces.some(({ name }) => name)
      if (isNamed)
        return batch.pieces
          .map(p => [`${p.count} × ${weigh(p.weight)}${baked}`, p.name].filter(Boolean).join(', '))
          .join('; ')
      return batch.pieces.map(p => `${p.count} × ${weigh(p.weight)}`).join(' + ') + baked
    }
    case 'dough':
      return `${weigh(batch.grams)} of dough`
    case 'flour':
      return `from ${weigh(batch.grams)} of flour`
    case 'all of':
      return `all of ${weigh(batch.grams)} ${batch.ingredient}`
    case 'factor':
      return `${tidy(batch.factor)} times as written`
  }
}

/** What a batch, a scale or a stage cannot be. */
export interface DocumentDiagnostic {
  readonly code:
    | 'scaleStepNotAboveZero'
    | 'fineBelowNegative'
    | 'lossOutOfRange'
    | 'piecesNotAboveZero'
    | 'factorNotAboveZero'
    | 'allOfNothing'
    | 'batchNotAboveZero'
}

export const documentSentences: Sentences<DocumentDiagnostic> = {
  scaleStepNotAboveZero: 'The steps of a scale are numbers of grams above 0.',
  fineBelowNegative: 'The fine step is for weights below a number of grams, or below 0 for none.',
  lossOutOfRange: 'A loss is a percentage from 0 to below 100.',
  piecesNotAboveZero: 'Pieces are a number above 0 times a weight above 0.',
  factorNotAboveZero: 'A factor is a number above 0.',
  allOfNothing: 'Say of which ingredient all is to be made.',
  batchNotAboveZero: 'The weight to make is a number of grams above 0.',
}

/** A diagnostic of a document's parts with its sentence. */
export const documentProblem = wording(documentSentences)

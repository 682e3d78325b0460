import type { LeftOut, Listed } from '../../dough/data/left-out.js'
import { type Sentences, wording } from '../../engine/index.js'
import type { Damage } from './damage.js'

/** What some fields are called where they are spoken of. */
const fieldNames: Readonly<Record<string, string>> = {
  flourWeight: 'flour weight',
  keptSettings: 'list of kept settings',
  otherNames: 'list of other names',
  countsAs: 'what it counts as',
  keepBack: 'keep-back',
  noneListed: 'note on allergens',
  states: 'list of kept states',
  stages: 'list of stages',
  lines: 'list of lines',
}

const several: Partial<Record<Listed, string>> = { 'kept state': 'kept states' }

/** `a batch, 2 holds` */
function listOf(left: readonly LeftOut[]): string {
  return [...new Set(left.map(inWords))].join(', ')
}

function inWords(what: LeftOut): string {
  switch (what.code) {
    case 'fieldNotUnderstood':
      return fieldNames[what.field] ?? what.field
    case 'itemsUnreadable':
      return what.count === 1 ? what.listed : `${what.count} ${several[what.listed] ?? `${what.listed}s`}`
    case 'idsRepeated':
      return 'two parts of one id'
  }
}

const called = (what: string, name: string | undefined): string =>
  name === undefined ? `${/^[aeiou]/.test(what) ? 'An' : 'A'} ${what}` : `The ${what} “${name}”`

const kept = 'What is stored of it is kept, and can be downloaded as it is.'

export const damageSentences: Sentences<Damage> = {
  shelfUnreadable:
    'The order of the shelf, the name of the workbook or the larder could not be read. The formulas are here. What is stored can be downloaded as it is.',
  formulaMissing:
    'A formula of the shelf is missing from the browser’s storage. A copy you downloaded can be opened.',
  dayMissing: 'A day is missing from the browser’s storage. A copy you downloaded can be opened.',
  clearedUnreadable: ({ name }) => `${called('deleted thing', name)} could not be read. ${kept}`,
  bakeUnreadable: ({ name }) => `${called('bake', name)} could not be read. ${kept}`,
  formulaUnreadable: ({ name }) => `${called('formula', name)} could not be read. ${kept}`,
  dayUnreadable: ({ name }) => `${called('day', name)} could not be read. ${kept}`,
  ingredientUnreadable: ({ name }) =>
    `${called('ingredient', name)} of the larder could not be read. ${kept}`,
  formulaDamaged: ({ name, left }) => damaged('formula', name, left),
  dayDamaged: ({ name, left }) => damaged('day', name, left),
  ingredientDamaged: ({ name, left }) => damaged('ingredient', name, left),
}

const damaged = (what: string, name: string, left: readonly LeftOut[]): string =>
  `The ${what} “${name}” is damaged. Not read of it: ${listOf(left)}. The rest is here; what was stored is kept, and can be downloaded as it is.`

/** A damage with its sentence. */
export const damageProblem = wording(damageSentences)

/** The name of what was changed here as well, beside what another tab made of it. */
export const fromAnotherTab = (name: string): string => `${name} (from another tab)`

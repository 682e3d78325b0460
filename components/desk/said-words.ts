const past: Readonly<Record<string, string>> = {
  Bring: 'Brought',
  Feed: 'Fed',
  Hold: 'Held',
  Jot: 'Jotted',
  Keep: 'Kept',
  Make: 'Made',
  Plan: 'Planned',
  Take: 'Took',
  Write: 'Wrote',
}
const regular = new Set(
  'Add Bake Change Clear Delete Duplicate Move Paste Release Remove Rename Replace Unmark'.split(' '),
)

/** What an edit is called when it can be undone, once it is done: `Add Salt` → `Added Salt`. */
const done = (label: string): string =>
  label.replace(/^\p{L}+(?! of\b)/u, verb =>
    regular.has(verb) ? `${verb.replace(/e$/, '')}ed` : (past[verb] ?? verb),
  )

/** What is said of an edit to those who listen. Weights come with their digits, percentages with their sign. */
export const saidWords = {
  done,
  undone: (label: string): string => `Undone: ${label}`,
  doneAgain: (label: string): string => `Done again: ${label}`,
  /** What was done, and the hydration that it moved. */
  withHydration: (done: string, reading: string, hydration: string): string =>
    `${done}; ${reading} ${hydration}`,
  /** Hydrations with their signs. */
  soakerCountedIn: (withIt: string, without: string): string =>
    `The soaker’s water counted in: ${withIt} with it, ${without} without.`,
  /** What was done, and a sentence on what it led to. */
  also: (done: string, sentence: string): string => `${done}. ${sentence}`,
  /** `Salt held at 2 %; Salt gives, 22.3 grams` */
  held: (hold: string, ingredient: string, grams: string): string =>
    `${capital(hold)}; ${ingredient} gives, ${grams} grams`,
  heldInProportion: (hold: string): string => `${capital(hold)}; every line gives, in proportion`,
  /** `amount` where it was not typed in grams: `Salt set to 2 %, 20 grams`. */
  lineSet: (ingredient: string, amount: string, grams: string): string =>
    `${ingredient || 'A line'} set to ${amount ? `${amount}, ` : ''}${grams} grams`,
  lineProblem: (ingredient: string, sentence: string): string => `${ingredient}: ${sentence}`,
  /** `beside`: the name of the line above it, or '' at the top. */
  lineMoved: (ingredient: string, to: number, of: number, stage: string, beside: string): string =>
    `${ingredient || 'A line'} moved to line ${to} of ${of} in ${stage}, ${beside ? `below ${beside}` : 'at the top'}`,
  stageMoved: (stage: string, to: number, of: number): string => `${stage} moved to stage ${to} of ${of}`,
} as const

const capital = (words: string): string => `${words[0]!.toUpperCase()}${words.slice(1)}`

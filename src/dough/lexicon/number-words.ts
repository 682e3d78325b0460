/**
 * Numbers in words of English, French and German kitchens, as many as an amount is typed with; `cardinals.ts` has
 * those of recipes besides. Keys as `folded` gives them: lower case, no accents.
 */

export const set = (words: string): ReadonlySet<string> => new Set(words.split(' '))
/** Words that count on from a number. */
export const counted = (words: string, from = 0, step = 1) =>
  words.split(' ').map((word, at) => [word, from + at * step] as const)
const all = <V>(words: string, value: V) => words.split(' ').map(word => [word, value] as const)

/** Articles are numbers only before a measure or something counted. */
export const articles = set('a an un une ein eine einen einem einer')

export const numberWords: ReadonlyMap<string, number> = new Map([
  ...counted('zero one two three four five six seven eight nine ten eleven twelve'),
  ...counted('zero un deux trois quatre cinq six sept huit neuf dix onze douze'),
  ...counted('null eins zwei drei vier funf sechs sieben acht neun zehn elf zwolf'),
  ...all([...articles].join(' '), 1),
])

export const halfWords = set('half demi demie halb halbe halber halbes halben')
/** Parts of one by what it is parted into. */
export const partWords: ReadonlyMap<string, number> = new Map([
  ...all(`halves ${[...halfWords].join(' ')}`, 2),
  ...all('third thirds tiers drittel', 3),
  ...all('quarter quarters quart quarts viertel', 4),
  ...all('eighth eighths huitieme huitiemes achtel', 8),
])

/** Words for so many together. */
export const dozens: ReadonlyMap<string, number> = new Map([
  ...all('dozen douzaine dutzend', 12),
  ...counted('dizaine vingtaine trentaine quarantaine cinquantaine', 10, 10),
  ['quinzaine', 15],
  ['centaine', 100],
])

/** Words that say how a typed number or measure is meant; `kitchen-measures.ts` has those of recipes besides. */
export const typedAboutWords = set(
  'about approx approximately roughly around ca circa env environ etwa zirka ungefahr rund heaped level scant rounded generous good small large medium',
)
export const aboutSigns = set('~ ≈ ± ∼')

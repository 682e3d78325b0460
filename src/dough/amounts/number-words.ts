/** Numbers in words of English, French and German kitchens. Keys as `folded` gives them: lower case, no accents. */

const set = (words: string): ReadonlySet<string> => new Set(words.split(' '))
const counted = (words: string, from = 0, step = 1) =>
  words.split(' ').map((word, at) => [word, from + at * step] as const)
const all = <V>(words: string, value: V) => words.split(' ').map(word => [word, value] as const)

/** Articles are numbers only before a measure or something counted. */
export const articles = set('a an un une ein eine einen einem einer')

export const numberWords: ReadonlyMap<string, number> = new Map([
  ...counted('zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen'),
  ...counted('fifteen sixteen seventeen eighteen nineteen', 15),
  ...counted('twenty thirty forty fifty sixty seventy eighty ninety', 20, 10),
  ...counted('zero un deux trois quatre cinq six sept huit neuf dix onze douze treize quatorze quinze seize'),
  ...counted('vingt trente quarante cinquante soixante', 20, 10),
  ...counted('null eins zwei drei vier funf sechs sieben acht neun zehn elf zwolf dreizehn vierzehn'),
  ...counted('funfzehn sechzehn siebzehn achtzehn neunzehn', 15),
  ...counted('zwanzig dreissig vierzig funfzig sechzig siebzig achtzig neunzig', 20, 10),
  ...all('vingts', 20),
  ...[...articles].map(word => [word, 1] as const),
])

export const halfWords = set('half demi demie halb halbe halber halbes halben')
/** Parts of one by what it is parted into. */
export const partWords: ReadonlyMap<string, number> = new Map([
  ...all('halves', 2),
  ...[...halfWords].map(word => [word, 2] as const),
  ...all('third thirds tiers drittel', 3),
  ...all('quarter quarters quart quarts viertel', 4),
  ...all('eighth eighths huitieme huitiemes achtel', 8),
])
export const isHundred = (word: string): boolean => hundreds.has(word)
export const isThousand = (word: string): boolean => thousands.has(word)
const hundreds = set('hundred cent cents hundert')
const thousands = set('thousand mille tausend')

/** Words for so many together. */
export const dozens: ReadonlyMap<string, number> = new Map([
  ...all('dozen douzaine dutzend', 12),
  ...all('quinzaine', 15),
  ...counted('dizaine vingtaine trentaine quarantaine cinquantaine', 10, 10),
  ...all('centaine', 100),
])

/** Words that say how a number or a measure is meant: about, heaped, small. */
export const aboutWords = set(
  'about approx approximately roughly around circa ca c environ env scant heaped heaping level levelled generous good rounded full bare nearly almost exactly precisely ras rase rases bombee bombees bonne bonnes bon bons grosse grosses gros petite petites petit petits large small big little belle belles leger legere heavy healthy hefty fat plump packed demi-sel pleine presque maximum minimum max etwa zirka ungefahr rund knapp knappe knapper gut gute guter gestrichen gestrichene gestrichener gehauft gehaufte gehaufter kleine kleiner kleines grosser grosses leicht',
)
/** Of these, those that stand behind a measure as well: `2 cuillères à soupe bombées`. */
export const measureWords = set(
  'heaped heaping level levelled leveled rounded packed scant ras rase rases bombe bombee bombees pleine pleines comble gestrichen gehauft',
)
export const aboutSigns = set('~ ≈ ± ∼')

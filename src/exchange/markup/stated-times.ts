/** What a time is said of. `other`: of work that is neither baking nor all of it. */
type Work = 'bake' | 'prep' | 'total' | 'other'

/** Times of a recipe as schema.org has them, ISO 8601 durations. */
export interface RecipeTimes {
  readonly prepTime?: string
  readonly cookTime?: string
  readonly totalTime?: string
}

/** A work that a sentence names, with what it says of it before the next. */
interface Said {
  readonly work: Work | undefined
  readonly times: (number | undefined)[] // minutes; undefined where it is a range, a bound or one of several
  readonly words: string
  readonly isPart: boolean // they speak of a part of the work
}

const count = String.raw`\d{1,4}(?:[.,]\d+)?(?:\s*[½¼¾]|\s+[1-3]\/[2-4])?|[½¼¾]`
const hourUnit = String.raw`(?:hours?|hrs?|heures?|stunden?|std\.?|h)(?![\p{L}])`
const minuteUnit = String.raw`(?:minutes?|minuten|mins?\.?|mn)(?![\p{L}])`
// `2 h 30`: minutes without their unit, unless another one follows.
const minutesAfter = String.raw`\s*(?:and|et|und)?\s*(?<more>[0-5]?\d)(?![\d.,/:]{0,4}\d)(?:\s*${minuteUnit}|(?!\s*(?:[°%×–—-]|(?:x|g|kg|ml|l|c|f|h|to|or)(?!\p{L}))))`
const time = String.raw`(?<![\d.,:/\p{L}])(?:(?<clock>\d{1,2}:[0-5]\d)\s*${hourUnit}|(?<hours>${count})\s*-?${hourUnit}(?:${minutesAfter})?|(?<minutes>${count})\s*-?${minuteUnit})`
const word = (...stems: string[]) => String.raw`(?<![-\p{L}])(?:${stems.join('|')})(?!\p{L})`
const works: Readonly<Record<Work, string>> = {
  bake: word('bak(?:e|es|ing)', 'cook(?:s|ing)?', 'cuire', 'cuisson', 'backen', 'backzeit'),
  prep: word('prep(?:aration)?', 'préparation', 'vorbereitung'),
  total: word('total', 'gesamtzeit'),
  other: word(
    'mix(?:es|ing)?|knead(?:s|ing)?|autoly[sz]e[sd]?|proo?f(?:s|ing)?|prov(?:e|es|ing)|rises?|rising|rest(?:s|ing)?',
    'ferment(?:s|ing|ation)?|retard(?:s|ing)?|soak(?:s|ing)?|cool(?:s|ing)?|chill(?:s|ing)?|wait|leave|steam(?:s|ing)?',
    'boil(?:s|ing)?|simmer|scald|toast|roast|fold(?:s|ing)?|shap(?:e|es|ing)|divide|(?:pre-?)?heat(?:s|ing)?|fry|freeze|thaw',
    'pétri[rt]|pétrissage|repose[rz]?|lever|levée|apprêt|pointage|refroidir|ressuer|autolyser?|préchauffe[rz]?',
    'kneten|ruhen|gare|gehen|abkühlen|reifen|vorheizen',
  ),
}
const parts = new RegExp(
  [time, ...Object.entries(works).map(([work, stems]) => `(?<${work}>${stems})`)].join('|'),
  'giu',
)

// What makes a time one of several: a range, a bound, an interval, a part of something longer.
const before =
  /(?:\d\s*(?:–|—|-|\/|to|or|bis|oder|à|ou)|at least|at most|up to|more than|less than|within|after|every|each|another|further|first|last|next|final|other|min\.?|max\.?|mindestens|höchstens|au moins|après|nach|alle|encore|noch)\s*(?:the\s*)?$/iu
const after =
  /^\s*(?:(?:–|—|-|\/|to|or|bis|oder|à|ou)\s*(?!\d+\s*°)\d|\+|apart|each|more|longer|before|after|later|earlier|or (?:more|so|until)|at least|at most|per|into|avant|après|plus|vor|nach)/iu
const isPart = /\b(?:then|uncover(?:ed)?|without|lid|covered|steam|remove|lower|reduce|puis|dann|ensuite)\b/i
const lastThen = /[\s,]{0,4}(?:(?:and|et|und) )?(?:then|puis|dann|ensuite)\s*$/i
const isGoneOn = /\b(?:uncover(?:ed)?|lid|remove the cover|without steam|let (?:out )?the steam)\b/i

const fractions: Readonly<Record<string, number>> = { '½': 0.5, '¼': 0.25, '¾': 0.75 }

function countOf(text: string): number {
  const [, whole = '', sign, over, under] =
    /^(\d+(?:[.,]\d+)?)?\s*(?:([½¼¾])|([1-3])\/([2-4]))?$/u.exec(text) ?? []
  const part = sign ? fractions[sign]! : over ? Number(over) / Number(under) : 0
  return Number(whole.replace(',', '.')) + part
}

function minutesOf({ clock, hours, more, minutes }: Readonly<Record<string, string | undefined>>): number {
  if (clock) {
    const [hour, minute] = clock.split(':').map(Number)
    return hour! * 60 + minute!
  }
  return hours ? countOf(hours) * 60 + Number(more ?? 0) : countOf(minutes!)
}

const near = 24 // characters about a time that may say it is one of several
const longest = 20_000 // characters of a note; what is longer is no note on a loaf

const sentencesOf = (text: string): string[] =>
  text
    .slice(0, longest)
    .replace(/[^\S\n\r\u2028\u2029]+/gu, ' ')
    .split(/(?<=[.!?…;]) |[\n\r\u2028\u2029]+/u)

/** What a sentence says of works, in their order; `undefined` for a time before any of them. */
function worksIn(sentence: string): Said[] {
  const said: Said[] = []
  const found = [...sentence.matchAll(parts)]
  for (const [at, { index, 0: text, groups = {} }] of found.entries()) {
    const to = index + text.length
    const work = (Object.keys(works) as Work[]).find(name => groups[name] !== undefined)
    if (work || said.length === 0) {
      const end = found.slice(at + 1).find(({ groups = {} }) => Object.keys(works).some(name => groups[name]))
      const words = sentence.slice(to, end?.index).replace(end ? lastThen : /$/, '')
      said.push({ work, times: [], words, isPart: isPart.test(words) })
    }
    if (work) continue
    const isOneOfSeveral =
      before.test(sentence.slice(Math.max(0, index - near), index)) ||
      after.test(sentence.slice(to, to + near))
    const minutes = Math.round(minutesOf(groups))
    const last = said.at(-1)!
    last.times.push(isOneOfSeveral || minutes === 0 || last.isPart ? undefined : minutes)
  }
  return said
}

/** `PT2H30M` of 150 minutes, `PT1M30S` of 1.5. */
export function isoDuration(minutes: number): string {
  const seconds = Math.round(minutes * 60)
  const parts = [Math.floor(seconds / 3600), Math.floor((seconds % 3600) / 60), seconds % 60]
  return `PT${parts.map((part, at) => (part ? `${part}${'HMS'[at]}` : '')).join('')}`
}

/**
 * How long a step takes by its own words, in minutes: where one work is named, one time follows it and nothing says
 * that this is a range, a bound, an interval or a part (`30 min apart`, `the first 10 min`, `then`). Undefined else.
 */
export function minutesOfStep(text: string): number | undefined {
  const [only, ...others] = sentencesOf(text).flatMap(worksIn)
  const isOne = others.length === 0 && only?.times.length === 1
  return isOne && (only.work === 'bake' || only.work === 'other') ? only.times[0] : undefined
}

// A label's time follows it at once: `Total time: 18 h`, but not `in total`.
const isLabel = /^\s*(?:time|temps|zeit)?\s*:?\s*\d/iu

/** The times said of one work; undefined where it is named without one, or with one that is no certain one. */
const timesOf = (work: Work, notes: readonly string[]): (number | undefined)[] =>
  notes
    .flatMap(sentencesOf)
    .flatMap(worksIn)
    .filter(said => said.work === work && (work === 'bake' || isLabel.test(said.words)))
    .flatMap(({ times }) => (times.length > 0 ? times : [undefined]))

/**
 * The times that notes state outright. Baking: where all notes name it once, with one time (`Bake at 240 °C for 40 min`,
 * also `about 40 min`). Preparing, and all of it: only where they are called so (`Prep: 30 min`, `Total time: 18 h`); a
 * sum of steps would be none, since mixing and shaping have no time. A range (`40–45 min`), a bound (`at least`), more than one time
 * and a bake in parts (`20 min with the lid, then …`) are left out: markup has no words for them.
 */
export function statedTimes(notes: readonly string[]): RecipeTimes {
  const one = (work: Work): number | undefined => {
    const minutes = timesOf(work, notes)
    return minutes.length === 1 ? minutes[0] : undefined
  }
  const [prep, bake, all] = [
    one('prep'),
    notes.some(n => isGoneOn.test(n)) ? undefined : one('bake'),
    one('total'),
  ]
  const isLess = all !== undefined && all < (prep ?? 0) + (bake ?? 0)
  return {
    ...(prep !== undefined && { prepTime: isoDuration(prep) }),
    ...(bake !== undefined && { cookTime: isoDuration(bake) }),
    ...(all !== undefined && !isLess && { totalTime: isoDuration(all) }),
  }
}

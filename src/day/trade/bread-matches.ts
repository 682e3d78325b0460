import { folded } from '../../dough/lexicon/folded.js'

/** A formula as far as an order speaks of it. */
export interface Orderable {
  readonly id: string
  readonly name: string
}

/** Which formula a name in an order means. */
export interface Match {
  readonly formula: Orderable | undefined // undefined: it is to be asked
  readonly isWhole: boolean // it is the formula's name, not only words of it
  readonly near: readonly Orderable[] // what it may mean, the nearest first; empty where it is sure
}

const mostNear = 5

/** A word without its accents and without what makes several of it: `ryes` as `rye`, `loaves` as `loav`. */
const stem = (word: string): string =>
  word.length > 3 ? word.replace(/(?:es|s|x)$/, '').replace(/e$/, '') : word

const wordsOf = (name: string): string[] =>
  folded(name.normalize('NFKC'))
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean)
    .map(stem)

/** How many signs have to be put in, left out, changed or turned about to come from one text to another. */
export function apart(a: string, b: string): number {
  let [before, last] = [[] as number[], Array.from({ length: b.length + 1 }, (_, i) => i)]
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const changed = last[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)
      row[j] = Math.min(changed, last[j]! + 1, row[j - 1]! + 1)
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        row[j] = Math.min(row[j]!, before[j - 2]! + 1)
    }
    before = last
    last = row
  }
  return last[b.length]!
}

/** Whether every word that was written begins a word of the name, each another. */
function isPart(written: readonly string[], name: readonly string[]): boolean {
  const left = [...name]
  return written.every(word => {
    const at = left.findIndex(one => one === word || (word.length >= 3 && one.startsWith(word)))
    if (at < 0) return false
    left.splice(at, 1)
    return true
  })
}

/** How far what was written is from a name, by its nearest words; undefined where it is too far to be a slip. */
function slip(written: readonly string[], name: readonly string[]): number | undefined {
  const whole = apart(written.join(' '), name.join(' '))
  const each = written.map(word => Math.min(...name.map(one => apart(word, one))))
  const isNear = each.every((far, i) => far <= Math.max(1, Math.floor(written[i]!.length / 3)))
  if (isNear) return each.reduce((sum, far) => sum + far, 0) + 0.001 * whole
  return whole <= Math.max(1, Math.floor(name.join(' ').length / 3)) ? whole : undefined
}

/**
 * The formula that is meant by a name. One of the whole name goes first; where only words of it are written, it is the one that
 * has them, and of several those `first` among themselves. What is written otherwise is never guessed: near names are offered.
 */
export function matchBread(
  written: string,
  all: readonly Orderable[],
  isFirst: (formula: Orderable) => boolean,
): Match {
  const words = wordsOf(written)
  if (words.length === 0) return { formula: undefined, isWhole: false, near: [] }
  const known = all.map(formula => ({ formula, words: wordsOf(formula.name) }))
  const choose = (found: readonly Orderable[], isWhole: boolean): Match | undefined => {
    const first = found.filter(isFirst)
    const among = first.length > 0 ? first : found
    if (among.length === 0) return undefined
    if (among.length === 1) return { formula: among[0]!, isWhole, near: [] }
    return { formula: undefined, isWhole: false, near: among.slice(0, mostNear) }
  }
  const same = known.filter(one => one.words.join(' ') === words.join(' ')).map(({ formula }) => formula)
  const parts = known.filter(one => isPart(words, one.words)).map(({ formula }) => formula)
  const sure = choose(same, true) ?? choose(parts, false)
  if (sure) return sure
  const near = known
    .flatMap(one => {
      const far = slip(words, one.words)
      return far === undefined ? [] : [{ formula: one.formula, far: far - (isFirst(one.formula) ? 0.5 : 0) }]
    })
    .sort((a, b) => a.far - b.far)
    .slice(0, mostNear)
    .map(({ formula }) => formula)
  return { formula: undefined, isWhole: false, near }
}

import { nameKey } from '../../dough/document/formula.js'
import { type Token, tokensOf } from '../../dough/lexicon/text-tokens.js'
import { distinct } from '../values/distinct.js'
import { kindOfWord, namesEarlierStage } from '../values/stage-kinds.js'

/** A stage that a method is read beside. The last of them is the final dough. */
export interface MethodStage {
  readonly name: string
  readonly lines: readonly string[] // ingredients or names of earlier stages, as they stand in the formula
  readonly flours?: ReadonlySet<number> // places of the lines that are flour
}

// Words of names that many ingredients have.
const general = new Set(
  'the a of and or with in for all fresh fine coarse white whole dark light strong plain soft hard warm cold cool hot ripe active dry dried instant raw large small sea table purpose grain ground toasted roasted unsalted salted extra virgin organic baker bakers de du des la le les l d et a au aux en pour avec blanc blanche blanches complet complete fin fine gros mou tiede froid froide chaud chaude frais fraiche sec seche instantanee type bio natural'.split(
    ' ',
  ),
)

const singular = (key: string): string =>
  key.length > 3 && !key.endsWith('ss') ? key.replace(/(?:(?<=[sxo])es|s)$/, '') : key
const isPlural = (key: string): boolean => key !== singular(key)

const keysOf = (name: string): string[] =>
  tokensOf(name)
    .filter(({ kind }) => kind === 'word')
    .flatMap(({ key }) => key.split('-'))
    .map(singular)

/** A stage is called by what kind it is: of a seed soaker `soaker`. */
function stageKeys(name: string): string[] {
  const keys = keysOf(name)
  const kinds = keys.filter(namesEarlierStage)
  return kinds.length > 0 ? kinds : keys
}

/** A line as it can be named: its words, and the name by which a step adds it; undefined where commas in it would part it. */
interface Known {
  readonly at: number
  readonly keys: ReadonlySet<string>
  readonly called: string | undefined
}

/** What a sentence names of a stage's lines. */
export interface LinesNamed {
  readonly lines: readonly number[] // by their places, those that are certain
  readonly unsure: string | undefined // a word that several lines could be meant by
}

const restOf =
  /\b(?:(?:the\s+)?(?:remaining|other)\s+ingredients|(?:the\s+)?rest\s+of\s+the\s+ingredients|(?:le\s+)?reste\s+des\s+ingredients|(?:les\s+)?autres\s+ingredients|everything\s+else|tous\s+les\s+autres)\b/
const allOf =
  /\b(?:all\s+(?:of\s+)?(?:the\s+)?ingredients|all\s+ingredients|tous\s+les\s+ingredients|everything|le\s+tout)\b/
const butFor = /\b(?:but|except(?:\s+for)?|apart\s+from|sauf|hormis)\s+([^.;]*)/
const second = new Set(
  'remaining rest second held reserved reste restant restante deuxieme reservee'.split(' '),
)

const mostMeant = 8 // lines of one name that a word is looked up among

/** Finds the lines of a stage that sentences name. */
export class LineNames {
  readonly #lines: readonly Known[]
  readonly #byKey = new Map<string, Known[]>()
  readonly #fermenting: readonly Known[]
  #free: readonly Known[]
  readonly entered = new Set<number>() // lines that have gone in at an earlier step

  /** `earlier`: names of stages, by which a line takes all of one. */
  constructor(stage: MethodStage, earlier: readonly string[] = []) {
    const stages = new Set(earlier.map(nameKey))
    const names = distinct(stage.lines)
    this.#lines = stage.lines.map((name, at) => ({
      at,
      keys: new Set(stages.has(nameKey(name)) ? stageKeys(name) : keysOf(name)),
      called: /[,;]/.test(name) || name.trim() === '' ? undefined : names[at]!,
    }))
    for (const known of this.#lines) {
      const any = stage.flours?.has(known.at) ? flourKeys : []
      for (const key of new Set([...known.keys, ...any])) {
        const found = this.#byKey.get(key)
        if (found) found.push(known)
        else this.#byKey.set(key, [known])
      }
    }
    this.#fermenting = this.#lines
      .filter(({ keys }) => [...keys].some(key => kindOfWord(key) === 'ferments'))
      .slice(0, 2)
    this.#free = this.#lines
  }

  /** How a step adds a line: `Water (2)` for the second of a name. */
  calledOf(line: number): string | undefined {
    return this.#lines[line]?.called
  }

  has(key: string): boolean {
    return this.#byKey.has(key)
  }

  named(plain: string): LinesNamed {
    const lines = new Set<number>()
    let unsure: string | undefined
    const free = (known: Known) => !this.entered.has(known.at) && !lines.has(known.at)
    if (restOf.test(plain) || allOf.test(plain)) {
      const [, but = ''] = butFor.exec(plain) ?? []
      const without = new Set(but ? this.named(but).lines : [])
      this.#free = this.#free.filter(free)
      return { lines: this.#free.flatMap(({ at }) => (without.has(at) ? [] : [at])), unsure: undefined }
    }
    const tokens = tokensOf(plain)
    tokens.forEach((token, i) => {
      if (token.kind !== 'word' || general.has(token.key)) return
      const found = this.#of(token, tokens, i).filter(({ at }) => !lines.has(at))
      if (found.length === 0) return
      if (isRest(tokens, i)) {
        const later = found.filter(free)
        // `the rest of the water`: of one line only, part of it went in before
        if (later.length === 1 && found.length > 1) lines.add(later[0]!.at)
        return
      }
      const sameName = new Set(found.map(({ keys }) => [...keys].join(' ')))
      if (found.length === 1) lines.add(found[0]!.at)
      else if (sameName.size === 1) {
        const next = found.find(free)
        if (next) lines.add(next.at)
      } else if (isPlural(token.key) || isAll(tokens, i) || isFlour(token))
        for (const { at } of found) lines.add(at)
      else unsure ??= token.text
    })
    return { lines: [...lines], unsure }
  }

  /** The lines that a word may mean: those whose name has it, narrowed by the words about it. */
  #of(token: Token, tokens: readonly Token[], i: number): readonly Known[] {
    const key = singular(token.key)
    const found = this.#having(key)
    if (found.length === 0) {
      // `the starter` where the dough takes a levain
      const isStarter = namesEarlierStage(key) && kindOfWord(key) === 'ferments'
      return isStarter && this.#fermenting.length === 1 ? this.#fermenting : []
    }
    if (found.length < 2) return found
    const near = tokens.slice(Math.max(0, i - 3), i + 4).map(t => singular(t.key))
    const fit = (known: Known) => [...known.keys].filter(k => near.includes(k)).length
    const most = Math.max(...found.map(fit))
    const best = found.filter(known => fit(known) === most)
    return most > 1 && best.length < found.length ? best : found
  }

  /** The lines with a word in their name, of many those that have not gone in yet. */
  #having(key: string): readonly Known[] {
    const found = this.#byKey.get(key) ?? []
    if (found.length <= mostMeant) return found
    let gone = 0
    while (gone < found.length - 1 && this.entered.has(found[gone]!.at)) gone++
    if (gone > 0) found.splice(0, gone)
    return found.slice(0, mostMeant)
  }
}

const flourKeys = ['flour', 'farine']
const isFlour = ({ key }: Token): boolean => singular(key) === 'flour' || singular(key) === 'farine'
const between = new Set("of the de du la le les l d ' ’ des".split(' '))

/** `the rest of the water`, `l’eau restante` */
function isRest(tokens: readonly Token[], at: number): boolean {
  let before = at - 1
  while (before >= 0 && between.has(tokens[before]!.key)) before--
  return second.has(tokens[before]?.key ?? '') || second.has(tokens[at + 1]?.key ?? '')
}

const isAll = (tokens: readonly Token[], at: number): boolean =>
  tokens
    .slice(Math.max(0, at - 3), at)
    .some(({ key }) => key === 'all' || key === 'both' || key === 'tous' || key === 'toutes')

import { tokensOf } from '../../dough/lexicon/text-tokens.js'
import { kindOfWord } from '../values/stage-kinds.js'
import type { SaidAction } from './actions.js'
import { LineNames, type MethodStage } from './lines-in-words.js'

/** To which stage a clause belongs. `isGuess`: nothing said so. */
export interface StageFound {
  readonly stage: number
  readonly isGuess: boolean
}

const fillers = new Set('for the of a an le la les l du de d des pour my your our step stage'.split(' '))
const singular = (key: string): string => key.replace(/s$/, '')
const wordsIn = (text: string): string[] =>
  tokensOf(text)
    .filter(({ kind, key }) => kind === 'word' && !fillers.has(key))
    .map(({ key }) => singular(key))

const making = String.raw`(?:to\s+)?(?:make|making|prepare|preparing|build|building|feed|feeding|refresh|refreshing|start|set\s+up|prepare[rz]|fai(?:re|tes)|monte[rz]|rafraichi(?:r|ssez)|nourri(?:r|ssez)|realise[rz]|for|pour|build)`
const before = new RegExp(
  String.raw`(?:^|[\s,;(])(?:${making}|(?:all\s+)?(?:the\s+)?(?:\w+\s+)?ingredients\s+(?:for|of)|ingredients\s+(?:du|de\s+la|pour|des?)|(?:mix|combine|stir|melange[rz])\s+(?:up\s+|together\s+)?(?:all\s+)?)\s*(?:up\s+)?(?:the|your|a|an|le|la|les|l'|du|de\s+la|de\s+l'|un|une|votre|ton)?\s*(?:\w+\s+)?$`,
)
const mixing = /(?:mix|combine|stir|melange[rz])\s+[^,]*$/
const joins = /^\s*(?:,|and\b|with\b|into\b|in\b|to\b|et\b|avec\b|dans\b|a\s+la\b|&)/
// `la farine et l’eau du poolish`, but no part of it
const ofStage =
  /(?<!\b(?:half|rest|all|moitie|reste|tiers|quart|g|kg)\s+)\b(?:of\s+(?:the|your)|du|de\s+la|de\s+l')\s*$/
const begins = /^\s*(?:[:–—-]|\(|,)/
const ready =
  /\b(?:when|once|as\s+soon\s+as|after|if|lorsque|quand|des\s+que|une\s+fois(?:\s+que)?|apres)\s+(?:\S+\s+){0,3}$/
const another =
  /\b(?:the\s+)?(?:next|following)\s+(?:day|morning|evening)|\b(?:on\s+)?(?:the\s+)?(?:baking\s+day|day\s+of\s+baking)|\ble\s+lendemain|\ble\s+jour\s+(?:meme|j)|\bin\s+the\s+morning|\ble\s+matin/
const ofDough = /\b(?:dough|loaf|loaves|pate|patons?|autolyse)\b/
// What is done to no stage but the last, whatever stands over the rows.
const onlyLast = new Set([
  'divide',
  'shape',
  'preshape',
  'proof',
  'bake',
  'load',
  'score',
  'preheat',
  'benchRest',
])

const soaking = new Set(['soak', 'scald'])
// Words for what a stage is that in a method say what is done.
const doings = new Set(['ferment', 'autolyse', 'autolysis', 'soaked', 'scalded', 'sour'])

/** Follows a method from stage to stage. */
export class StageFinder {
  readonly names: readonly LineNames[]
  readonly #words: readonly (readonly string[])[]
  #now: number | undefined
  #isHeaded = false // a heading has named the stage

  constructor(readonly stages: readonly MethodStage[]) {
    this.names = stages.map(
      stage =>
        new LineNames(
          stage,
          stages.map(({ name }) => name),
        ),
    )
    this.#words = stages.map(({ name }) => wordsIn(name))
  }

  get #last(): number {
    return this.stages.length - 1
  }

  /** The stage that a heading names; undefined where it names none. */
  heading(plain: string): number | undefined {
    const found = this.#mentions(plain)[0]?.stage
    const words = wordsIn(plain)
    const last = words.some(word => kindOfWord(word) === 'dough') || this.#isNamed(this.#last, words)
    const stage = found ?? (last ? this.#last : undefined)
    if (stage !== undefined) this.head(stage)
    return stage
  }

  /** What follows belongs to a stage. */
  head(stage: number): void {
    this.#now = stage
    this.#isHeaded = true
  }

  #isNamed(stage: number, words: readonly string[]): boolean {
    const own = this.#words[stage]!
    return own.length > 0 && own.every(word => words.includes(word))
  }

  /** Earlier stages that a text names, with where: by all words of their name, or by a kind that only one of them is. */
  #mentions(plain: string): { stage: number; from: number; to: number }[] {
    const tokens = tokensOf(plain)
    const words = tokens.map(({ key }) => singular(key))
    return this.stages.flatMap((_, stage) => {
      if (stage === this.#last) return []
      const own = this.#words[stage]!
      const whole = own.length > 0 && own.every(word => words.includes(word))
      const isKind = (word: string) => {
        if (doings.has(word)) return false
        const kind = kindOfWord(word)
        if (kind !== 'ferments' && kind !== 'soaks') return false
        const alike = this.#words.filter((of, i) => i !== this.#last && of.some(w => kindOfWord(w) === kind))
        return alike.length === 1 && own.some(w => kindOfWord(w) === kind) && !this.names[stage]!.has(word)
      }
      const from = words.findIndex(word => (whole ? own.includes(word) : isKind(word)))
      if (from < 0) return []
      const to = whole ? words.findLastIndex(word => own.includes(word)) : from
      return [{ stage, from: tokens[from]!.at, to: tokens[to]!.end }]
    })
  }

  /** The stage that something is said to be made for: `For the levain, mix …`, `Let the poolish ripen`. */
  #madeIn(plain: string, actions: readonly SaidAction[]): number | undefined {
    const waits = actions.some(({ action }) => action.kind === 'wait')
    const takes = actions.some(({ action }) => action.takes || action.key === 'knead')
    for (const { stage, from, to } of this.#mentions(plain)) {
      const [ahead, behind] = [plain.slice(0, from), plain.slice(to)]
      if (ready.test(ahead)) continue
      if (begins.test(behind) && ahead.trim().split(/\s+/).length <= 4 && !takes) return stage
      if (/^\s*[:–—-]\s/.test(behind) && from < 24) return stage
      if (before.test(ahead) && !(mixing.test(ahead) && !/ingredients/.test(ahead) && joins.test(behind)))
        return stage
      if (/^\s*ingredients/.test(behind)) return stage
      if (ofStage.test(ahead) && mixing.test(`${ahead.replace(/,/g, ' ')} `) && /^\s*[.;!]?\s*$/.test(behind))
        return stage
      if (waits && !takes) return stage
    }
    return undefined
  }

  /** The stage that a clause belongs to; from then on what follows does as well, until something says otherwise. */
  find(plain: string, actions: readonly SaidAction[]): StageFound {
    if (this.stages.length < 2) return { stage: 0, isGuess: false }
    const said = this.#said(plain, actions)
    const stage = said ?? this.#now ?? this.#last
    if (said !== undefined) {
      this.#isHeaded = this.#isHeaded && said === this.#now
      this.#now = said
    }
    return { stage, isGuess: this.#now === undefined }
  }

  #said(plain: string, actions: readonly SaidAction[]): number | undefined {
    const made = this.#madeIn(plain, actions)
    if (made !== undefined) return made
    if (actions.some(({ action }) => onlyLast.has(action.key))) return this.#last
    if (this.#isHeaded) return undefined
    const soakers = this.#words.flatMap((words, i) => (words.some(w => kindOfWord(w) === 'soaks') ? [i] : []))
    if (soakers.length === 1 && actions.some(({ action }) => soaking.has(action.key))) return soakers[0]
    const taken = this.#mentions(plain)
    if (taken.length > 0) {
      const takers = this.stages.flatMap((_, stage) =>
        taken.some(one => one.stage !== stage && this.#takes(stage, one.stage)) ? [stage] : [],
      )
      return takers.length === 1 ? takers[0] : takers.includes(this.#now ?? -1) ? this.#now : this.#last
    }
    const only = this.#onlyIn(plain)
    if (only !== undefined) return only
    if (actions.some(({ action }) => action.ofDough) || ofDough.test(plain) || another.test(plain))
      return this.#last
    return undefined
  }

  /** Has a stage a line that takes the other? */
  #takes(stage: number, other: number): boolean {
    const own = this.#words[other]!
    return this.stages[stage]!.lines.some(line => {
      const words = wordsIn(line)
      return own.length > 0 && own.every(word => words.includes(word))
    })
  }

  /** The one stage whose lines a clause names, where some of them are in no other. */
  #onlyIn(plain: string): number | undefined {
    const named = this.names.map(names => names.named(plain).lines.length)
    const most = Math.max(...named)
    if (most === 0) return undefined
    const best = named.flatMap((count, stage) => (count === most ? [stage] : []))
    return best.length === 1 ? best[0] : undefined
  }
}

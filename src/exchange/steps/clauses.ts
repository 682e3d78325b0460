import { actionsIn, type SaidAction } from './actions.js'
import { foldsIn, type SaidFolds } from './folds.js'
import { lengthsIn, type SaidLength, type Span } from './lengths.js'
import { fridgesIn, heatsIn, type SaidHeat } from './said-heats.js'
import type { Sentence, Tongue } from './sentences.js'

/** What a sentence says, by its places. */
interface Said {
  readonly actions: readonly SaidAction[]
  readonly lengths: readonly SaidLength[]
  readonly heats: readonly SaidHeat[]
  readonly fridges: readonly Span[]
  readonly folds: SaidFolds | undefined
}

/** A part of a sentence that one step can be made of, or none. */
export interface Clause extends Said, Span {
  readonly sentence: Sentence
  readonly main: readonly SaidAction[] // that make the step; none: it has only times or temperatures
  readonly isLed: boolean // another clause of the same sentence is before it
  readonly isTold: boolean // it only tells something
}

/** The words of a clause as they stand. */
export const wordsOf = ({ sentence, from, to }: Clause): string =>
  sentence.text
    .slice(from, to)
    .replace(/^[\s,;:–—-]+|[\s,;:–—-]+$/gu, '')
    .trim()

const joint =
  /(?:[\s,;:]|\b(?:and|then|next|finally|afterwards|or|for|followed\s+by|let|leave|allow|it|them|to|et|puis|ensuite|enfin|ou|apres\s+quoi|laisse[rz]|faire|faites|l[ae])\b|-(?=\s))+$/
const thenAgain =
  /\b(?:then|followed\s+by|puis|ensuite)\b|\b(?:and|et)\s+(?:another|a\s+further|then|encore|\d+\s+(?:uncovered|without))/
const remark =
  /^\s*(?:if|unless|do\s+not|don't|never|avoid|be\s+careful|you\s+(?:can|may|should|could|want)|it\s+(?:should|is|will|may|can)|they\s+(?:should|will|are)|the\s+\w+(?:\s+\w+)?\s+(?:should|is|will|may|can|must|looks?|feels?)|this\s+(?:is|will|takes)|(?:note|tip|optional(?:ly)?)\s*:|si\b|ne\b|n'|vous\s+pouvez|on\s+peut|attention|evite[rz]|la\s+pate\s+(?:doit|est|sera)|elle\s+doit|il\s+(?:faut\s+que|doit)|le\s+\w+\s+(?:doit|est))/

/** Everything that a sentence says. */
export function saidIn(plain: string, tongue: Tongue): Said {
  const lengths = lengthsIn(plain)
  return {
    actions: actionsIn(plain),
    lengths,
    heats: heatsIn(plain, tongue === 'french' ? 'à' : 'at').filter(
      heat => !lengths.some(length => heat.from < length.to && length.from < heat.to),
    ),
    fridges: fridgesIn(plain),
    folds: foldsIn(plain, lengths),
  }
}

const isMajor = ({ action }: SaidAction): boolean => action.kind !== 'minor' && action.kind !== 'aside'
const isTime = ({ use, words }: SaidLength): boolean => use === 'length' && words !== 'few'

/** Where the words that join an action to what is before it begin. */
function seam(plain: string, before: number, at: number): number {
  const [words] = joint.exec(plain.slice(before, at)) ?? []
  return words === undefined ? at : at - words.length
}

const helping = /^(?:let|leave|allow|laisse[rz]|faire|faites)$/

/** Where the last action of a group ends that does not only help the next: `let`, `laisser`. */
const endOf = (group: readonly SaidAction[]): number =>
  group.findLast(({ word }) => !helping.test(word))?.to ?? group[0]!.from

/** `Bulk fermentation: 4 hours`: the actions that a sentence begins with as a label, and where the label ends. */
function labelOf(
  plain: string,
  actions: readonly SaidAction[],
): { label: readonly SaidAction[]; end: number } {
  const [label] = /^[^:.,;\d]{2,44}?\s*(?::|\s-)\s+(?=\S)/.exec(plain) ?? []
  if (!label || label.trim().split(/\s+/).length > 6) return { label: [], end: 0 }
  return { label: actions.filter(({ to }) => to <= label.length), end: label.length }
}

const vague = new Set(['rest', 'rise', 'ferment'])

/** The actions that count: as things to do, or at least spoken of with their time. */
function counting(said: Said, plain: string): readonly SaidAction[] {
  const { label, end } = labelOf(plain, said.actions)
  const rest = said.actions.filter(({ from }) => from >= end)
  const orders = rest.filter(({ isOrder }) => isOrder)
  const named = label.filter(isMajor)
  if (named.length > 0) {
    const waits = named.some(({ action }) => action.kind === 'wait')
    const isRest = orders.some(({ action, from }) => {
      if (action.kind === 'minor' || action.kind === 'aside' || (waits && vague.has(action.key))) return false
      const isOfFolds = said.folds !== undefined && from >= said.folds.from && from < said.folds.to
      return !(waits && isOfFolds)
    })
    if (!isRest) return [...named.slice(0, 2), ...orders.filter(({ action }) => action.kind === 'minor')]
  }
  if (orders.some(isMajor)) return orders
  const spoken = rest.filter(isMajor)
  // `the bulk fermentation takes 4 hours`
  if (spoken.length > 0 && said.lengths.some(isTime))
    return [spoken[0]!, ...orders].sort((a, b) => a.from - b.from)
  return orders
}

/** The parts of a sentence that one step each can be made of. */
export function clausesOf(sentence: Sentence, tongue: Tongue): Clause[] {
  const { plain, text } = sentence
  const said = saidIn(plain, tongue)
  const { folds } = said
  const counted = counting(said, plain).filter(
    ({ action, from }) =>
      action.key !== 'fold' || !folds || from < folds.from || from >= folds.to || from === folds.from,
  )
  const groups: SaidAction[][] = []
  for (const one of counted) {
    const group = groups.at(-1)
    if (group && !isApart(group, one, said, plain)) group.push(one)
    else groups.push([one])
  }
  const starts = groups.map((group, i) => (i === 0 ? 0 : seam(plain, endOf(groups[i - 1]!), group[0]!.from)))
  const whole = groups.length > 0 ? groups : [[]]
  const isTold = remark.test(plain)
  return whole
    .map((main, i) => ({ main, from: starts[i] ?? 0, to: starts[i + 1] ?? text.length }))
    .flatMap(part => inCold(part, said, plain))
    .flatMap(part => inParts(part, said, plain))
    .map((part, i): Clause => ({ ...part, ...within(said, part), sentence, isLed: i > 0, isTold }))
}

const stands = new Set(['cover', 'place'])

/** Whether an action begins another step than those of a group. */
function isApart(group: readonly SaidAction[], next: SaidAction, said: Said, plain: string): boolean {
  const { actions, lengths, folds, fridges } = said
  const last = group.at(-1)!
  const begin = group[0]!.from
  const isBetween = ({ from, to }: Span) => from >= begin && to <= next.from
  const hasTime = lengths.some(length => isTime(length) && isBetween(length))
  const main = group.find(isMajor)
  if (folds && next.from === folds.from) {
    const wait = lengths.find(length => isTime(length) && isBetween(length))
    const isWithin = wait === undefined || (folds.times ?? 1) * (folds.every ?? 0) <= wait.most
    return hasTime && !(main?.action.kind === 'wait' && isWithin)
  }
  if (next.action.kind === 'aside') return true
  if (next.action.kind === 'minor') {
    if (hasTime || main?.action.kind === 'bake') return true
    if (main?.action.kind === 'wait') return false // `first rise: cover and let rise`
    // `shape and place in the fridge`, `divide and cover for 20 minutes`
    const after =
      actions.find(({ from, isOrder }) => isOrder && from > next.from)?.from ?? Number.POSITIVE_INFINITY
    const isBehind = ({ from }: Span) => from >= next.from && from < after
    return (
      main !== undefined &&
      stands.has(next.action.key) &&
      (fridges.some(isBehind) || lengths.some(length => isTime(length) && isBehind(length)))
    )
  }
  if (hasTime || last.action.kind === 'aside') return true
  if (!main) return fridges.some(isBetween)
  if (main.action.kind === 'wait' && next.action.kind === 'wait') return false // `let rest and rise`, `leave to prove`
  if (next.action.takes && /\b(?:then|puis|ensuite)\b/.test(plain.slice(last.to, next.from))) return true
  return (
    main.action.kind !== next.action.kind || next.action.key === 'preheat' || main.action.key === 'preheat'
  )
}

/** `20 min at 250 °C, 25 min at 220 °C`; `lid on 20 min, lid off 20 min` */
function otherHeat(plain: string, from: number, to: number): RegExpExecArray | null {
  const [before, between] = [plain.slice(Math.max(0, from - 30), from), plain.slice(from, to + 20)]
  const isOther = heated.test(between) && (heated.test(before) || /^[^,;]{0,20}\d{3}/.test(between))
  return isOther ? /[,;/]/.exec(between) : null
}

const heated = /\d{3}\s*(?:°|[cf]\b|deg)|\blid\b|covered|couvercle|couvert/

interface Part extends Span {
  readonly main: readonly SaidAction[]
}

/** `Shape, then a night in the fridge`: what is done by hand, and then how it stands. */
function inCold(part: Part, { fridges }: Said, plain: string): Part[] {
  const last = part.main.at(-1)
  const isByHand = last && part.main.every(({ action: { kind } }) => kind === 'hands' || kind === 'minor')
  const cold = isByHand ? fridges.find(({ from, to }) => from >= last.to && to <= part.to) : undefined
  const then = cold && /\b(?:then|puis|ensuite)\b/.exec(plain.slice(last!.to, cold.from))
  if (!then || !part.main.some(isMajor)) return [part]
  const cut = seam(plain, last!.to, last!.to + then.index)
  return [
    { ...part, to: cut },
    { main: [], from: cut, to: part.to },
  ]
}

/** `25 minutes covered, then 20 uncovered`: a part for each time that is parted from the one before by `then`. */
function inParts(part: Part, { lengths }: Said, plain: string): Part[] {
  const times = lengths.filter(length => isTime(length) && length.from >= part.from && length.to <= part.to)
  const isBaked = part.main.some(({ action }) => action.kind === 'bake') || part.main.length === 0
  const parts = [part]
  for (const [i, { from, to }] of times.entries()) {
    const next = times[i + 1]
    const joined =
      next &&
      (thenAgain.exec(plain.slice(to, next.to + 12)) ?? (isBaked ? otherHeat(plain, to, next.to) : null))
    if (!joined || to + joined.index > next.from) continue
    const cut = seam(plain, to, to + joined.index)
    const last = parts.pop()!
    parts.push({ ...last, to: cut }, { main: last.main.slice(0, 1), from: cut, to: last.to })
    if (from < part.from) break
  }
  return parts
}

function within(said: Said, { from, to }: Span): Said {
  const here = (span: Span) => span.from >= from && span.from < to
  return {
    actions: said.actions.filter(here),
    lengths: said.lengths.filter(here),
    heats: said.heats.filter(here),
    fridges: said.fridges.filter(here),
    folds: said.folds && here(said.folds) ? said.folds : undefined,
  }
}

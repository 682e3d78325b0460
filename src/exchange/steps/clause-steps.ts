import { readStep } from '../../day/method/step-text.js'
import { cardinalAt } from '../../dough/lexicon/cardinals.js'
import { tokensOf } from '../../dough/lexicon/text-tokens.js'
import type { Clause } from './clauses.js'
import { wordsOf } from './clauses.js'
import type { SaidLength } from './lengths.js'
import type { Tongue } from './sentences.js'
import { lengthWritten, type StepDraft, stretchOf } from './step-draft.js'
import type { StepReason } from './words.js'

const ovenHeat = 140 // °C: nothing rests at such a heat
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

const open =
  /\b(?:uncovered|without\s+(?:the\s+|a\s+)?(?:lid|cover)|lid\s+off|(?:remove|take(?:\s+off)?)\s+the\s+(?:lid|cover)(?:\s+off)?|uncover|a\s+decouvert|decouvert|sans\s+(?:le\s+)?couvercle|retire[rz]\s+le\s+couvercle|enleve[rz]\s+le\s+couvercle)\b/
const closed =
  /\b(?:covered|with\s+(?:the\s+|a\s+)?lid(?:\s+on)?|lid\s+on|under\s+(?:the\s+|a\s+)?lid|couvert|a\s+couvert|avec\s+(?:le\s+)?couvercle|sous\s+cloche)\b/
const load =
  /\b(\d{1,2}|two|three|four|five|six|eight|deux|trois|quatre|cinq|six|huit)\s*(?:\w+\s+)?(?:at\s+a\s+time|at\s+once|a\s+la\s+fois)\b/

/** Words that say nothing besides what a step has in its name, its time and what goes in. */
const plainWords = new Set(
  'let leave it them the a an for at to and then dough again about around approximately another further more next finally now in of is be should during laisser laissez faire faites la le les l un une pendant a et puis ensuite pate encore environ de du d des dans au min minutes minute hour hours h heures heure allow give'.split(
    ' ',
  ),
)

/** What a clause's main action is: the first that has a kind of its own, or `undefined` where it has only minor ones. */
const leading = ({ main, folds }: Clause) => {
  const majors = main.filter(({ action }) => action.kind !== 'minor' && action.kind !== 'aside')
  return folds ? (majors.find(({ action }) => action.kind === 'wait') ?? majors[0]) : majors[0]
}

/** Is nothing to be done by it: a remark on the bread, how it keeps? */
export const isAside = ({ main, isTold, lengths, folds }: Clause): boolean =>
  main.some(({ action }) => action.kind === 'aside') ||
  (isTold && !lengths.some(({ use }) => use === 'length') && !folds)

function namesOf(clause: Clause, tongue: Tongue): string {
  const seen = new Set<string>()
  const names = clause.main
    .filter(({ action }) => action.kind === 'hands')
    .map(({ action }) => action)
    .filter(({ key }) => !seen.has(key) && seen.add(key))
    .slice(0, 3)
    .map(({ does }, i) => (i === 0 ? does[tongue] : does[tongue].toLowerCase()))
  const and = tongue === 'french' ? ' et ' : ' and '
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')}${and}${names.at(-1)}`
}

/** What baking is called: as such, under a lid, without it. */
export const bakeNames: Readonly<Record<Tongue, readonly [string, string, string]>> = {
  english: ['Bake', 'Bake covered', 'Bake uncovered'],
  french: ['Cuire', 'Cuire couvert', 'Cuire à découvert'],
}

const shortName = 32 // characters

/** The first words of a clause, to call it by where no word of the trade is in it. */
function firstWords(text: string): string {
  const [head = ''] = /^[^,.;:(\d]*/.exec(text) ?? []
  let name = ''
  for (const word of head.trim().split(/\s+/).slice(0, 5)) {
    if (`${name} ${word}`.length > shortName) break
    name = `${name} ${word}`.trim()
  }
  return capital(
    name.replace(/\s+(?:the|a|an|with|on|in|of|to|and|le|la|les|un|une|avec|sur|dans|de|du|et)$/i, ''),
  )
}

/** The times that are its own: those with figures, each once. */
function ownTimes({ lengths }: Clause): SaidLength[] {
  const own = lengths.filter(({ use }) => use === 'length')
  const figured = own.filter(({ words }) => !words)
  const kept = (figured.length > 0 ? figured : own).filter(
    (one, i, all) =>
      all.findIndex(({ least, most }) => least === one.least && most === one.most) === i || one.further,
  )
  return kept
}

function timeOf(draft: StepDraft, clause: Clause, tongue: Tongue): void {
  const [first, ...others] = ownTimes(clause)
  if (!first) return
  const { reasons } = draft
  if (first.words === 'few') return void (draft.kind !== 'hands' && reasons.push({ code: 'fewMinutes' }))
  draft.length = stretchOf(first)
  if (first.each) draft.each = true
  if (first.words === 'night') reasons.push({ code: 'overnight' })
  if (first.unitCarried) reasons.push({ code: 'unitFromBefore' })
  if (first.bound) reasons.push({ code: 'boundOnly', bound: first.bound })
  const night = clause.lengths.find(({ words }) => words === 'night')
  if (night && otherwise(clause, first.to, night.from))
    reasons.push({ code: 'severalTimes', others: 'overnight' })
  if (others.length === 0) return
  if (draft.kind === 'hands' && [first, ...others].every(({ each, words }) => !each && !words)) {
    const sum = (side: 'least' | 'most') => [first, ...others].reduce((all, one) => all + one[side], 0)
    draft.length = { least: sum('least'), most: sum('most') }
    reasons.push({ code: 'timesAdded' })
  } else
    reasons.push({ code: 'severalTimes', others: others.map(one => lengthWritten(one, tongue)).join(', ') })
}

/** Does `or` stand between two places? What follows is another way to do it. */
const otherwise = ({ sentence }: Clause, from: number, to: number): boolean =>
  from < to && /\b(?:or|ou)\b/.test(sentence.plain.slice(from, to))

function heatOf(draft: StepDraft, clause: Clause): void {
  const { heats, fridges } = clause
  if (draft.kind === 'hands') return
  const [first, ...others] = heats
  if (first && (draft.kind === 'wait') === first.celsius < ovenHeat) {
    draft.heat = { text: first.text, celsius: first.celsius }
    if (first.isRange) draft.reasons.push({ code: 'heatOfRange' })
    if (first.isMark) draft.reasons.push({ code: 'ovenMark' })
    if (others.length > 0)
      draft.reasons.push({ code: 'severalHeats', others: others.map(({ text }) => text).join(', ') })
  }
  const [fridge] = fridges
  const [time] = ownTimes(clause)
  if (draft.kind === 'wait' && fridge && !(time && otherwise(clause, time.to, fridge.from)))
    draft.inFridge = true
}

function foldsOf(draft: StepDraft, { folds, lengths, sentence }: Clause): void {
  if (!folds) return
  // `fold 3 times in 90 minutes`
  const isIn = lengths.some(
    ({ use, from }) =>
      use === 'within' || (use === 'length' && /\b(?:in|en)\s+$/.test(sentence.plain.slice(0, from))),
  )
  const within = lengths.find(({ use }) => use === 'within')?.most ?? draft.length?.most
  const reasons: StepReason[] = []
  let { times, every } = folds
  if (times === undefined && every !== undefined && within !== undefined) {
    times = Math.floor(within / every + 1e-9)
    if (!lengths.some(({ use }) => use === 'within')) {
      // at the end of the wait the dough is divided, not folded
      if (times > 1 && times * every >= within) times -= 1
      reasons.push({ code: 'foldTimes' })
    }
  }
  if (every === undefined && within === undefined) return // twice, whenever that may be
  if (every === undefined && times !== undefined) {
    every = Math.max(5, Math.round(within! / (isIn ? times : times + 1) / 5) * 5)
    if (!isIn) reasons.push({ code: 'foldSpacing' })
  }
  if (!times || !every) return
  if (folds.minutes === undefined) reasons.push({ code: 'foldMinutes' })
  draft.folds = { times, every, minutes: folds.minutes ?? 5 }
  draft.reasons.push(...reasons)
}

/** Does a clause say more than its step has? What it says of ingredients counts only where they are added by name. */
function saysMore(clause: Clause): boolean {
  const { sentence, from, to, lengths, heats, fridges, folds, main } = clause
  const spans = [...lengths, ...heats, ...fridges, ...(folds ? [folds] : []), ...main]
  const rest = [...sentence.plain.slice(from, to)]
    .map((sign, i) => (spans.some(span => from + i >= span.from && from + i < span.to) ? ' ' : sign))
    .join('')
  return tokensOf(rest).some(({ kind, key }) => kind === 'word' && !plainWords.has(key))
}

/** The text of a step that was written as Tarebook has it: `Bulk: 3.5–4.5 h, at 24 °C, 4 × 5 min every 30 min`. */
function asStep(clause: Clause): { does: string; text: string } | undefined {
  const { sentence, from, to } = clause
  if (from > 0 || to < sentence.text.length) return undefined
  const [, does, text] = /^([^:]{1,40}):\s+(.*?)\.?$/u.exec(sentence.text) ?? []
  if (
    !does ||
    !text ||
    !/,\s*(?:at\s|à\s|in the fridge|au frigo|\d+\s*[×x]\s*\d|\d+ (?:at once|à la fois))|^=/.test(text)
  )
    return undefined
  const { length, notRead, adds } = readStep(text)
  return length && notRead.length === 0 && adds.length === 0 ? { does, text } : undefined
}

/**
 * The step of a clause, before it is known what comes before it; undefined where nothing is done and no time passes.
 */
export function stepOf(clause: Clause, tongue: Tongue): StepDraft | undefined {
  const { sentence, lengths, heats, fridges, main } = clause
  const plain = sentence.plain.slice(clause.from, clause.to)
  const first = leading(clause)
  const hasTime = lengths.some(({ use, words }) => use === 'length' && words !== 'few')
  const isHot = heats.some(({ celsius }) => celsius >= ovenHeat)
  const ofOven = main.some(({ action }) => action.key === 'uncover' || action.key === 'lower')
  const text = wordsOf(clause)
  const draft: StepDraft = {
    row: sentence.row,
    stage: 0,
    key: first?.action.key ?? '',
    does: '',
    kind: 'hands',
    words: [text],
    saysMore: saysMore(clause),
    adds: [],
    reasons: [],
  }
  const { kind } = first?.action ?? {}
  if (kind === 'wait' || kind === 'bake') draft.kind = kind
  else if (kind === 'hands') {
    // `Enfournez 35 minutes à 220 °C`, `puis 20 minutes à découvert`
    const bakes = isHot ? draft.key !== 'preheat' : draft.key === 'load' && open.test(plain)
    if (hasTime && bakes) draft.kind = 'bake'
  } else if (hasTime && (isHot || ofOven || open.test(plain) || /\boven\b|\bfour\b/.test(plain))) {
    draft.kind = 'bake'
    if (!ofOven) draft.reasons.push({ code: 'kindByHeat' })
  } else if (fridges.length > 0) draft.kind = 'wait'
  else if (hasTime) {
    draft.kind = 'wait'
    draft.reasons.push({ code: 'kindByTime' })
  } else if (main.length === 0 || ofOven) return undefined
  if (draft.key !== 'preheat') timeOf(draft, clause, tongue)
  heatOf(draft, clause)
  foldsOf(draft, clause)
  if (clause.folds && !draft.folds) draft.saysMore = true
  if (draft.folds && draft.kind === 'hands') {
    draft.kind = 'wait'
    draft.key = 'fold'
  }
  const typed = asStep(clause)
  if (typed) {
    draft.asTyped = typed.text
    draft.saysMore = false
    draft.reasons = draft.reasons.filter(({ code }) => code === 'kindByTime' || code === 'kindByHeat')
  }
  const [, at] = (draft.kind === 'bake' && load.exec(plain)) || []
  if (at !== undefined) draft.atOnce = /^\d/.test(at) ? Number(at) : (cardinalAt(tokensOf(at), 0)?.value ?? 1)
  draft.does = typed?.does ?? nameOf(draft, clause, plain, tongue)
  return draft
}

function nameOf(draft: StepDraft, clause: Clause, plain: string, tongue: Tongue): string {
  const isFrench = tongue === 'french'
  if (draft.kind === 'bake') {
    draft.key = 'bake'
    const [bare, covered, uncovered] = bakeNames[tongue]
    return open.test(plain) ? uncovered : closed.test(plain) ? covered : bare
  }
  if (draft.kind === 'wait' && draft.key === 'fold') return isFrench ? 'Rabats' : 'Fold'
  if (draft.kind === 'wait') {
    const { does } = leading(clause)?.action ?? {}
    const isAny = !does || draft.key === 'rest' || draft.key === 'rise'
    if (draft.inFridge && isAny) return isFrench ? 'Froid' : 'Retard'
    return does?.[tongue] ?? (isFrench ? 'Repos' : 'Rest')
  }
  return namesOf(clause, tongue) || firstWords(wordsOf(clause)) || (isFrench ? 'Travail' : 'Work')
}

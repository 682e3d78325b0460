import { numberWords } from '../../dough/lexicon/number-words.js'
import { isApostrophe, type Token, tokensOf } from '../../dough/lexicon/text-tokens.js'
import { kitchen, uses } from '../values/kitchen-words.js'
import { isState, joined, noteStart, purposeIn } from '../values/line-names.js'
import { isBread, kindOf, kindOfWord, namesEarlierStage, type StageKind } from '../values/stage-kinds.js'
import { closingOf, type Row, rowOf } from './recipe-row.js'

/** A stage's name, as a heading gives it. */
export interface StageHeading {
  readonly name: string
  readonly kind: StageKind | undefined
  readonly remark: string // what is said besides, in parentheses or behind a dash
}

/** What a row opens if it is a heading: a stage, or one of the parts of a recipe. */
export interface Heading {
  readonly opens: 'stage' | 'list' | 'method' | 'remarks' | 'time' // of what comes then: lines or steps
  readonly stage: StageHeading
  readonly sure: boolean // marked, or `For the levain`: else it is one only over lines
  readonly led?: boolean // `For the …`, `To make the …`
  readonly isOfNeeds?: boolean // `What you’ll need`: ingredients, or tools
}

const mostWords = 12 // of a row that is a heading
const mostWordsOfName = 7
const ordinals = new Set(['st', 'nd', 'rd', 'th', 'er', 'ere', 'e', 'eme', 'nde'])
const hourBehind = /[\s,(–—-]*(?<!\p{L})\d.*$/u

const capital = (text: string): string => {
  const small = text === text.toUpperCase() && text.length > 3 ? text.toLowerCase() : text
  return small.charAt(0).toUpperCase() + small.slice(1)
}

/** `Day 2`, `The night before`, `Step 1`: when or where in the order something is made, and not what. */
const isWhen = (tokens: readonly Token[]): boolean =>
  tokens.some(t => kitchen.whens.has(t.key)) &&
  tokens.every(
    ({ kind, key }) =>
      kind !== 'word' || [kitchen.whens, kitchen.beforeNames, numberWords].some(w => w.has(key)),
  )

/** `Stage 1`: one of several that are counted. */
const isNumbered = ([what, number, ...others]: readonly Token[]): boolean =>
  kitchen.countedStages.has(what?.key ?? '') && number?.kind === 'number' && others.length === 0

/** The words before a parenthesis, a colon, a dash or a figure, and what follows as a remark. */
function divided(row: Row): { head: Token[]; headTo: number; remark: string } {
  const { tokens } = row
  let to = tokens.length - (row.colon ? 1 : 0)
  const isPercent = (i: number) =>
    tokens[i + 1]?.text === '%' && i + 2 >= to && kindOf(tokens.slice(0, i)) !== undefined
  // `SOAKER 12 OZ`
  const isWeighed = (i: number) => row.starting.get(i)?.to === to && kindOf(tokens.slice(0, i)) !== undefined
  const isMany = (i: number) =>
    row.when === undefined && /^(?:for|pour)$/.test(tokens[i]!.key) && tokens[i + 1]?.kind === 'number'
  const at = tokens.findIndex(({ text, gap }, i) => {
    const isSign = '(:,'.includes(text) || ('–—-'.includes(text) && gap)
    return i < to && i > 0 && (isSign || isPercent(i) || isWeighed(i) || isMany(i))
  })
  const headTo = at < 0 ? to : at
  let from = headTo
  if (tokens[from]?.text === '(' && closingOf(row, from, to) >= to - 1) {
    from++
    if (tokens[to - 1]?.text === ')') to--
  } else if (tokens[from]?.kind === 'mark') from++
  const remark = from < to ? row.text.slice(tokens[from]!.at, tokens[to - 1]!.end) : ''
  const first = tokens.findIndex(t => t.kind !== 'mark' || t.text === '(') // signs stand before it
  return { head: tokens.slice(Math.max(first, 0), headTo), headTo, remark }
}

/** A stage's name without `For the`, and over a colon without `Make the`; `led` where it has that. */
function nameIn(head: readonly Token[], isOver = false): { name: readonly Token[]; led: boolean } {
  const isLead = (token: Token | undefined) => token !== undefined && kitchen.headingLeads.has(token.key)
  const isMade = (at: number) =>
    kitchen.makes.has(head[at]?.key ?? '') && kitchen.beforeNames.has(head[at + 1]?.key ?? '')
  const isTo = head[0]?.key === 'to' && isMade(1)
  let from = isTo ? 1 : 0
  while (isLead(head[from]) || ((isTo || isOver) && isMade(from))) {
    from++
    if (head[from]?.kind === 'number') from++
    if (head[from]?.text === ':' || head[from]?.text === '.') from++
  }
  const led = from > 0
  const isFiller = (token: Token) =>
    kitchen.beforeNames.has(token.key) || isApostrophe(token) || isLead(token)
  if (led || head.length > 1) while (from < head.length - 1 && isFiller(head[from]!)) from++
  // `For the top you’ll want`
  const you = head.findIndex((t, i) => i > from && t.key === 'you')
  return { name: head.slice(from, led && you > 0 ? you : undefined), led }
}

/**
 * A heading names what comes; a row that says how much of it is a line: `all of the levain`,
 * `levain (all of it)`. Only a row marked as a heading may be `The rest of the dough:`.
 */
const saysHowMuch = (row: Row, headTo: number, marked: boolean): boolean =>
  row.quantities.some(q => (q.share === undefined ? q.from < headTo : !marked && q.from <= headTo + 1))

/** How many words a row has, but for a remark in brackets at the end of a stage's name. */
function wordsOutside({ words, tokens, depths }: Row): number {
  const isRemark = ')]'.includes(tokens.at(-1)!.text) && kindOf(words.slice(0, 1)) !== undefined
  return isRemark ? tokens.filter((t, i) => t.kind === 'word' && depths[i] === 0).length : words.length
}

/** What a row opens if it is a heading. */
export function headingOf(row: Row): Heading | undefined {
  if (row.words.length === 0 || wordsOutside(row) > mostWords) return undefined
  // `Hi Karin,`
  if (kitchen.greetings.has(row.words[0]!.key) && row.tokens.at(-1)!.text === ',') return undefined
  // `4 commentaires`
  const [count, only] = row.tokens
  if (row.tokens.length === 2 && count!.kind === 'number' && kitchen.noteHeadings.has(only!.key))
    return { opens: 'remarks', stage: { name: joined(row.tokens), kind: undefined, remark: '' }, sure: true }
  const { head, headTo, remark } = divided(row)
  const words = head.filter(t => t.kind !== 'mark')
  if (words.length === 0 || words.length > mostWordsOfName) return undefined
  const key = words.map(t => t.key).join(' ')
  const marked = row.marked || row.colon
  const { name, led } = nameIn(head, row.colon)
  // `Poolish from the night before`; `warm water to mix` is of no mix
  const late = name.findIndex((t, i) => i > 0 && kitchen.noteStarts.has(t.key))
  const isLate = late > 0 && isWhen(name.slice(late + 1))
  const short = late < 0 ? name : name.slice(0, late)
  // `Build 2`: one of several of its kind
  const nth = row.tokens[headTo]?.kind === 'number' && /^\d{1,3}$/.test(remark) ? ` ${remark}` : ''
  const remarks = [isLate ? joined(name.slice(late)) : '', nth ? '' : remark].filter(Boolean).join(', ')
  const stage = { name: capital(joined(isLate ? short : name)) + nth, kind: kindOf(short), remark: remarks }
  const isTableHead =
    words.length > 1 && !kitchen.noteHeadings.has(key) && words.every(t => kitchen.columnHeads.has(t.key))
  const isTime = isWhen(head)
  // `Stage 1 (freshening) 5 h at 26 °C`
  if (isNumbered(head) && row.tokens[headTo]?.text === '(' && row.when !== undefined)
    return { opens: 'stage', stage: { ...stage, name: capital(joined(head)) }, sure: false, led: true }
  // `Ingredients (night sponge)`, `Day 2 – dough`, `The night before: levain`
  const isOver = isTime || kitchen.listHeadings.has(key) || kitchen.needHeadings.has(key)
  const inWhole = remark && isOver ? headingOf(rowOf(remark)) : undefined
  // … `Day 1 – levain, 8 pm`
  const hour = isTime && !inWhole?.stage.kind ? (hourBehind.exec(remark)?.[0] ?? '') : ''
  const what = remark.slice(0, remark.length - hour.length)
  const inner = hour && what ? headingOf(rowOf(what)) : inWhole
  if (inner?.opens === 'stage' && inner.stage.kind) {
    const told = isTime && !head.some(t => t.kind === 'number') ? [joined(head)] : []
    const when = hour.replace(/^[\s,(–—-]+|\)$/g, '')
    const remark = [...told, inner.stage.remark, when].filter(Boolean).join(', ')
    return { opens: 'stage', stage: { ...inner.stage, remark }, sure: true }
  }
  if (isTime && row.when === undefined && !row.quantities.some(q => q.from > headTo && q.terms[0].unit))
    return { opens: 'time', stage: { ...stage, name: capital(joined(head)) }, sure: true }
  if (kitchen.toolHeadings.has(key)) return { opens: 'remarks', stage, sure: true }
  if (kitchen.needHeadings.has(key)) return { opens: 'list', stage, sure: true, isOfNeeds: true }
  if (kitchen.listHeadings.has(key) || isTableHead) return { opens: 'list', stage, sure: true }
  // `Cuisson : 25 min` is a fact
  if (kitchen.methodHeadings.has(key))
    return row.when === undefined ? { opens: 'method', stage, sure: true } : undefined
  const isAlone = marked || row.words.length === 1
  if (kitchen.noteHeadings.has(key)) return { opens: 'remarks', stage, sure: isAlone }
  const isDone = isState(head) && stage.kind !== 'ferments' // `Rafraîchi`
  // `2nd dough`
  const isNth = stage.kind !== undefined && name[0]?.kind === 'number' && ordinals.has(name[1]?.key ?? '')
  const figures = name.slice(isNth ? 1 : 0).some(t => t.kind === 'number')
  if (name.length === 0 || figures || (isDone && !row.colon)) return undefined
  // `preferment (above)` takes one
  const isAbove = !marked && tokensOf(remark).some(t => kitchen.above.has(t.key))
  const [how, but] = tokensOf(remark)
  const isAllBut = !row.colon && kitchen.all.has(how?.key ?? '') && kitchen.but.has(but?.key ?? '')
  if (isAbove || isAllBut || saysHowMuch(row, headTo, marked)) return undefined
  const isOfUse = name.some(t => isBread(t.key)) || purposeIn(head) !== undefined
  const isOfSome = stage.kind !== undefined || (isOfUse && row.quantities.length === 0 && !row.hasNoAmount)
  const sure = marked || (led && isOfSome) || /^ingr[eé]dients?$/.test(head.at(-1)!.low)
  const isName = words.length <= 4 && !'.!?'.includes(row.tokens.at(-1)!.text)
  // `battu pour la dorure` is said of what stands above
  const plain =
    isName &&
    !row.bulleted &&
    (!isState(head.slice(0, noteStart(head, 1))) || (!isDone && words.length === 1))
  const isSort = words.length === 1 && kitchen.sorts.has(key)
  return sure || plain ? { opens: 'stage', stage, sure, led: led || isSort } : undefined
}

/** `To top:`, `To finish:` */
const isOfFinish = (key: string): boolean => uses.has(key) || key === 'top' || key === 'fill'

/** A stage's name before amounts in one row: `Levain: 40 g starter, 100 g flour`, `For the poolish, mix …`. */
export function inlineStage(
  row: Row,
  start = 0,
  to = row.tokens.length,
): { readonly stage: StageHeading; readonly from: number } | undefined {
  const { tokens } = row
  const ahead = tokens.slice(start, Math.min(start + 9, to)).findIndex(t => t.text === ':' || t.text === ',')
  if (ahead <= 0) return undefined
  const end = start + ahead
  const { name, led } = nameIn(tokens.slice(start, end))
  const isOnTop = tokens[start]!.key === 'to' && end - start === 2 && isOfFinish(tokens[start + 1]!.key)
  const isUse = isOnTop || (led && uses.has(name[0]?.key ?? ''))
  const kind = kindOf(name) ?? (isUse ? 'other' : undefined)
  if (!kind || name.length > 4 || name.some(t => t.kind !== 'word')) return undefined
  const only =
    led ||
    name.length <= 2 ||
    name.every(t => kindOfWord(t.key) !== undefined || kitchen.beforeNames.has(t.key) || isBread(t.key))
  if (!only || (tokens[end]!.text === ',' && !led)) return undefined
  // `Levain: 200 g` is a line, `Egg wash: 1 egg` is not
  const [amount, ...others] = row.quantities.filter(q => q.from > end && q.to <= to)
  const isNamed = [tokens[amount?.to ?? to], tokens[end + 1]].some(t => t?.kind === 'word')
  const isOfOther = kindOf(name) === 'other' && isNamed
  if (!amount || (others.length === 0 && !isOfOther)) return undefined
  return { stage: { name: capital(joined(name)), kind, remark: '' }, from: end + 1 }
}

/** A stage that a sentence makes: `Make a sponge with 100 g of flour`, `start with a poolish: 200 g flour`. */
export function stageMade({ tokens, starting }: Row, start: number, to: number): StageHeading | undefined {
  let at = start
  while (at < to && !starting.get(at)?.terms[0].unit) at++
  const first = starting.get(at)
  if (!first || at >= to || first.from - 2 < start) return undefined
  const [article, name, join] = [tokens[first.from - 3], tokens[first.from - 2]!, tokens[first.from - 1]!]
  // `the levain with 100 g of flour` takes one
  const isNew = kitchen.indefinite.has(article?.key ?? '') && first.from - 3 >= start
  const isOf = join.text === ':' || kitchen.madeOf.has(join.key)
  if (!isNew || !isOf || !namesEarlierStage(name.key)) return undefined
  return { name: capital(name.text), kind: kindOfWord(name.key), remark: '' }
}

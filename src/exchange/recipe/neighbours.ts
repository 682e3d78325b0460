import { nameKey } from '../../dough/document/formula.js'
import type { Kind } from '../steps/recipe-method.js'
import { type Candidate, candidate, nameAlone } from './candidates.js'

/** The part of a recipe a row stands in: what its headings say. */
type Section = 'ingredients' | 'method' | 'remarks'

/** A way to read all rows up to one. */
interface Way {
  readonly score: number
  readonly section: Section
  readonly above?: Kind
  readonly isName?: boolean // the row above is an ingredient without its amount
  readonly pending?: 'lines' | 'an amount' | 'a name' | undefined // what the next row has to be
  readonly last?: Candidate
  readonly before?: Way
}

const opens: Readonly<Partial<Record<Kind, Section>>> = {
  stage: 'ingredients',
  list: 'ingredients',
  method: 'method',
  remarks: 'remarks',
}
const leastOfText = 3 // what a row of a method or a remark scores as such
const linesBelow = 1 // what a heading gains by them
const paired = 4 // what a name and its amount on two rows gain by each other

/** Below the heading of a method all is a step that opens nothing else, below that of notes a note. */
function within(section: Section, candidates: readonly Candidate[]): readonly Candidate[] {
  if (section === 'ingredients') return candidates
  const headings = candidates
    .filter(c => opens[c.kind] && (c.kind !== 'stage' || c.stage?.kind || !c.needs))
    .map((c): Candidate => (c.kind === 'stage' ? { ...c, needs: 'lines below' } : c))
  const others = candidates.filter(c => !opens[c.kind] && c.kind !== 'title')
  // no row is more by standing in the method than it is by itself, or the method would go unread
  const score = Math.max(leastOfText, ...others.map(c => c.score)) + 0.5
  const lines = candidates
    .filter(c => c.inMethod && section === 'method')
    .map((c): Candidate => ({ ...c, score: score + 1 }))
  return [{ kind: section === 'method' ? 'step' : 'note', score, reasons: [] }, ...headings, ...lines]
}

/** The way on by a reading of the next row, if it may follow. `apart`: blank rows stand between. */
function follow(way: Way, last: Candidate, apart: boolean): Way | undefined {
  const { kind, needs } = last
  const { above, pending } = way
  const isAmongLines = above === 'line' || above === 'amount'
  const isAmongRemarks = above === 'step' || above === 'note' || above === 'fact'
  const isName = nameAlone(last) !== undefined
  if (pending === 'lines' && kind !== 'line' && kind !== 'list') return undefined
  if (pending === 'an amount' && (apart || kind !== 'amount')) return undefined
  if (pending === 'a name' && (apart || !isName)) return undefined
  if (needs === 'a line above' && !isAmongLines && above !== 'stage') return undefined
  if (needs === 'a remark above' && !isAmongRemarks) return undefined
  const isPaired = pending === 'a name' || (kind === 'amount' && way.isName === true && !apart)
  let next: Way['pending'] = kind === 'list' ? pending : undefined
  if (needs === 'lines below') next = 'lines'
  else if (kind === 'amount' && !isPaired) next = 'a name'
  else if (needs === 'a neighbour' && !isPaired && (!isAmongLines || apart)) next = 'an amount'
  const isOver = kind === 'line' && (above === 'stage' || above === 'title')
  return {
    score: way.score + last.score + (isOver ? linesBelow : 0) + (isPaired ? paired : 0),
    section: opens[kind] ?? way.section,
    above: kind === 'list' && above === 'stage' ? above : kind,
    isName: isName && !isPaired,
    pending: next,
    last,
    before: way,
  }
}

/** A heading of which a line below says how much to take is a stage, whatever else it could be. */
function withNamesBelow(rows: readonly (readonly Candidate[])[]): (readonly Candidate[])[] {
  const named = new Set<string>()
  const told = rows.toReversed().map(candidates => {
    const isNamed = (c: Candidate) => c.kind === 'stage' && named.has(nameKey(c.stage!.name))
    const all = candidates.map(c =>
      isNamed(c) ? candidate(c.kind, [...c.reasons, 'named by a line below'], c) : c,
    )
    for (const { ingredient, amount, share } of candidates.flatMap(c => c.parts ?? []).flatMap(p => p.found))
      if (amount !== '' || share !== undefined) named.add(nameKey(ingredient))
    return all
  })
  return told.reverse()
}

/** The readings of the rows that go together best, one for each. `apart`: which rows have blank ones above. */
export function bestWay(rows: readonly (readonly Candidate[])[], apart: readonly boolean[]): Candidate[] {
  let ways: Way[] = [{ score: 0, section: 'ingredients' }]
  withNamesBelow(rows).forEach((candidates, at) => {
    const best = new Map<string, Way>() // by all that bears on the next row
    for (const way of ways)
      for (const candidate of within(way.section, candidates)) {
        const next = follow(way, candidate, apart[at]!)
        if (!next) continue
        const state = `${next.section} ${next.above} ${next.isName} ${next.pending}`
        if (next.score > (best.get(state)?.score ?? -Infinity)) best.set(state, next)
      }
    ways = [...best.values()]
  })
  const chosen: Candidate[] = []
  let way: Way | undefined = ways.filter(w => !w.pending).reduce((a, b) => (b.score > a.score ? b : a))
  for (; way?.last; way = way.before) chosen.push(way.last)
  return chosen.reverse()
}

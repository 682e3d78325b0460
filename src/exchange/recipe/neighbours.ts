import { nameKey } from '../../dough/document/formula.js'
import { type Candidate, candidate, type Kind, nameAlone } from './candidates.js'

/** The part of a recipe a row stands in: what its headings say. */
type Section = 'ingredients' | 'method' | 'remarks'

/** What the next row has to be, since a row above is nothing without it. */
type Pending = 'lines' | 'an amount' | 'a name'

/** A way to read all rows up to one. */
interface Way {
  readonly score: number
  readonly section: Section
  readonly above: Kind | undefined
  readonly isName: boolean // the row above is an ingredient without its amount
  readonly pending: Pending | undefined
  readonly last: Candidate | undefined
  readonly before: Way | undefined
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
  return [{ kind: section === 'method' ? 'step' : 'note', score, reasons: [] }, ...headings]
}

const meets = (pending: Pending, candidate: Candidate, apart: boolean): boolean =>
  pending === 'lines'
    ? candidate.kind === 'line' || candidate.kind === 'list'
    : !apart && (pending === 'a name' ? nameAlone(candidate) !== undefined : candidate.kind === 'amount')

/** The way on by a reading of the next row, if it may follow. `apart`: blank rows stand between. */
function follow(way: Way, last: Candidate, apart: boolean): Way | undefined {
  const { kind, needs } = last
  const { above } = way
  const isAmongLines = above === 'line' || above === 'amount'
  if (way.pending && !meets(way.pending, last, apart)) return undefined
  if (needs === 'a line above' && !isAmongLines) return undefined
  if (needs === 'a remark above' && above !== 'step' && above !== 'note' && above !== 'fact') return undefined
  const isPaired = way.pending === 'a name' || (kind === 'amount' && way.isName && !apart)
  let pending: Pending | undefined
  if (needs === 'lines below') pending = 'lines'
  else if (kind === 'list') pending = way.pending
  else if (kind === 'amount' && !isPaired) pending = 'a name'
  else if (needs === 'a neighbour' && !isPaired && (!isAmongLines || apart)) pending = 'an amount'
  const isOver = kind === 'line' && (above === 'stage' || above === 'title')
  return {
    score: way.score + last.score + (isOver ? linesBelow : 0) + (isPaired ? paired : 0),
    section: opens[kind] ?? way.section,
    above: kind === 'list' && above === 'stage' ? above : kind,
    isName: nameAlone(last) !== undefined && !isPaired,
    pending,
    last,
    before: way,
  }
}

const isTaken = ({ amount, share }: { amount: string; share?: unknown }): boolean =>
  amount !== '' || share !== undefined

/** A heading of which a line below says how much to take is a stage, whatever else it could be. */
function withNamesBelow(rows: readonly (readonly Candidate[])[]): (readonly Candidate[])[] {
  const named = new Set<string>()
  return rows
    .toReversed()
    .map(candidates => {
      const told = candidates.map(c =>
        c.kind === 'stage' && named.has(nameKey(c.stage!.name))
          ? candidate(c.kind, [...c.reasons, 'named by a line below'], c)
          : c,
      )
      for (const { found } of candidates.flatMap(c => c.parts ?? []))
        for (const one of found) if (isTaken(one)) named.add(nameKey(one.ingredient))
      return told
    })
    .reverse()
}

/** The readings of the rows that go together best, one for each. `apart`: which rows have blank ones above. */
export function bestWay(
  rows: readonly (readonly Candidate[])[],
  apart: readonly boolean[],
): readonly Candidate[] {
  let ways: Way[] = [
    {
      score: 0,
      section: 'ingredients',
      above: undefined,
      isName: false,
      pending: undefined,
      last: undefined,
      before: undefined,
    },
  ]
  withNamesBelow(rows).forEach((candidates, at) => {
    const best = new Map<string, Way>()
    for (const way of ways)
      for (const candidate of within(way.section, candidates)) {
        const next = follow(way, candidate, apart[at]!)
        if (!next) continue
        const state = `${next.section} ${next.above} ${next.isName} ${next.pending}`
        const other = best.get(state)
        if (!other || next.score > other.score) best.set(state, next)
      }
    ways = [...best.values()]
  })
  let way: Way | undefined = ways
    .filter(({ pending }) => !pending)
    .reduce((a, b) => (b.score > a.score ? b : a))
  const chosen: Candidate[] = []
  for (; way?.last; way = way.before) chosen.push(way.last)
  return chosen.reverse()
}

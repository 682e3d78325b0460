import type { Day } from '../../dough/document/day.js'
import { listed } from '../../engine/index.js'
import { clockText, lengthText, localOf } from '../course/clock.js'
import type { DayProblem, HoldReason } from '../course/day-problem.js'
import { stepName } from '../method/words.js'
import type { DayConflict } from './day-conflict.js'
import { boundsText, eventWords } from './words.js'

interface Clocks {
  readonly clock: (instant: number) => string
  readonly event: (moment: string) => string
  readonly bread: (id: string) => string
}

function holdWordsOf(hold: HoldReason, { event, bread }: Clocks): string {
  switch (hold.of) {
    case 'ready':
      return `${bread(hold.bread)} ready`
    case 'begin':
      return 'begin'
    case 'held':
      return event(hold.moment)
  }
}

/** What cannot be together, in a sentence or two, with the nearest time that would do. */
export function conflictSentence(day: Day, written: DayProblem, conflict: DayConflict): string {
  const loads = loadsWords(written, conflict)
  if (loads) return loads
  const { problem, network, breads } = written
  const clocks: Clocks = {
    clock: instant => clockText(localOf(instant, day.zone).minutes),
    event: moment => {
      const event = network.events.find(e => e.begins === moment)
      const words = event ? eventWords(event) : moment
      return event && breads.length > 1 ? `${words} of ${clocks.bread(event.breads[0]!)}` : words
    },
    bread: id => breads.find(b => b.id === id)?.formula.name ?? '',
  }
  const held = conflict.holds.map(hold => {
    const { at } = problem.holds[written.holds.indexOf(hold)] ?? {}
    return `${holdWordsOf(hold, clocks)}${at === undefined ? '' : ` at ${clocks.clock(at)}`}`
  })
  const way = wayOf(conflict.shortfall)
  const waits = conflict.reasons.flatMap(reason => {
    if (reason.of !== 'event' && reason.of !== 'ripe') return []
    const { event } = reason
    const { length } = event
    if (!length || length.most < 0.5) return []
    const bound =
      way === 'most' ? `at most ${lengthText(length.most)}` : `at least ${lengthText(length.least)}`
    const said = length.most - length.least < 0.5 ? lengthText(length.least) : bound
    return [`${eventWords(event).toLowerCase()} (${said})`]
  })
  const groups = conflict.groups.map(group => groupWords(group, day))
  const needs = listed([...new Set(waits)])
  const because = groups.length ? ` while ${listed(groups)}` : ''
  const [begins, ends] = heldAt(written, conflict)
  const short = conflict.shortfall?.minutes
  const isApart = begins !== undefined && ends !== undefined && short !== undefined && needs
  const apart = isApart ? lengthText(ends - begins) : ''
  const first =
    isApart && way === 'least'
      ? `${capital(listed(held))} leave ${apart}; ${needs} need ${lengthText(ends - begins + short)}.`
      : isApart && way === 'most'
        ? `${capital(listed(held))} are ${apart} apart; ${needs} last ${lengthText(ends - begins - short)} at most.`
        : `${capital(held.length ? listed(held) : 'the steps')} cannot be together${because}${needs ? `: ${needs} need their time` : ''}.`
  const ways = conflict.nearest.map(({ time, reason }) => wayOut(reason, clocks.clock(time), clocks))
  return ways.length ? `${first} ${capital(ways.join(', or '))}.` : first
}

/** That loads of one bread, shaped at once, cannot wait for each other as long as they have to; '' where that is not it. */
function loadsWords({ breads }: DayProblem, { reasons, holds, groups, shortfall }: DayConflict): string {
  const waits = reasons.flatMap(reason =>
    reason.of === 'event' && reason.event.kind === 'wait' && reason.event.load ? [reason.event] : [],
  )
  const [first, second] = waits
  const isOfLoads = reasons.some(({ of }) => of === 'order') && holds.length + groups.length === 0
  if (!isOfLoads || !shortfall || !first?.length || !second?.load) return ''
  const { of, number } = first.load!
  const mayDiffer = first.length.most - first.length.least
  const apart = (mayDiffer + shortfall.minutes) / Math.abs(second.load.number - number)
  const name = breads.find(({ id }) => id === first.breads[0])?.formula.name ?? ''
  const step = stepName(first.step)
  return `${name}: baked in ${of} loads, ${lengthText(apart)} apart, so the last load waits ${lengthText(apart * (of - 1))} longer than the first. ${step} (${boundsText(first.length)}) allows ${lengthText(mayDiffer)}. Give ${step} more leeway, let a load hold more, or bake less of it.`
}

/** Whether all that lies between is too long, or cannot last so long; undefined where it is neither. */
function wayOf(shortfall: DayConflict['shortfall']): 'least' | 'most' | undefined {
  const bounds = new Set(shortfall?.steps.flatMap(step => (step.kind === 'span' ? [step.bound] : [])))
  const [way] = bounds
  return bounds.size === 1 && (way === 'least' || way === 'most') ? way : undefined
}

/** The times of the two holds of a conflict, the earlier first; nothing where there are not two. */
function heldAt({ problem, holds }: DayProblem, conflict: DayConflict): number[] {
  const at = conflict.holds.flatMap(hold => problem.holds[holds.indexOf(hold)]?.at ?? [])
  return at.length === 2 ? at.sort((a, b) => a - b) : []
}

function wayOut(hold: HoldReason, clock: string, { event, bread }: Clocks): string {
  switch (hold.of) {
    case 'ready':
      return `have ${bread(hold.bread)} ready at ${clock}`
    case 'begin':
      return `begin at ${clock}`
    case 'held':
      return `hold ${event(hold.moment)} at ${clock}`
  }
}

function groupWords(group: string, { ovens }: Day): string {
  if (group === 'awake') return 'nobody is up at night'
  if (group.startsWith('hands')) return 'one baker does one thing at a time and sleeps'
  const oven = ovens.find(o => `oven ${o.id}` === group)
  return `${oven?.name || 'the oven'} takes one load at a time`
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

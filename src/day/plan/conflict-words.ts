import type { Day } from '../../dough/document/day.js'
import { listed } from '../../engine/index.js'
import { clockText, lengthText, localOf } from '../course/clock.js'
import type { DayProblem, HoldReason } from '../course/day-problem.js'
import { readStep } from '../method/step-text.js'
import { stepName } from '../method/words.js'
import type { DayConflict, LoadsApart } from './day-conflict.js'
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
  if (conflict.loads) return loadsWords(day, written, conflict.loads)
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

/** That loads of one bread, shaped at once, cannot wait for each other as long as they have to. */
function loadsWords(
  day: Day,
  { breads }: DayProblem,
  { bread, wait, bake, loads, apart }: LoadsApart,
): string {
  const { formula, oven } = breads.find(({ id }) => id === bread)!
  const [step, { least, most }] = [stepName(wait.step), wait.length!]
  const longer = Math.round(apart * (loads - 1))
  // Figures told together agree as they are told: what does not come out even is left out.
  const each = Math.round(apart) * (loads - 1) === longer ? `, ${lengthText(apart)} apart` : ''
  const said = Math.round(most) - Math.round(least)
  const { atOnce } = readStep(bake.text)
  const ovenName = day.ovens.length > 1 && oven.name ? oven.name : 'the oven'
  const more =
    atOnce === undefined
      ? `say that ${ovenName} holds more at once`
      : `write in ${stepName(bake)} that more than ${atOnce} bake at once${oven.atOnce === undefined ? '' : ` (that counts before the ${oven.atOnce} that ${ovenName} holds)`}`
  return `${formula.name} is baked in ${loads} loads${each}, so its last load waits ${lengthText(longer)} longer than its first. ${step} (${boundsText(wait.length!)}) allows ${said < longer ? lengthText(said) : 'a little less'}. To make it fit, write a wider time in ${step}, ${more}, or bake less of it.`
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

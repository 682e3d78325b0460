import { html, nothing, type TemplateResult } from 'lit'
import { lengthText } from '../../src/day/course/clock.js'
import { breadNames, type NameOf } from '../../src/day/out/bread-names.js'
import { type ClockRow, datesByClock } from '../../src/day/out/by-clock.js'
import { dateText } from '../../src/day/out/day-text.js'
import { totalsToWeigh } from '../../src/day/out/totals.js'
import { outWords } from '../../src/day/out/words.js'
import { ovenDays } from '../../src/day/plan/loads.js'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import type { PlannedDay } from '../../src/day/plan/planned.js'
import { eventWords } from '../../src/day/plan/words.js'
import type { Formula } from '../../src/dough/document/formula.js'
import type { NumberStyle } from '../base/numbers.js'
import { showWeighed } from '../batch/weighed-text.js'
import { loadTable } from './load-table.js'
import { clockWords, dayPageWords } from './words.js'

/** What is printed of a planned day. */
export interface DayShown {
  readonly opened: DaySheet
  readonly plan: PlannedDay
  readonly formulas: readonly Formula[]
  readonly numbers: NumberStyle
  readonly weights: boolean // what goes in at each step, and all told
}

/** A day as a page for the wall: by the clock, a part for each date, then the loads and what is to be weighed all told. */
export function dayPage(shown: DayShown): TemplateResult {
  const { plan, formulas, numbers, weights } = shown
  const { day } = plan
  const nameOf = breadNames(day, formulas)
  return html`<header>
      <h1>${day.name}</h1>
      <p>${dayPageWords.made(day, nameOf)} ${dayPageWords.places(day)}</p>
    </header>
    ${datesByClock(plan).map(
      ({ date, rows }) => html`<section class="date">
        <h2>${dateText(date, numbers.language)}</h2>
        <ol>
          ${rows.map(of => row(shown, of, nameOf))}
        </ol>
      </section>`,
    )}
    <section class="end">${loads(shown, nameOf)}${weights ? totals(shown) : nothing}</section>`
}

function row({ opened, plan, numbers, weights }: DayShown, of: ClockRow, nameOf: NameOf): TemplateResult {
  const clock = clockWords(Math.round(of.from), plan.day.zone)
  const long = lengthText(of.until - of.from)
  if (of.heats)
    return html`<li><b>${clock}</b><span><strong>${outWords.heat(of.heats.name)}</strong>, ${long}</span></li>`
  const { event } = of
  const isFirst = event.time === undefined && (event.load?.number ?? 1) === 1
  const toWeigh = weights && isFirst ? opened.weighList(event.begins) : []
  const list = toWeigh.map(({ ingredient, weighed }) =>
    weighed === undefined ? ingredient : `${ingredient} ${showWeighed(weighed, numbers)} g`,
  )
  return html`<li class=${`${event.kind}${event.held ? ' held' : ''}`}>
    <b>${clock}</b>
    <span
      ><strong>${event.breads.map(nameOf).join(', ')}: ${eventWords(event)}</strong>, ${[long, event.time === undefined ? event.step.note : ''].filter(Boolean).join(', ')}
      ${list.length ? html`<small>${list.join(', ')}</small>` : nothing}</span
    >
  </li>`
}

function loads({ plan, numbers }: DayShown, nameOf: NameOf): TemplateResult | typeof nothing {
  const ovens = ovenDays(plan)
  return ovens.length ? loadTable(ovens, { zone: plan.day.zone, numbers, nameOf }) : nothing
}

function totals({ opened, formulas, numbers }: DayShown): TemplateResult | typeof nothing {
  const all = totalsToWeigh(opened, formulas)
  if (all.length === 0) return nothing
  return html`<h2>${dayPageWords.allTold}</h2>
    <dl>
      ${all.map(
        ({ ingredient, grams }) => html`<div>
          <dt>${ingredient}</dt>
          <dd>${grams === undefined ? '–' : `${showWeighed(grams, numbers)} g`}</dd>
        </div>`,
      )}
    </dl>`
}

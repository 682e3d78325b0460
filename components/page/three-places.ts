import { html, nothing, type TemplateResult } from 'lit'
import { keyed } from 'lit/directives/keyed.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { wish } from '../base/events.js'
import type { NumberStyle } from '../base/numbers.js'
import type { Desk } from '../desk/desk.js'
import type { Asked } from '../working/open-working.js'
import type { Layout } from './layout.js'
import type { PlaceName } from './tb-places.js'
import { isApart } from './whereabouts.js'
import '../sheet/tb-sheet.js'
import '../shelf/tb-shelf.js'
import '../tally/tb-tally.js'
import { lesson, lessonLearnt, openWorkbook, placeWords } from './words.js'

/** What shelf, sheet and tally are shown of, and how. */
export interface PlacesShown {
  readonly desk: Desk
  readonly layout: Layout
  readonly place: PlaceName // the one in sight, where they come one at a time
  readonly drawer: boolean // the shelf lies over the sheet
  readonly numbers: NumberStyle
  readonly version: number
  readonly readingsCame: number // goes up with readings of the shelf
  readonly readOnly: boolean
  readonly examples: readonly Formula[]
  readonly unread: string | undefined // why nothing is known of what is stored
  readonly teaching: boolean
  readonly asked: Asked | undefined // the working that is open
  readonly lit: ReadonlySet<string> // ids of the lines it speaks of
  readonly learnt: () => void
  readonly go: (to: PlaceName) => void
}

/** Shelf, sheet and tally side by side, or one at a time with the way between them. */
export function threePlaces(shown: PlacesShown): TemplateResult {
  const { desk, layout, place, drawer, numbers, version, readOnly, examples, asked, unread } = shown
  const { sheet } = desk
  const narrow = layout === 'narrow'
  const seen = (name: PlaceName) => !narrow || place === name
  if (isApart(place)) return apart(shown)
  const closeDrawer = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || !drawer) return
    event.preventDefault()
    shown.go('sheet')
  }
  const other = drawer || !seen('sheet') // than the sheet: its place is the main one
  return html`<div class="places" role=${other ? 'main' : nothing} @keydown=${closeDrawer}>
      ${other ? html`<h1 class="unseen">${placeWords[place]}</h1>` : nothing}
      ${
        layout === 'middle' && !drawer
          ? nothing
          : html`<tb-shelf
            ?hidden=${!seen('shelf')}
            .formulas=${desk.workbook.formulas}
            .current=${desk.formula?.id ?? ''}
            .readings=${desk.shelfReading}
            .examples=${examples}
            .cleared=${desk.workbook.cleared?.length}
            ?unread=${unread !== undefined}
            .numbers=${numbers}
            ?readOnly=${readOnly}
            .version=${version + shown.readingsCame}
          ></tb-shelf>`
      }
      ${drawer ? html`<div class="shade" @click=${() => shown.go('sheet')}></div>` : nothing}
      <main ?hidden=${!seen('sheet')} ?inert=${drawer}>
        ${shown.teaching && sheet ? teach(shown) : nothing}
        ${
          sheet
            ? html`<tb-sheet
              .sheet=${sheet}
              .version=${version}
              .touched=${desk.touched}
              .numbers=${numbers}
              ?readOnly=${readOnly}
              .workbook=${desk.workbook}
              .lit=${shown.lit}
            ></tb-sheet>`
            : emptyShelf(shown)
        }
      </main>
      ${
        sheet
          ? html`<div class="aside" role=${narrow ? nothing : 'complementary'} aria-label=${narrow ? nothing : placeWords.tally} ?hidden=${!seen('tally')} ?inert=${drawer}>
            <tb-tally
              .sheet=${sheet}
              .version=${version}
              .numbers=${numbers}
              ?readOnly=${readOnly}
              .asked=${asked}
              ?apart=${narrow}
            ></tb-tally>
          </div>`
          : nothing
      }
    </div>
    ${narrow ? foot(shown) : nothing}`
}

function apart(shown: PlacesShown): TemplateResult {
  const { desk, layout, place, numbers, readOnly } = shown
  if (place === 'bench') {
    void import('../bench/tb-bench-place.js') // fetched when first gone to
    return html`<tb-bench-place
      .workbook=${desk.workbook}
      .larder=${desk.larder}
      .undoLabel=${desk.history.undoLabel}
      .numbers=${numbers}
      ?readOnly=${readOnly}
    ></tb-bench-place>${layout === 'narrow' && !isAtBench() ? foot(shown) : nothing}`
  }
  if (place === 'order') {
    void import('../trade/tb-order-place.js') // likewise
    return html`<tb-order-place .workbook=${desk.workbook} .larder=${desk.larder} .numbers=${numbers} ?readOnly=${readOnly}></tb-order-place>`
  }
  void import('../day/tb-days.js') // likewise
  return html`<tb-days
      .workbook=${desk.workbook}
      .larder=${desk.larder}
      .numbers=${numbers}
      ?readOnly=${readOnly}
    ></tb-days>
    ${layout === 'narrow' ? foot(shown) : nothing}`
}

/** Whether a bench is in use, which has its own foot and its own way back: not a bake, and not all of them. */
const isAtBench = (): boolean => /^#bench\/(?!bake\/|of\/)./.test(location.hash)

/** What lies at the foot of a phone's page: the working that is open, the main readings, the way from place to place. */
function foot({ desk: { sheet }, numbers, version, place, asked }: PlacesShown): TemplateResult {
  const working =
    asked &&
    keyed(asked, html`<tb-working foot .sheet=${sheet} .version=${version} .cell=${asked.cell}></tb-working>`)
  return html`<div class="foot">
    ${working ?? nothing}
    <tb-places .sheet=${sheet} .version=${version} .numbers=${numbers} place=${place}></tb-places>
  </div>`
}

function emptyShelf({ examples, readOnly, unread }: PlacesShown): TemplateResult {
  void import('../shelf/tb-empty-shelf.js') // fetched when there is no formula to open
  return html`<tb-empty-shelf .examples=${examples} ?readOnly=${readOnly} .unread=${unread}></tb-empty-shelf>`
}

const teach = ({ learnt, desk }: PlacesShown): TemplateResult => html`<p class="lesson">
    <span>${lesson()}</span>
    <button @click=${(event: Event) => wish(event.target!, { want: 'bring-in', restore: !desk.history.undoLabel })}>${openWorkbook}</button>
    <button @click=${learnt}>${lessonLearnt}</button>
  </p>`

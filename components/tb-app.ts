import { html, LitElement, nothing, type PropertyValues } from 'lit'
import { Refusal } from '../src/dough/edits.js'
import type { Formula } from '../src/dough/formula.js'
import type { Change } from '../src/dough/workbook.js'
import { type Keeper, type KeeperState, openKeeper } from '../src/storage/index.js'
import { Announcer } from './announcer.js'
import { appStyles } from './app-styles.js'
import { Desk, type DeskEvent } from './desk.js'
import { downloadFormulas } from './download.js'
import type { EditRequest, Wish } from './events.js'
import type { NumberStyle } from './numbers.js'
import { listenToPage } from './page-gestures.js'
import { standingNotices } from './standing-notices.js'
import './tb-dialogs.js'
import './tb-empty-shelf.js'
import './tb-head.js'
import type { GridPlace } from './tb-grid.js'
import type { Room } from './tb-head.js'
import './tb-notices.js'
import './tb-places.js'
import type { PlaceName } from './tb-places.js'
import './tb-sheet.js'
import './tb-shelf.js'
import './tb-tally.js'

const wide = matchMedia('(min-width: 1100px)')
const middle = matchMedia('(min-width: 720px)')
const roomNow = (): Room => (wide.matches ? 'wide' : middle.matches ? 'middle' : 'narrow')
const toastFor = 6000 // milliseconds a sentence stays in sight

/** The whole page: one workbook, one open formula, and everything that is asked of them. */
export class TbApp extends LitElement {
  static override properties = {
    database: {},
    numbers: { attribute: false },
    loadExamples: { attribute: false },
    newVersion: { attribute: false },
    desk: { state: true },
    kept: { state: true },
    examples: { state: true },
    room: { reflect: true },
    place: { reflect: true },
    version: { state: true },
    teaching: { state: true },
    deleted: { state: true },
    problemsSeen: { state: true },
    toast: { state: true },
    dragging: { type: Boolean, reflect: true },
  }

  declare database: string // name in the browser's storage
  declare numbers: NumberStyle
  declare loadExamples: () => Promise<{ readonly workbook: string; readonly formulas: readonly Formula[] }>
  declare newVersion: (() => void) | undefined // set when one waits; calling it reloads the page with it
  declare desk: Desk | undefined // undefined until the workbook is loaded
  declare kept: KeeperState
  declare examples: readonly Formula[]
  declare room: Room
  declare place: PlaceName
  declare version: number // goes up with every change of workbook or figures
  declare teaching: boolean // the first start's line about the examples is in sight
  declare deleted: string // name of a formula just deleted, to be taken back
  declare problemsSeen: boolean
  declare toast: string
  declare dragging: boolean

  #keeper: Keeper | undefined
  readonly #announcer = new Announcer()
  #toastTimer: ReturnType<typeof setTimeout> | undefined
  #stopListening: () => void = () => {}

  constructor() {
    super()
    this.database = 'tarebook'
    this.numbers = { language: 'en', decimal: '.' }
    this.loadExamples = async () => ({ workbook: '', formulas: [] })
    this.newVersion = undefined
    this.desk = undefined
    this.kept = { status: 'loading' }
    this.examples = []
    this.room = roomNow()
    this.place = 'sheet'
    this.version = 0
    this.teaching = false
    this.deleted = ''
    this.problemsSeen = false
    this.toast = ''
    this.dragging = false
    this.addEventListener('tb-edit', event => this.#edit((event as CustomEvent<EditRequest>).detail))
    this.addEventListener('tb-say', event => this.#say((event as CustomEvent<string>).detail))
    this.addEventListener('tb-wish', event => this.#grant((event as CustomEvent<Wish>).detail))
  }

  override connectedCallback(): void {
    super.connectedCallback()
    const stop = listenToPage({
      undo: () => this.#step('undo'),
      redo: () => this.#step('redo'),
      file: file => this.#show('bring-in', { file }),
      text: text => this.#show('bring-in', { text }),
      dragging: over => {
        this.dragging = over
      },
    })
    wide.addEventListener('change', this.#measure)
    middle.addEventListener('change', this.#measure)
    window.addEventListener('hashchange', this.#followAddress)
    this.#stopListening = stop
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.#stopListening()
    wide.removeEventListener('change', this.#measure)
    middle.removeEventListener('change', this.#measure)
    window.removeEventListener('hashchange', this.#followAddress)
    void this.#keeper?.close()
  }

  // What sticks below the header has to know its height, which follows the name of the workbook and zoomed text.
  protected override firstUpdated(): void {
    const head = this.renderRoot.querySelector('tb-head')!
    const measured = new ResizeObserver(() => {
      const height = `${head.offsetHeight}px`
      this.style.setProperty('--head', height)
      document.documentElement.style.setProperty('--head', height)
    })
    measured.observe(head)
  }

  /** Loads the workbook, or on a first start the examples. To be called once, when the properties are set. */
  async start(): Promise<void> {
    const keeper = await openKeeper({
      database: this.database,
      onState: state => {
        this.kept = state
      },
      onWorkbook: (workbook, why) => this.desk?.history.load(workbook, why),
    })
    this.#keeper = keeper
    const examples = keeper.fresh ? await this.loadExamples() : undefined
    const workbook = examples
      ? { name: examples.workbook, formulas: examples.formulas, larder: [] }
      : keeper.workbook
    this.desk = new Desk(
      workbook,
      this.numbers,
      event => this.#changed(event),
      () => {
        this.version += 1
      },
    )
    this.desk.open(decodeURIComponent(location.hash.slice(1)))
    this.teaching = examples !== undefined && examples.formulas.length > 0
    this.examples = (examples ?? (await this.loadExamples())).formulas
  }

  #edit(request: EditRequest): void {
    const { desk } = this
    if (!desk) return
    if (this.kept.status === 'read-only') {
      request.refusal = this.kept.reason
      return
    }
    try {
      const transaction = request.edit(desk.workbook)
      // Only the grid gives a place.
      if (transaction) desk.edit(transaction, request.place as Partial<GridPlace> | undefined)
    } catch (error) {
      if (error instanceof Refusal) request.refusal = error.message
      else if (error instanceof RangeError) request.refusal = 'That is no longer here. Nothing was changed.'
      else throw error
    }
  }

  #changed({ event: { workbook, transaction, way }, sentence }: DeskEvent): void {
    if (way !== 'load') this.#keeper?.keep(workbook)
    const gone = transaction.changes.find((c: Change) => c.of === 'formula' && !c.value)
    this.deleted = way === 'do' && gone ? transaction.label.replace(/^Delete /, '') : ''
    if (transaction.changes.some(c => c.of === 'formula')) this.teaching = false
    this.version += 1
    this.#announcer.say(this.deleted ? `Deleted ${this.deleted}. Undo takes it back.` : sentence)
  }

  #step(way: 'undo' | 'redo'): void {
    const { desk } = this
    if (!desk || this.kept.status === 'read-only') return
    const done = desk.history[way]()
    if (!done?.place) return
    desk.open(done.place.formula)
    this.version += 1
    if (done.place.at !== undefined) void this.#find(done.place.at)
  }

  /** Goes to a place of the open formula's grid, by way of the sheet where there is one place at a time. */
  async #find(place: Partial<GridPlace>): Promise<void> {
    this.place = 'sheet'
    await this.updateComplete
    await this.renderRoot.querySelector('tb-sheet')?.goTo(place)
  }

  #say(sentence: string): void {
    this.#announcer.say(sentence)
    this.toast = sentence
    clearTimeout(this.#toastTimer)
    this.#toastTimer = setTimeout(() => {
      this.toast = ''
    }, toastFor)
  }

  #grant(wish: Wish): void {
    switch (wish.want) {
      case 'undo':
      case 'redo':
        return this.#step(wish.want)
      case 'open':
        return this.#open(wish.formula)
      case 'go':
        return this.#go(wish.to)
      case 'find':
        return void this.#find(wish)
      case 'define':
        return this.#show('larder', { ingredient: wish.ingredient })
      case 'send-out':
        return this.#show('send-out', wish.formula ? { formula: wish.formula } : undefined)
      case 'take-over':
        return void this.#keeper?.takeOver()
      case 'use-new-version':
        return this.newVersion?.()
      case 'larder':
      case 'bring-in':
      case 'help':
        return this.#show(wish.want)
      case 'new':
        return this.#go('shelf')
    }
  }

  #show(name: 'larder' | 'bring-in' | 'send-out' | 'help', detail?: Readonly<Record<string, unknown>>): void {
    void this.renderRoot.querySelector('tb-dialogs')?.show(name, detail)
  }

  #open(id: string): void {
    if (!this.desk) return
    this.desk.open(id)
    this.version += 1
    this.place = 'sheet'
    if (this.desk.formula) location.hash = this.desk.formula.id
  }

  #go(to: PlaceName): void {
    const from = this.place
    this.place = to
    if (this.room !== 'middle') return
    void this.updateComplete.then(() => {
      if (to === 'shelf') this.renderRoot.querySelector('tb-shelf')?.focus()
      else if (from === 'shelf') this.renderRoot.querySelector('tb-head')?.focus()
    })
  }

  #followAddress = (): void => {
    const id = decodeURIComponent(location.hash.slice(1))
    if (id && id !== this.desk?.formula?.id && this.desk?.workbook.formulas.some(f => f.id === id))
      this.#open(id)
  }

  #measure = (): void => {
    this.room = roomNow()
  }

  protected override updated(changed: PropertyValues<this>): void {
    const name = this.desk?.formula?.name
    if (changed.has('version') || changed.has('desk'))
      document.title = name ? `${name} · Tarebook` : 'Tarebook'
  }

  override render() {
    const { desk, room, place, numbers, version } = this
    const readOnly = this.kept.status === 'read-only'
    const drawer = room === 'middle' && place === 'shelf'
    return html`
      <tb-head
        .name=${desk?.workbook.name ?? ''}
        .kept=${this.kept}
        .undoLabel=${desk?.history.undoLabel}
        .redoLabel=${desk?.history.redoLabel}
        ?readOnly=${readOnly}
        .room=${room}
        ?shelfOpen=${drawer}
        .numbers=${numbers}
      ></tb-head>
      <tb-notices .notices=${this.#notices()}></tb-notices>
      ${desk ? this.#room(desk, readOnly, drawer) : nothing}
      ${
        desk
          ? html`<tb-dialogs
            .workbook=${desk.workbook}
            .sheet=${desk.sheet}
            .version=${version}
            .larder=${desk.larder}
            .numbers=${numbers}
            ?readOnly=${readOnly}
          ></tb-dialogs>`
          : nothing
      }
      ${this.toast ? html`<p class="toast">${this.toast}</p>` : nothing}
      ${this.dragging ? html`<p class="drop">Drop the file to bring its formulas in.</p>` : nothing}
    `
  }

  #room(desk: Desk, readOnly: boolean, drawer: boolean) {
    const { room, place, numbers, version } = this
    const { sheet } = desk
    const seen = (name: PlaceName) => room !== 'narrow' || place === name
    return html`<div class="room" @keydown=${this.#closeDrawer}>
        ${
          room === 'middle' && !drawer
            ? nothing
            : html`<tb-shelf
              ?hidden=${!seen('shelf')}
              .formulas=${desk.workbook.formulas}
              .current=${desk.formula?.id ?? ''}
              .readings=${desk.shelfReading}
              .examples=${this.examples}
              .numbers=${numbers}
              ?readOnly=${readOnly}
              .version=${version}
            ></tb-shelf>`
        }
        ${drawer ? html`<div class="shade" @click=${() => this.#go('sheet')}></div>` : nothing}
        <main ?hidden=${!seen('sheet')} ?inert=${drawer}>
          ${this.teaching && sheet ? this.#lesson() : nothing}
          ${
            sheet
              ? html`<tb-sheet
                .sheet=${sheet}
                .version=${version}
                .numbers=${numbers}
                ?readOnly=${readOnly}
                ?folds=${room !== 'wide'}
              ></tb-sheet>`
              : html`<tb-empty-shelf .examples=${this.examples} ?readOnly=${readOnly}></tb-empty-shelf>`
          }
        </main>
        ${
          sheet
            ? html`<aside aria-label="Tally" ?hidden=${!seen('tally')} ?inert=${drawer}>
              <tb-tally .sheet=${sheet} .version=${version} .numbers=${numbers}></tb-tally>
            </aside>`
            : nothing
        }
      </div>
      ${
        room === 'narrow'
          ? html`<tb-places
            .sheet=${sheet}
            .version=${version}
            .numbers=${numbers}
            place=${place}
          ></tb-places>`
          : nothing
      }`
  }

  #lesson() {
    const end = () => {
      this.teaching = false
    }
    return html`<p class="lesson">
      <span>
        This is an example. Change any number and the rest follows; <b>New formula</b> on the shelf starts your own.
      </span>
      <button @click=${end}>Got it</button>
    </p>`
  }

  #closeDrawer = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || this.room !== 'middle' || this.place !== 'shelf') return
    event.preventDefault()
    this.#go('sheet')
  }

  #notices() {
    return standingNotices({
      kept: this.kept,
      problems: this.problemsSeen ? [] : (this.#keeper?.problems ?? []),
      newVersion: this.newVersion,
      deleted: this.deleted,
      download: () => void downloadFormulas(this.desk?.workbook.formulas ?? []),
      tryAgain: () => void this.#keeper?.flush(),
      takeOver: () => void this.#keeper?.takeOver(),
      undo: () => this.#step('undo'),
      dismiss: what => {
        if (what === 'deleted') this.deleted = ''
        else this.problemsSeen = true
      },
    })
  }

  static override styles = appStyles
}
customElements.define('tb-app', TbApp)

declare global {
  interface HTMLElementTagNameMap {
    'tb-app': TbApp
  }
}

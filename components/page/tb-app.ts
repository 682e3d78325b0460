import { html, nothing } from 'lit'
import type { KeeperState } from '../../src/storage/index.js'
import { fetchWhenIdle, furnished } from '../base/after-paint.js'
import { BaseElement } from '../base/base-element.js'
import type { EditRequest, Wish } from '../base/events.js'
import { partNotFetched } from '../base/words.js'
import type { DialogWish } from '../controls/dialog-places.js'
import type { Desk, DeskEvent } from '../desk/desk.js'
import { type Examples, KeptDesk } from '../desk/kept-desk.js'
import type { TypedAgain } from '../desk/typed-again.js'
import { OpenWorking } from '../working/open-working.js'
import { Announcer } from './announcer.js'
import { appStyles } from './app-styles.js'
import { type Layout, layoutNow, tellHeadHeight, watchLayout } from './layout.js'
import type { PageGestures } from './page-gestures.js'
import type { Circumstances } from './standing-notices.js'
import './tb-head.js'
import type { PlaceName } from './tb-places.js'
import { threePlaces } from './three-places.js'
import { Toast } from './toast.js'
import { isApart, Whereabouts } from './whereabouts.js'
import { deletedSentence, dropHint, pageTitle, programName, skipToSheet } from './words.js'

/** The whole page: one workbook, one open formula, and everything that is asked of them. */
export class TbApp extends BaseElement {
  static override properties = {
    database: {},
    loadExamples: { attribute: false },
    newVersion: { attribute: false },
    layout: { reflect: true },
    place: { reflect: true },
    version: { state: true },
    readingsCame: { state: true },
    teaching: { state: true },
    deleted: { state: true },
    seen: { state: true },
    dragging: { type: Boolean, reflect: true },
  }

  declare database: string // name in the browser's storage
  declare loadExamples: () => Promise<Examples>
  declare newVersion: (() => void) | undefined // set when one waits; calling it reloads the page with it
  declare layout: Layout
  declare place: PlaceName
  declare version: number // goes up with every change of the workbook or of what is open
  declare readingsCame: number // how often the shelf had some that were still to be worked out
  declare teaching: boolean // the first start's line about the examples is in sight
  declare deleted: string // name of a formula just deleted, to be taken back
  declare seen: ReadonlySet<object> // notices that were dismissed
  declare dragging: boolean

  readonly #kept = new KeptDesk({
    changed: event => this.#changed(event),
    refreshed: () => this.requestUpdate(),
    readings: () => {
      this.readingsCame += 1
    },
  })
  readonly #where = new Whereabouts(this)
  readonly #working = new OpenWorking(this)
  readonly #announcer = new Announcer()
  readonly #toast = new Toast(this)
  #typed: TypedAgain | undefined // fetched when the page is idle
  readonly #early = new Set<EventTarget>() // fields that something was typed in before it was there
  readonly #gone = new AbortController() // from the page, for good
  #stopListening: () => void = () => {}

  constructor() {
    super()
    this.database = 'tarebook'
    this.loadExamples = async () => ({ workbook: '', formulas: [] })
    this.newVersion = undefined
    this.layout = layoutNow()
    this.place = Whereabouts.place
    this.version = 0
    this.readingsCame = 0
    this.teaching = false
    this.deleted = ''
    this.seen = new Set()
    this.dragging = false
    this.addEventListener('tb-edit', event => this.#kept.edit((event as CustomEvent<EditRequest>).detail))
    this.addEventListener('input', event => {
      if (this.#typed) return
      if (this.#early.size === 0) this.requestUpdate()
      this.#early.add(event.composedPath()[0]!)
    })
    this.addEventListener('tb-say', event => this.#say((event as CustomEvent<string>).detail))
    this.addEventListener('tb-alone', event =>
      this.toggleAttribute('alone', (event as CustomEvent<boolean>).detail),
    )
    this.addEventListener('tb-wish', event => this.#grant(event as CustomEvent<Wish>))
  }

  get desk(): Desk | undefined {
    return this.#kept.desk
  }

  get kept(): KeeperState {
    return this.#kept.state
  }

  override connectedCallback(): void {
    super.connectedCallback()
    const stopWatching = watchLayout(layout => {
      this.layout = layout
    })
    window.addEventListener('hashchange', this.#followAddress)
    this.#stopListening = () => {
      stopWatching()
      window.removeEventListener('hashchange', this.#followAddress)
    }
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.#stopListening()
    this.#gone.abort()
    this.#kept.close()
  }

  protected override firstUpdated(): void {
    tellHeadHeight(this.renderRoot.querySelector('tb-head')!, this)
  }

  /**
   * Loads the workbook, or on a first start the examples. To be called once, when the properties are set.
   */
  async start(): Promise<void> {
    const { database, numbers, loadExamples } = this
    await this.#kept.start({ database, numbers, loadExamples, open: Whereabouts.formula })
    this.teaching = this.#kept.fresh
    this.#takeLink()
    this.#furnish()
  }

  /** Resolves when what the start has loaded is on the screen. */
  async drawn(): Promise<void> {
    await this.updateComplete
    await this.renderRoot.querySelector('tb-sheet')?.drawn()
  }

  /** Resolves when what the page and the places on it can do besides is there. */
  get furnished(): Promise<void> {
    return furnished()
  }

  /** What the page can do besides, fetched when it is idle: keys and what is pasted or dropped first. */
  #furnish(): void {
    void fetchWhenIdle(async () => {
      const { listenToPage } = await import('./page-gestures.js')
      listenToPage(this.#gestures, this.#gone.signal)
    })
    void fetchWhenIdle(async () => {
      const [{ TypedAgain }, { noteTimes }] = await Promise.all([
        import('../desk/typed-again.js'),
        import('../desk/shelf-times.js'),
        this.#kept.fetchRest(),
        import('./tb-notices.js'),
        import('./tb-dialogs.js'),
      ])
      if (this.desk) noteTimes(this.desk, this.#gone.signal)
      const refresh = () => this.requestUpdate()
      this.#typed = new TypedAgain(this, this.#kept, this.#early, refresh, this.#gone.signal)
      await this.#typed.restore()
    })
  }

  readonly #gestures: PageGestures = {
    undo: () => this.#step('undo'),
    redo: () => this.#step('redo'),
    file: file => this.#show({ want: 'bring-in', file }),
    text: text => this.#show({ want: 'bring-in', text }),
    typing: () => {
      if (!this.#working.asked) return
      this.#working.stayWith(undefined)
      this.requestUpdate()
    },
    lost: () => {
      if (this.place === 'sheet') void this.renderRoot.querySelector('tb-sheet')?.goTo({})
      else this.renderRoot.querySelector('tb-head')?.focus()
    },
    dragging: over => {
      this.dragging = over
    },
  }

  /** A formula that came with the address is shown; it stays there until it is put on the shelf or let go. */
  #takeLink(): void {
    const { link } = Whereabouts
    if (!link || !this.desk) return
    const open = this.desk.formula?.id
    void this.updateComplete.then(() => this.#show({ want: 'bring-in', link, open }))
  }

  #changed(changed: DeskEvent, { transaction, way, before } = changed.event): void {
    const [only, more] = transaction.changes.filter(({ of }) => of !== 'cleared')
    const gone = way === 'do' && only?.of === 'formula' && !only.value && !more ? only.id : undefined
    this.deleted = before.formulas.find(f => f.id === gone)?.name ?? ''
    if (transaction.changes.some(c => c.of === 'formula')) this.teaching = false
    this.version += 1
    void this.#announcer
      .tell(this.desk!, changed, this.deleted && deletedSentence(this.deleted))
      .then(seen => seen && this.#toast.show(seen))
  }

  #step(way: 'undo' | 'redo'): void {
    const place = this.#kept.step(way)
    if (!place) return
    this.version += 1
    if (place.at !== undefined) void this.#where.find(place.at)
  }

  #say(sentence: string): void {
    this.#announcer.say(sentence)
    this.#toast.show(sentence)
  }

  #grant(event: CustomEvent<Wish>): void {
    const wish = event.detail
    switch (wish.want) {
      case 'undo':
      case 'redo':
        return this.#step(wish.want)
      case 'open':
        this.#where.open(wish.formula)
        return wish.toName && void this.#where.nameIt()
      case 'go':
        return this.#go(wish.to)
      case 'find':
        return void this.#where.find(wish)
      case 'take-over':
        return this.#kept.takeOver()
      case 'use-new-version':
        return this.newVersion?.()
      case 'new':
        return this.#go('shelf')
      case 'working':
        return this.#working.ask(wish.cell, this.desk?.sheet, event.composedPath()[0])
      case 'light':
        return this.#working.light(wish.lines)
      case 'close-working':
        return this.#working.close()
      default:
        return this.#show(wish)
    }
  }

  #show(wish: DialogWish): void {
    import('./tb-dialogs.js')
      .then(() => this.renderRoot.querySelector('tb-dialogs')?.show(wish))
      .catch(() => this.#say(partNotFetched))
  }

  #learnt = (): void => {
    this.teaching = false
    void this.#where.find({}) // its button is gone
  }

  #go = (to: PlaceName): void => {
    void this.#where.go(to)
    if (to === 'shelf' && this.layout !== 'wide') this.#working.close()
  }

  #followAddress = (): void => {
    this.#takeLink()
    this.#where.follow()
    this.requestUpdate() // a place may have a foot at one address and none at another
  }

  protected override willUpdate(): void {
    if (this.layout === 'narrow') void import('./tb-places.js') // only there it is shown
    this.#working.stayWith(this.desk?.sheet)
  }

  protected override updated(): void {
    this.desk?.shown()
    this.#typed?.check()
    if (isApart(this.place)) return // which has a title of its own
    const name = this.desk?.formula?.name
    document.title = name ? pageTitle(name) : programName
  }

  override render() {
    const { desk, layout, place, numbers, version } = this
    const { readOnly } = this.#kept
    const drawer = layout === 'middle' && place === 'shelf'
    return html`
      ${isApart(place) ? nothing : html`<button class="skip" @click=${() => this.#where.find({})}>${skipToSheet}</button>`}
      <tb-head
        .name=${desk?.workbook.name ?? ''}
        .kept=${this.#typed || this.#early.size === 0 ? this.kept : ({ status: 'waiting' } as const)}
        .undoLabel=${desk?.history.undoLabel}
        .redoLabel=${desk?.history.redoLabel}
        ?readOnly=${readOnly}
        .layout=${layout}
        .place=${place}
        .numbers=${numbers}
      ></tb-head>
      <tb-notices .now=${this.#circumstances()}></tb-notices>
      ${
        desk
          ? threePlaces({
              desk,
              layout,
              place,
              drawer,
              numbers,
              version,
              readingsCame: this.readingsCame,
              readOnly,
              examples: this.#kept.examples,
              unread: this.#kept.unread,
              teaching: this.teaching,
              asked: this.#working.asked,
              lit: this.#working.lit,
              learnt: this.#learnt,
              go: this.#go,
            })
          : nothing
      }
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
      ${this.#toast.sentence ? html`<p class="toast">${this.#toast.sentence}</p>` : nothing}
      ${this.dragging ? html`<p class="drop">${dropHint}</p>` : nothing}
    `
  }

  #circumstances(): Circumstances {
    const { deleted, newVersion, numbers, seen } = this
    return {
      kept: this.#kept,
      typed: this.#typed,
      newVersion,
      deleted,
      seen,
      numbers,
      goTo: place => {
        this.#where.goTo(place)
        void this.updateComplete.then(() => this.#typed?.restore())
      },
      dismiss: what => {
        if (what === 'deleted') this.deleted = ''
        else this.seen = new Set(this.seen).add(what)
      },
    }
  }

  static override styles = appStyles
}
customElements.define('tb-app', TbApp)

declare global {
  interface HTMLElementTagNameMap {
    'tb-app': TbApp
  }
}

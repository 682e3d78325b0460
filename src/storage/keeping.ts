import type { Formula } from '../dough/document/formula.js'
import type { Workbook } from '../dough/document/workbook.js'
import type { PartStore } from './disk/parts.js'
import type { Texts } from './disk/small-texts.js'
import type { KeeperNews } from './news.js'
import type { TypedText } from './record/typed-texts.js'
import type { KeeperState } from './state.js'
import type { TabEvents, Tabs } from './tabs.js'

/** Keeps a workbook in the browser's storage. */
export interface Keeper {
  /** The workbook as it stands: what `keep` was last given, or what came from another tab since. */
  readonly workbook: Workbook
  readonly state: KeeperState
  /** Whether the database had no workbook when it was opened. */
  readonly fresh: boolean
  /** Whether what is stored could not be read at all, so that nothing is known of it. */
  readonly unread: boolean
  /** What could not be read, and what was kept as a copy because two tabs had changed it; worded by `newsInWords`. */
  readonly problems: readonly KeeperNews[]
  /** What is stored and could not be read, or not all of it: by its key, as it is. */
  damaged(): Promise<ReadonlyMap<string, unknown>>
  /** The browser's answer to keeping the workbook when disk space runs low; undefined until asked, at the first edit. */
  readonly persisted: boolean | undefined
  /**
   * To be called after every edit. The first after 400 ms without one is saved as soon as it is painted, others 400 ms after the last
   * and 1 s after the first of them; all at once when the page is left.
   */
  keep(workbook: Workbook): void
  /** The edits that led to the workbook as it was opened, as they are stored; to be read with `readSteps`. */
  readonly steps: unknown
  /** What stood in fields and was not entered when the page that edited before this one went away. */
  readonly left: readonly TypedText[]
  /** To be called with all that is being typed, whenever it changes: it is saved as edits are. */
  type(texts: readonly TypedText[]): void
  /** Whether going away now may lose something: storage fails, or has not answered for a while. */
  readonly atRisk: boolean
  /** Fetches what a keeper needs only later; without it edits of a page that goes away at once may be lost. */
  fetchRest(): Promise<unknown>
  /** Saves now, also after a failure. Resolves when that has ended; `state` says how. */
  flush(): Promise<void>
  /** Makes this the tab that edits. */
  takeOver(): Promise<void>
  /** Saves and lets go of database and lock. */
  close(): Promise<void>
}

export interface KeeperOptions {
  readonly database: string // name of the IndexedDB database and of the lock
  readonly onState: (state: KeeperState) => void
  /** The workbook changed other than by `keep`; `why` is a sentence for the baker. */
  readonly onWorkbook?: (workbook: Workbook, why: string) => void
  /** Awaited before formulas that were read are taken in; must not reject. */
  readonly prepare?: (formulas: readonly Formula[]) => Promise<void>
  // What follows is the browser's unless given, as tests do.
  readonly parts?: PartStore
  readonly texts?: Texts
  /** What can be taken back, to be stored with each save; plain data. */
  readonly stepsToKeep?: () => unknown
  readonly tabs?: (database: string, events: TabEvents) => Tabs
  readonly onLeave?: (listener: () => void) => () => void
  readonly persist?: () => Promise<boolean>
}

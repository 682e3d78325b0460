import type { Change } from '../../src/dough/document/workbook.js'
import { remembered } from '../../src/storage/disk/remembered.js'
import type { Desk } from './desk.js'

/** When formulas were last opened and changed in this browser, milliseconds since 1970 by their ids; the latest hundred of each. */
export const lastOpened = remembered('formulas opened')
export const lastChanged = remembered('formulas changed')

/** The formulas that changes are of; what is deleted is none. */
const formulasOf = (changes: readonly Change[]): ReadonlySet<string> =>
  new Set(
    changes.flatMap(change =>
      change.of === 'formula'
        ? change.value
          ? [change.id]
          : []
        : 'formula' in change
          ? [change.formula]
          : [],
    ),
  )

/** Notes what is opened on a desk, which changes the page's address, and what is changed, until the signal ends it. */
export function noteTimes(desk: Desk, signal: AbortSignal): void {
  const opened = () => {
    if (desk.formula) lastOpened.put(desk.formula.id, Date.now())
  }
  opened()
  window.addEventListener('hashchange', opened, { signal })
  let latest = '' // noted: once is enough while nothing else is changed
  const stop = desk.history.subscribe(({ way, transaction }) => {
    if (way === 'load') return // from another tab, which has noted it
    for (const id of formulasOf(transaction.changes)) {
      if (id !== latest) lastChanged.put(id, Date.now())
      latest = id
    }
  })
  signal.addEventListener('abort', stop)
}

import { promisifyRequest } from 'idb-keyval'
import { openDatabase } from '../disk/database.js'

/** A file that the baker named: of the File System Access API, or a stand-in of the tests. */
export interface CopyFile {
  readonly name: string
  getFile(): Promise<Blob>
  createWritable(): Promise<{
    write(text: string): Promise<void>
    close(): Promise<void>
  }>
  queryPermission?(wanted: { readonly mode: 'readwrite' }): Promise<PermissionState>
  requestPermission?(wanted: { readonly mode: 'readwrite' }): Promise<PermissionState>
}

/** How often a baker is reminded to take a file. */
export const reminders = ['never', 'week', 'month'] as const
export type Reminder = (typeof reminders)[number]

/** What is remembered of copies outside the browser. Moments are ISO 8601, UTC. */
export interface CopyNotes {
  readonly file?: CopyFile
  readonly wrote?: { readonly at: string; readonly saved: string } // saved: of which save the file is
  readonly since?: string // there is something to take a file of
  readonly taken?: string // a file was last sent out by hand
  readonly quiet?: string // the reminder was last put away
  readonly every?: Reminder // left out: each month
}

/** Where the notes are kept. */
export interface NotesStore {
  read(): Promise<unknown>
  put(notes: CopyNotes): Promise<void>
}

/** In a database beside that of the workbook: what reads that need not know of files. */
export function databaseNotes(database: string): NotesStore {
  const { useStore } = openDatabase(`${database} copy`)
  return {
    read: () => useStore('readonly', store => promisifyRequest<unknown>(store.get('notes'))),
    put: notes =>
      useStore('readwrite', store => {
        store.put(notes, 'notes')
        return promisifyRequest(store.transaction)
      }),
  }
}

const isText = (value: unknown): value is string => typeof value === 'string'

/** The notes in what was stored; what cannot be read of them is left out. */
export function notesIn(stored: unknown): CopyNotes {
  if (typeof stored !== 'object' || stored === null) return {}
  const { file, wrote, since, taken, quiet, every } = stored as Record<string, unknown>
  const known = file as Partial<CopyFile> | undefined
  const written = wrote as Partial<NonNullable<CopyNotes['wrote']>> | undefined
  return {
    ...(typeof known?.createWritable === 'function' && { file: known as CopyFile }),
    ...(isText(written?.at) && isText(written.saved) && { wrote: { at: written.at, saved: written.saved } }),
    ...(isText(since) && { since }),
    ...(isText(taken) && { taken }),
    ...(isText(quiet) && { quiet }),
    ...(reminders.some(one => one === every) && { every: every as Reminder }),
  }
}

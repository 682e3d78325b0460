import assert from 'node:assert/strict'
import { test } from 'node:test'
import { readWorkbookFile, writeWorkbookFile } from '../../src/exchange/data/workbook-file.js'
import { type CopyFile, type CopyNotes, notesIn, reminders } from '../../src/storage/outside/copy-notes.js'
import { OutsideCopy } from '../../src/storage/outside/outside-copy.js'
import { loaf, workbookOf } from './bread.js'

/** The copy of the workbook in a file outside the browser. */

const start = Date.parse('2026-11-02T07:00:00.000Z')
const at = (days: number): string => new Date(start + days * 864e5).toISOString()
const saved = (name: string, days = 0) => ({
  workbook: workbookOf(loaf(name, 'flour 100%')),
  saved: at(days),
})

/** A file in memory that fails as it is told to. */
class MemoryFile implements CopyFile {
  readonly name = 'mill.json'
  text = ''
  written = 0
  permission: PermissionState = 'granted'
  asked = 0
  failing: Error | undefined

  async getFile(): Promise<Blob> {
    if (this.failing?.name === 'NotFoundError') throw this.failing
    return new Blob([this.text])
  }

  async createWritable() {
    if (this.failing) throw this.failing
    let text = ''
    return {
      write: async (part: string) => {
        text += part
      },
      close: async () => {
        this.text = text
        this.written += 1
      },
    }
  }

  queryPermission = async () => this.permission
  requestPermission = async () => {
    this.asked += 1
    this.permission = 'granted'
    return this.permission
  }
}

function bench(notes: unknown = undefined) {
  const kept = { notes }
  const clock = { days: 0 }
  const copy = new OutsideCopy({
    notes: {
      read: async () => kept.notes,
      put: async now => {
        kept.notes = now
      },
    },
    write: writeWorkbookFile,
    onChange: () => {},
    after: 1e6,
    now: () => start + clock.days * 864e5,
  })
  return { copy, kept, clock, file: new MemoryFile() }
}

const namesIn = ({ text }: MemoryFile) => readWorkbookFile(text).workbook!.formulas.map(({ name }) => name)

test('the file is written at once when it is named, again after each save, and only when there is something new', async () => {
  const { copy, kept, clock, file } = bench()
  await copy.open()
  copy.saved(saved('Rye'))
  await copy.keepIn(file)
  assert.deepEqual(namesIn(file), ['Rye'])
  clock.days = 1
  copy.saved(saved('Spelt', 1))
  assert.equal(copy.isUpToDate, false)
  await copy.flush()
  await copy.flush()
  assert.deepEqual([namesIn(file), file.written, copy.isUpToDate], [['Spelt'], 2, true])
  assert.deepEqual(copy.notes.wrote, { at: at(1), saved: at(1) })

  const next = bench(kept.notes)
  await next.copy.open()
  next.copy.saved(saved('Spelt', 1))
  assert.equal(next.copy.isUpToDate, true, 'a page that begins later knows what is in it')
})

test('a save is written by itself after a while, several within it as one', async () => {
  const file = new MemoryFile()
  const done = new Promise<void>(resolve => {
    const copy = new OutsideCopy({
      notes: { read: async () => ({ file }), put: async () => {} },
      write: writeWorkbookFile,
      onChange: () => copy.notes.wrote && resolve(),
      after: 1,
    })
    void copy.open().then(() => {
      copy.saved(saved('Rye'))
      copy.saved(saved('Spelt', 1))
    })
  })
  await done
  assert.deepEqual([namesIn(file), file.written], [['Spelt'], 1])
})

test('where the browser asks again, nothing is written before a click, and then it is', async () => {
  const { copy, file } = bench()
  copy.saved(saved('Rye'))
  file.permission = 'prompt'
  await copy.keepIn(file)
  assert.equal(copy.problem?.message, 'The browser asks again before Tarebook may write mill.json.')
  assert.equal(file.written, 0)
  await copy.flush({ ask: true })
  assert.deepEqual([file.asked, namesIn(file), copy.problem], [1, ['Rye'], undefined])
})

test('a file that something else has written is left alone until it is to be written over', async () => {
  const { copy, file } = bench()
  copy.saved(saved('Rye'))
  await copy.keepIn(file)
  file.text = writeWorkbookFile(saved('From the laptop').workbook, at(5))
  copy.saved(saved('Spelt', 1))
  await copy.flush()
  assert.equal(copy.problem?.code, 'copyFileOther')
  assert.deepEqual(namesIn(file), ['From the laptop'])
  await copy.flush({ over: true })
  assert.deepEqual([namesIn(file), copy.problem], [['Spelt'], undefined])
})

for (const [name, code] of [
  ['NotFoundError', 'copyFileGone'],
  ['NotAllowedError', 'copyNotAllowed'],
  ['QuotaExceededError', 'copyNotWritten'],
] as const)
  test(`${name} is told in a sentence, what was in the file stays, and the next writing is as any`, async () => {
    const { copy, file } = bench()
    copy.saved(saved('Rye'))
    await copy.keepIn(file)
    file.failing = new DOMException('', name)
    copy.saved(saved('Spelt', 1))
    await copy.flush()
    assert.equal(copy.problem?.code, code)
    assert.deepEqual([namesIn(file), copy.isUpToDate], [['Rye'], false])
    file.failing = undefined
    await copy.flush()
    assert.deepEqual([namesIn(file), copy.problem], [['Spelt'], undefined])
  })

test('a copy that is no longer kept is not written, and its file stays', async () => {
  const { copy, kept, file } = bench()
  copy.saved(saved('Rye'))
  await copy.keepIn(file)
  copy.stop()
  copy.saved(saved('Spelt', 1))
  await copy.flush()
  assert.deepEqual(namesIn(file), ['Rye'])
  assert.equal((kept.notes as CopyNotes).file, undefined)
})

test('it reminds when no file has been taken for as long as was chosen, a month until it was', async () => {
  const { copy, clock, file } = bench()
  await copy.open()
  const dueAfter = (days: number) => {
    clock.days = days
    return copy.due
  }
  assert.equal(dueAfter(99), undefined, 'there is nothing to take')
  clock.days = 0
  copy.saved(saved('Rye'))
  assert.deepEqual([dueAfter(30), dueAfter(31)], [undefined, at(0)])
  copy.putOff()
  assert.deepEqual([dueAfter(60), dueAfter(62)], [undefined, at(0)])
  copy.tookFile()
  assert.deepEqual([dueAfter(90), dueAfter(93)], [undefined, at(62)])
  copy.remind('week')
  assert.deepEqual([dueAfter(69), dueAfter(70)], [undefined, at(62)])
  copy.remind('never')
  assert.equal(dueAfter(999), undefined)
  copy.remind('week')
  await copy.keepIn(file)
  assert.equal(copy.due, undefined, 'a file is kept up to date')
})

test('what is remembered is read whatever it is', () => {
  for (const odd of [undefined, null, 5, 'x', [], { file: {}, wrote: 3, every: 'hour', since: 1 }])
    assert.deepEqual(notesIn(odd), {})
  for (const every of reminders) assert.deepEqual(notesIn({ every, taken: at(1) }), { every, taken: at(1) })
})

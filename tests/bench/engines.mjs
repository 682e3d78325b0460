/** Key presses until they are painted, by engine: the same workbook, keys and clock in each of them. */
import { writeFile } from 'node:fs/promises'
import { buildSite } from '../../src/app/build.mjs'
import { serve } from '../../src/app/server.mjs'
import { engines } from '../browsers/engines.mjs'

/**
 * @import { Row } from './row'
 * @import { Seat } from '../browsers/seats.mjs'
 */

const lines = 500
const samples = 31

/** A workbook of one formula, as the browser keeps it: by key. */
const kept = () => {
  const line = (/** @type {number} */ i) => {
    const [ingredient, amount] = [
      ['Bread flour', '80%'],
      ['Wholemeal spelt', '20%'],
      ['Salt', '2%'],
    ][i] ?? [`Seed ${i}`, '1%']
    return { id: `line-${i}`, ingredient, amount, note: '' }
  }
  const water = { id: 'water', ingredient: 'Water', amount: '60%', note: '' }
  return {
    workbook: {
      format: 'tarebook workbook',
      version: 1,
      revision: 1,
      mark: 'bench',
      savedAt: '2026-05-01T08:00:00.000Z',
      name: 'Brackwater Mill',
      shelf: ['bread'],
      larder: [],
    },
    'formula bread': {
      id: 'bread',
      name: 'Bread',
      note: '',
      flourWeight: 1000,
      meanings: [],
      keptSettings: [],
      stages: [
        {
          id: 'dough',
          name: 'Final dough',
          lines: [line(0), line(1), water, ...Array.from({ length: lines - 3 }, (_, i) => line(i + 2))],
        },
      ],
    },
  }
}

/** A page that keeps the workbook. */
const keepingPage = () => `<!doctype html><script type="module">
  const opened = indexedDB.open('engines', 1)
  opened.onupgradeneeded = () => opened.result.createObjectStore('workbook')
  opened.onsuccess = () => {
    const transaction = opened.result.transaction('workbook', 'readwrite')
    for (const [key, value] of Object.entries(${JSON.stringify(kept())}))
      transaction.objectStore('workbook').put(value, key)
    transaction.oncomplete = () => {
      opened.result.close()
      globalThis.isKept = true
    }
  }
</script>`

const grid = `document.querySelector('tb-app')?.shadowRoot?.querySelector('tb-sheet')?.shadowRoot
  ?.querySelector('tb-grid')?.shadowRoot`

/** Once all rows are there: has Enter timed until the readings are painted otherwise. */
const watching = `
  const grid = ${grid}
  const rows = grid?.querySelectorAll('td[data-column="weight"]').length ?? 0
  if (rows < ${lines} || grid.querySelector('[aria-busy]')) return false
  if (globalThis.times) return true
  globalThis.times = []
  const shown = () => document.querySelector('tb-app').shadowRoot.querySelector('tb-tally').shadowRoot.querySelector('dl').textContent
  const painted = work => requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = work
    port2.postMessage(0)
  })
  addEventListener('keydown', event => {
    if (event.key !== 'Enter') return
    const before = shown()
    const look = () => painted(() => {
      if (shown() === before) look()
      else globalThis.times.push(performance.now() - event.timeStamp)
    })
    look()
  }, { capture: true })
  return true`

const toWater = `
  const rows = [...${grid}.querySelectorAll('tr[data-row]')]
  rows.find(row => row.textContent.trim().startsWith('Water')).querySelector('[data-column="percent"]').focus()`

/** What was typed is painted, and nothing more is to be: a baker's Enter does not come in the same frame. */
const resting = `
  globalThis.rests ??= { since: 0 }
  const { rests } = globalThis
  if (!rests.asked) {
    rests.asked = true
    const frame = () => requestAnimationFrame(() => setTimeout(() => {
      rests.since += 1
      if (rests.since < 6) frame()
    }))
    frame()
  }
  if (rests.since < 6) return false
  globalThis.rests = undefined
  return true`

/**
 * @param {Seat} seat
 * @param {string} script
 * @param {(value: any) => boolean} isSo
 */
async function until(seat, script, isSo) {
  for (
    const end = Date.now() + 60_000;
    Date.now() < end;
    await new Promise(resolve => setTimeout(resolve, 10))
  )
    if (isSo(await seat.evaluate(script))) return
  throw new Error(`waited in vain for ${script}`)
}

/**
 * @param {Seat} seat
 * @param {string} origin
 * @returns {Promise<number>} ms, median
 */
async function keyPress(seat, origin) {
  await seat.page.setViewport({ width: 1280, height: 900 })
  await seat.page.goto(`${origin}/keeping.html`)
  await until(seat, 'return globalThis.isKept', Boolean)
  await seat.page.goto(`${origin}/?offline=no&database=engines`)
  await until(seat, watching, Boolean)
  for (let sample = 0; sample < samples + 4; sample += 1) {
    await seat.evaluate(toWater)
    await seat.page.keyboard.type(String(60 + (sample % 19) + 1))
    await until(seat, resting, Boolean)
    await seat.page.keyboard.press('Enter')
    await until(seat, 'return globalThis.times.length', count => count > sample)
  }
  const times = /** @type {number[]} */ (await seat.evaluate('return globalThis.times'))
  return times.slice(4).sort((a, b) => a - b)[samples >> 1] ?? Number.NaN
}

/**
 * @param {string} folder for builds
 * @returns {Promise<Row[]>}
 */
export async function engineRows(folder) {
  const { outdir } = await buildSite({ outdir: `${folder}/site-of-engines` })
  await writeFile(`${outdir}/keeping.html`, keepingPage())
  const server = await serve(outdir, 0)
  const origin = `http://localhost:${server.port}`
  /** @type {Row[]} */
  const rows = []
  try {
    for (const { name, find, seats } of engines) {
      const program = find()
      if (!program) continue
      const seat = await seats(program)(origin)
      try {
        const value = await keyPress(seat, origin)
        const [first] = rows
        const row = { name: `key press to painted readings in ${name}, ${lines} lines`, value, unit: 'ms' }
        rows.push(
          first
            ? {
                ...row,
                name: `${row.name}; Chromium’s`,
                baseline: first.value,
                ratio: value / first.value,
                budget: 1.5,
              }
            : row,
        )
      } finally {
        await seat.close()
      }
    }
    return rows
  } finally {
    server.close()
  }
}

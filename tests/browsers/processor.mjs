/** How long processes kept a processor busy, on Linux; elsewhere nobody is asked. */
import { readdirSync, readFileSync } from 'node:fs'

const tick = 10 // ms; all Linux kernels count these in hundredths of a second

/** @returns {Map<number, { parent: number, ms: number }>} all processes */
function processes() {
  const all = new Map()
  for (const name of readdirSync('/proc')) {
    if (!/^\d+$/.test(name)) continue
    try {
      const text = readFileSync(`/proc/${name}/stat`, 'utf8')
      // After the program's name, in parentheses: its state, its parent … utime, stime, and those of children that ended.
      const fields = text.slice(text.lastIndexOf(')') + 2).split(' ')
      const ms = [11, 12, 13, 14].reduce((sum, at) => sum + Number(fields[at]) * tick, 0)
      all.set(Number(name), { parent: Number(fields[1]), ms })
    } catch {} // it has ended
  }
  return all
}

/**
 * @param {readonly number[]} pids
 * @returns {number} milliseconds that they and all that they started were busy
 */
export function busy(pids) {
  if (process.platform !== 'linux') return Number.NaN
  const all = processes()
  const belongs = /** @param {number} pid @returns {boolean} */ pid =>
    pids.includes(pid) || (all.has(pid) && belongs(all.get(pid)?.parent ?? 0))
  return [...all].reduce((sum, [pid, { ms }]) => (belongs(pid) ? sum + ms : sum), 0)
}

import { newId } from '../dough/document/formula.js'

/** What a tab hears of the others. */
export interface TabEvents {
  /** This tab may write from now on. */
  gained(): Promise<void>
  /** Another tab writes from now on. */
  lost(): void
  /** Another tab wants to write: stop editing and save; the promise ends this tab's turn. */
  asked(): Promise<void>
  /** Another tab has saved. */
  saved(): void
}

/** The tabs of one workbook, seen from one of them: one writes, the others read. */
export interface Tabs {
  /** Resolves to whether this tab may write. */
  enter(): Promise<boolean>
  /** Asks the tab that writes to save and hand over; takes over without its answer after 2 seconds. */
  takeOver(): Promise<void>
  /** Tells the others that this tab has saved. */
  saved(): void
  leave(): void
}

const answerWithin = 2000 // milliseconds
const reloadWithin = 200 // milliseconds in which a page being reloaded lets go of its lock

const pause = (milliseconds: number): Promise<false> =>
  new Promise(resolve => setTimeout(() => resolve(false), milliseconds))

/**
 * One writer at a time by Web Locks, which a browser releases when a tab closes or crashes: the next tab then
 * gains. Without locks (insecure pages) every tab writes, and the revision check of the keeper protects.
 */
export function openTabs(database: string, events: TabEvents): Tabs {
  const locks = globalThis.navigator?.locks as LockManager | undefined
  const name = `tarebook ${database}`
  const self = newId()
  const channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel(name)

  let release: (() => void) | undefined // while this tab holds the lock
  let waiting: AbortController | undefined // while it queues for it
  let entered = false
  let left = false
  let answered: (() => void) | undefined // while this tab asks
  let taking: Promise<void> | undefined

  const holds = () => release !== undefined

  /** Resolves to whether the lock was granted; rejects when the browser refuses locks. */
  function request(options: LockOptions): Promise<boolean> {
    return new Promise((resolve, reject) => {
      let mine: (() => void) | undefined
      locks!
        .request(name, options, lock => {
          if (!lock || left) return resolve(false)
          return new Promise<void>(letGo => {
            mine = letGo
            release = letGo
            resolve(true)
          })
        })
        .catch(error => {
          if (!mine) {
            if (options.signal?.aborted) resolve(false)
            else reject(error)
          } else if (release === mine) {
            // Stolen: the request rejects with AbortError although it had been granted.
            release = undefined
            events.lost()
            void queue()
          }
        })
    })
  }

  async function unanswered(): Promise<never> {
    await pause(answerWithin)
    throw new Error('Locks do not answer.')
  }

  async function queue(): Promise<boolean> {
    if (left) return false
    waiting = new AbortController()
    const granted = await request({ signal: waiting.signal }).catch(() => false)
    if (granted) waiting = undefined
    if (granted && entered) await events.gained()
    return granted
  }

  async function handOver(to: string): Promise<void> {
    await events.asked()
    if (!holds()) return
    channel?.postMessage({ type: 'yours', to })
    // Kept until it is taken, so that no third tab comes in between.
    await pause(answerWithin)
    if (holds()) await events.gained()
  }

  async function take(): Promise<void> {
    waiting?.abort()
    waiting = undefined
    if (channel) {
      const answer = new Promise<void>(resolve => {
        answered = resolve
      })
      channel.postMessage({ type: 'hand over', from: self })
      await Promise.race([answer, pause(answerWithin)])
      answered = undefined
    }
    if (await request({ steal: true })) await events.gained()
  }

  if (channel) {
    channel.onmessage = ({ data }: MessageEvent<{ type?: unknown; from?: unknown; to?: unknown }>) => {
      if (data?.type === 'saved') events.saved()
      if (data?.type === 'hand over' && release) void handOver(String(data.from))
      if (data?.type === 'yours' && data.to === self) answered?.()
    }
  }

  return {
    async enter() {
      if (!locks) return true
      try {
        // Where locks never answer, a page is as one without them.
        const first = await Promise.race([request({ ifAvailable: true }), unanswered()])
        const granted = first || (await Promise.race([queue(), pause(reloadWithin)]))
        entered = true
        return granted
      } catch {
        return true // refused, as in a sandboxed frame
      }
    },
    async takeOver() {
      if (!locks || release) return
      taking ??= take().finally(() => {
        taking = undefined
      })
      await taking
    },
    saved: () => channel?.postMessage({ type: 'saved' }),
    leave() {
      left = true
      waiting?.abort()
      release?.()
      release = undefined
      channel?.close()
    },
  }
}

import { numberStyleOf } from '../../components/base/numbers.js'
import '../../components/page/tb-app.js'
import { keepOffline } from './offline.js'

const asked = new URLSearchParams(location.search)
const app = document.querySelector('tb-app')!

/** What stands in the page for the case that it does not start; it shows itself after a while. */
const trouble = document.querySelector('.trouble')!
const inTrouble = (): void => trouble.classList.add('now')
const starting = new AbortController()
const { signal } = starting
addEventListener('unhandledrejection', inTrouble, { signal })
// Sizes that come round in a loop are no fault: browsers call it an error, but there is none with it.
addEventListener('error', ({ error }) => error && inTrouble(), { signal })

async function start(): Promise<void> {
  app.numbers = numberStyleOf(navigator.language)
  app.database = asked.get('database') || 'tarebook'
  const examples = import('./first-start.js') // fetched while the database opens: a first start waits for both
  examples.catch(() => {}) // told where they are wanted
  app.loadExamples = async () => (await examples).firstStart()
  await app.start()
  await app.drawn()
  starting.abort()
  if (!trouble.classList.contains('now')) trouble.remove()
  if (asked.get('offline') !== 'no') {
    await keepOffline(takeOver => {
      app.newVersion = takeOver
    })
  }
}

start().catch(inTrouble)

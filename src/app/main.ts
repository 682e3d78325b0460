import { offerReadingWorker } from '../../components/bring-in/reading-worker.js'
import { numberStyleOf } from '../../components/numbers.js'
import '../../components/tb-app.js'
import { keepOffline } from './offline.js'

const asked = new URLSearchParams(location.search)
const app = document.querySelector('tb-app')!

app.numbers = numberStyleOf(navigator.language)
app.database = asked.get('database') || 'tarebook'
app.loadExamples = async () => (await import('./first-start.js')).firstStart()

const worker = document.querySelector<HTMLMetaElement>('meta[name="reading-worker"]')!.content
offerReadingWorker(() => new Worker(new URL(worker, document.baseURI), { type: 'module' }))

void app.start()

if (asked.get('offline') !== 'no') {
  void keepOffline(takeOver => {
    app.newVersion = takeOver
  })
}

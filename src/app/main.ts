import { numberStyleOf } from '../../components/numbers.js'
import '../../components/tb-app.js'
import { keepOffline } from './offline.js'

const asked = new URLSearchParams(location.search)
const app = document.querySelector('tb-app')!

app.numbers = numberStyleOf(navigator.language)
app.database = asked.get('database') || 'tarebook'
app.loadExamples = async () => (await import('./first-start.js')).firstStart()
void app.start()

if (asked.get('offline') !== 'no') {
  void keepOffline(takeOver => {
    app.newVersion = takeOver
  })
}

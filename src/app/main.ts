import { numberStyleOf } from '../../components/base/numbers.js'
import '../../components/page/tb-app.js'
import { keepOffline } from './offline.js'

const asked = new URLSearchParams(location.search)
const app = document.querySelector('tb-app')!

app.numbers = numberStyleOf(navigator.language)
app.database = asked.get('database') || 'tarebook'
const examples = import('./first-start.js') // fetched while the database opens: a first start waits for both
examples.catch(() => {}) // told where they are wanted
app.loadExamples = async () => (await examples).firstStart()

void app.start()

if (asked.get('offline') !== 'no') {
  void keepOffline(takeOver => {
    app.newVersion = takeOver
  })
}

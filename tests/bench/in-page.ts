/** The engine's rows in a page. */
import { doughRows } from './dough'
import { engineRows } from './engine'

const page = globalThis as typeof globalThis & {
  gc?: () => void
  performance: Performance & { memory?: { readonly usedJSHeapSize: number } }
  rows?: () => unknown
}
const { gc } = page
const { memory } = page.performance

page.rows = () => {
  const now = () => performance.now()
  const used =
    gc &&
    memory &&
    (() => {
      gc()
      return performance.now() && (page.performance.memory?.usedJSHeapSize ?? 0)
    })
  return [...engineRows(now, used), ...doughRows(now)]
}

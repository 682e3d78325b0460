/** The engine's rows in a page. */
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
  if (!gc || !memory) return engineRows(now)
  return engineRows(now, () => {
    gc()
    return performance.now() && (page.performance.memory?.usedJSHeapSize ?? 0)
  })
}

/** The engine's and the dough's rows in a page; what a page uses outside its heap cannot be had there. */
import { doughRows } from './dough'
import { engineRows } from './engine'

const page = globalThis as typeof globalThis & { rows?: () => unknown }
const now = () => performance.now()

page.rows = () => [...engineRows(now), ...doughRows(now)]

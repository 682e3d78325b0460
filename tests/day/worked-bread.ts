import type { Formula } from '../../src/dough/document/formula.js'
import { bread } from './notation.js'

/** The bread of the worked check of a day's times; `salt` is what its step that adds the salt is called. */
export const workedWheat = (salt = 'Salt'): Formula =>
  bread(
    'Mill wheat',
    `Levain:
       Ripe starter 40 g
       Bread flour 100 g
       Water 80 g
       hands Mix: 10 min
       wait Ripen: 8–10 h
     Final dough:
       Bread flour 820 g
       Wholemeal spelt 180 g
       Water 690 g
       Salt 21 g
       Levain 210 g
       hands Mix: 10 min
       wait Rest: 30–60 min
       hands ${salt}: 5 min, adds Salt
       wait Bulk: 3.5–4.5 h, 2 × 5 min every 30 min
       hands Divide and shape: 20 min
       wait Retard: 12–15 h
       bake Bake: 45 min`,
  )

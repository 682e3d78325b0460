import type { Formula } from '../../document/formula.js'
import type { Larder } from '../../document/larder.js'
import type { ReadingName } from '../../document/reading-names.js'
import { type LinePlan, outlineOf } from '../../outline/outline.js'
import type { LineAt } from '../edit-places.js'

/** The line that would naturally give for a reading: water for hydration, salt for salt, levain for what it ferments. */
export function naturalGiver(formula: Formula, larder: Larder, reading: ReadingName): LineAt | undefined {
  const { final } = outlineOf(formula, larder)
  const kinds: Partial<Record<ReadingName, (line: LinePlan) => boolean>> = {
    trueHydration: l => l.countsAs?.kind === 'water',
    listedHydration: l => l.countsAs?.kind === 'water',
    moistureHydration: l => l.countsAs?.kind === 'water',
    hydrationWithoutSoakers: l => l.countsAs?.kind === 'water',
    totalWater: l => l.countsAs?.kind === 'water',
    salt: l => l.countsAs?.kind === 'salt',
    prefermentedFlour: l => l.source?.ferments === true || l.countsAs?.kind === 'starter',
    levainOnFlour: l => l.source?.ferments === true || l.countsAs?.kind === 'starter',
    totalFlour: l => l.countsAs?.kind === 'flour',
    doughWeight: l => l.countsAs?.kind === 'flour',
    egg: l => l.ingredient?.kind === 'egg',
    milk: l => l.ingredient?.kind === 'dairy',
    sugar: l => l.ingredient?.kind === 'sugar',
    fat: l => l.ingredient?.kind === 'fat',
  }
  const fits = final.lines.filter(kinds[reading]!)
  const line = fits.find(l => !l.gives || l.gives.reading === reading) ?? fits[0]
  return line && { formula: formula.id, stage: final.stage.id, line: line.line.id }
}

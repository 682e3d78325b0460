import { written } from '../../engine/index.js'
import type { JottingPlan } from '../amounts/jottings.js'
import { measured } from '../document/words.js'
import { cellOf, meaningInJotting } from '../outline/names.js'
import type { FigureReader } from './figure-reader.js'
import { sourcesOf } from './line-workings.js'
import { workingWords } from './words.js'
import type { Source, Working } from './working.js'

/** The working of one of the baker's own calculations. */
export function jottingWorking(read: FigureReader, plan: JottingPlan): Working {
  const cell = cellOf.jotting(plan.name)
  const { outline } = read.at
  const sources: Source[] = []
  const figures = (plan.expression?.names ?? []).map(name => {
    const found = sourcesOf(read, meaningInJotting(name, outline), outline.final)
    sources.push(...found)
    if (found.length < 2) return found[0]?.figure ?? name
    return `(${found.map(f => f.figure).join(' + ')})`
  })
  const end = measured(read.number(cell), plan.dimension)
  const said = plan.expression
    ? written(plan.expression.tree, { names: figures, numbers: plan.expression.numbers })
    : ''
  return read.done(
    plan.jotting.name,
    cell,
    workingWords.jotted(plan.jotting.text),
    `${said} = ${end}`,
    sources,
  )
}

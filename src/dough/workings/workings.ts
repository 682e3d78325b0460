import { nameKey } from '../document/formula.js'
import { type ReadingName, readingNames } from '../document/reading-names.js'
import type { Count, Outline } from '../outline/outline.js'
import type { WorkedOut } from '../sheet/worked-out.js'
import { FigureReader } from './figure-reader.js'
import { jottingWorking } from './jotting-workings.js'
import { lineBatch, linePercent, lineWeight, lineWholeDough } from './line-workings.js'
import { readingWorking } from './reading-workings.js'
import { stageBase, stageBuild, stageCount, stageTaken, stageWeight } from './stage-workings.js'
import { countWords } from './words.js'
import type { CellName, Working } from './working.js'

/** The working of a cell. Throws RangeError for one that is not in the formula. */
export function workingOf(at: WorkedOut, cell: CellName): Working {
  const read = new FigureReader(at)
  if ((readingNames as readonly string[]).includes(cell)) return readingWorking(read, cell as ReadingName)
  const jotting = [...at.outline.jottings.values()].find(j => cell === `jotting ${j.jotting.id}`)
  if (jotting) return jottingWorking(read, jotting)
  const [, kind, id, what] = /^(line|stage) (.*) (\w+)$/.exec(cell) ?? []
  const stages = at.outline.stages
  const line = kind === 'line' && stages.flatMap(s => s.lines).find(l => l.line.id === id)
  const stage = kind === 'stage' && stages.find(s => s.stage.id === id)
  if (line && what === 'weight') return lineWeight(read, line)
  if (line && what === 'percent') return linePercent(read, line)
  if (line && what === 'wholeDough') return lineWholeDough(read, line)
  if (line && what === 'batch') return lineBatch(read, line)
  if (stage && what === 'base') return stageBase(read, stage)
  if (stage && what === 'weight') return stageWeight(read, stage)
  if (stage && what === 'taken') return stageTaken(read, stage)
  if (stage && what === 'build') return stageBuild(read, stage)
  if (stage && what && Object.hasOwn(countWords, what)) return stageCount(read, stage, what as Count)
  throw new RangeError(`There is no figure called ${cell} in ${at.outline.formula.name}.`)
}

/** The working to ask for of an ingredient's figure, by names; undefined when there is no such line. */
export function cellNamed(
  outline: Outline,
  stage: string,
  ingredient: string,
  column: 'weight' | 'percent' | 'wholeDough' | 'batch',
): CellName | undefined {
  const line = outline.stageNamed(stage)?.lines.find(l => nameKey(l.line.ingredient) === nameKey(ingredient))
  return line && `line ${line.line.id} ${column}`
}

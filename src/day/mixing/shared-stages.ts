import type { Day } from '../../dough/document/day.js'
import { finalDoughOf, nameKey, type Stage } from '../../dough/document/formula.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { sharedKey } from '../course/day-problem.js'

/** A stage that several breads of a day have. */
export interface SharedStage {
  readonly key: string // as `Day.together` has it
  readonly name: string
  readonly breads: readonly string[] // ids
  readonly isSame: boolean // of one make-up in all of them
}

const sameShare = 1e-9

/** What a stage is made of: names with their shares of its weight; undefined where that is not known. */
function makeUp(
  { id, lines }: Stage,
  sheet: FigureSheet,
): (readonly [name: string, share: number])[] | undefined {
  const { weight } = sheet.stage(id)
  if (!weight) return undefined
  const shares = lines.map(
    line => [nameKey(line.ingredient), (sheet.line(line.id).weight ?? Number.NaN) / weight] as const,
  )
  return shares.every(([, share]) => Number.isFinite(share)) ? shares : undefined
}

/** The stages that more than one bread of a day has by name, in the order in which they come. */
export function sharedStages(
  { breads }: Day,
  sheetOf: (bread: string) => FigureSheet | undefined,
): SharedStage[] {
  const found = new Map<string, { name: string; of: { bread: string; made: ReturnType<typeof makeUp> }[] }>()
  for (const { id } of breads) {
    const sheet = sheetOf(id)
    if (!sheet) continue
    const { formula } = sheet
    for (const stage of formula.stages) {
      if (stage === finalDoughOf(formula)) continue
      const key = sharedKey(stage.name)
      const entry = found.get(key) ?? { name: stage.name, of: [] }
      entry.of.push({ bread: id, made: makeUp(stage, sheet) })
      found.set(key, entry)
    }
  }
  return [...found].flatMap(([key, { name, of }]) => {
    if (of.length < 2) return []
    const first = of[0]!.made
    const isSame = of.every(
      ({ made }) =>
        first !== undefined &&
        made?.length === first.length &&
        made.every(
          ([line, share], i) => line === first[i]![0] && Math.abs(share - first[i]![1]) <= sameShare,
        ),
    )
    return [{ key, name, breads: of.map(({ bread }) => bread), isSame }]
  })
}

import { clockText, localOf } from '../../src/day/course/clock.js'
import { dateText } from '../../src/day/out/day-text.js'
import type { MadeBuild } from '../../src/day/trade/builds-made.js'
import { hasNotes, ownSizeOf } from '../../src/dough/about/own-size.js'
import { sayGrams } from '../batch/batch-prose.js'
import type { ListedBuild } from './tb-weigh-lists.js'
import type { TradeShown } from './trade-shown.js'
import { weighWords } from './words.js'

/** `Fri 4 Dec, 21:05`: when a build is mixed; '' where it has no time. */
function whenOf(build: MadeBuild, { begins, made, style }: TradeShown): string {
  const from = begins(build)
  if (from === undefined) return ''
  const { date, minutes } = localOf(Math.round(from), made.day.zone)
  return `${dateText(date, style.numbers.language, 'short')}, ${clockText(minutes)}`
}

/** The builds with their names: a dough by its bread, an earlier stage by itself and what it is for. */
export function listedBuilds(shown: TradeShown): ListedBuild[] {
  const { builds, nameOf, made } = shown
  const isAlone = made.day.breads.length === 1
  return builds.map(build => {
    const names = build.breads.map(nameOf)
    const when = whenOf(build, shown)
    if (build.isFinal && !isAlone)
      return { build, name: names.join(', '), about: [build.name, when].filter(Boolean).join(' · ') }
    const about = [isAlone ? '' : weighWords.for(names), when]
    return { build, name: build.name, about: about.filter(Boolean).join(' · ') }
  })
}

/** That the notes on the lists are written for other amounts, where they are; '' where they are not. */
export function notesSaid({ made, builds, sheetOf, style }: TradeShown): string {
  if (!builds.some(({ lines }) => lines.some(({ note }) => note))) return ''
  const sheets = made.day.breads.flatMap(({ id }) => sheetOf(id) ?? [])
  const own = sheets.filter(({ formula }) => hasNotes(formula)).flatMap(sheet => ownSizeOf(sheet) ?? [])
  if (!own.length) return ''
  return sheets.length === 1 ? weighWords.notesOf(sayGrams(own[0]!, style.numbers)) : weighWords.notesOfOwn
}

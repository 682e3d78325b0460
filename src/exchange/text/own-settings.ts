import {
  type Formula,
  finalDoughOf,
  isInProportion,
  type Stage,
  usualFlourWeight,
} from '../../dough/document/formula.js'
import { makeText } from '../values/batch-text.js'
import { countsAsText } from '../values/counts-as.js'
import { distinct } from '../values/distinct.js'
import { holdSetting, holdText, inProportion } from '../values/hold-text.js'
import { gramsText, percentText } from '../values/written-weights.js'
import { cell } from './plain-cells.js'

/** A setting as texts have it: what is set, then the cells of its value. */
export interface OwnSetting {
  readonly key: string
  readonly cells: readonly string[]
}

/** A setting on one line: two spaces are between its cells. */
export const settingLine = ({ key, cells }: OwnSetting): string => `${key}: ${cells.join('  ')}`

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
const setting = (key: string, ...cells: readonly string[]): OwnSetting => ({ key, cells })

/** What is set for a stage, and which of its lines are its base. */
export function stageSettings({ ferments, keepBack, loss, lines }: Stage): OwnSetting[] {
  const names = distinct(lines.map(({ ingredient }) => ingredient))
  return [
    ...(ferments === undefined ? [] : [setting('Ferments', ferments ? 'yes' : 'no')]),
    ...(keepBack === undefined
      ? []
      : [setting('Keep-back', keepBack === 'seed' ? keepBack : gramsText(keepBack))]),
    ...(loss === undefined ? [] : [setting('Loss', percentText(loss))]),
    ...lines.flatMap((line, at) => (line.base ? [setting('Base', cell(names[at]!))] : [])),
  ]
}

/** What is set for the whole formula, in words that are read again. */
export function formulaSettings(formula: Formula): OwnSetting[] {
  const { flourWeight, batch, holds = [], meanings, jottings = [], keptSettings } = formula
  const settings: OwnSetting[] = []
  if (flourWeight !== usualFlourWeight) settings.push(setting('Flour weight', `${flourWeight} g`))
  if (batch && batch.make === 'all of')
    settings.push(setting('Make', `all of ${gramsText(batch.grams)}`, cell(batch.ingredient)))
  else if (batch && batch.make !== 'as written') settings.push(setting('Make', makeText(batch)))
  if (batch?.loss !== undefined) settings.push(setting('Loss', percentText(batch.loss)))
  if (batch?.bakeLoss !== undefined) settings.push(setting('Bake loss', percentText(batch.bakeLoss)))
  const final = finalDoughOf(formula)
  const names = distinct(final.lines.map(({ ingredient }) => ingredient))
  for (const hold of holds) {
    if (isInProportion(hold)) settings.push(setting(capital(holdSetting(hold)), holdText(hold), inProportion))
    const name = names[final.lines.findIndex(({ id }) => id === hold.line)]
    if (name !== undefined)
      settings.push(setting(capital(holdSetting(hold)), holdText(hold), cell(name), 'gives'))
  }
  for (const { ingredient, countsAs } of meanings)
    settings.push(setting(`Counts as ${countsAsText(countsAs)}`, cell(ingredient)))
  for (const { name, text } of jottings) settings.push(setting('Jotting', cell(name), 'is', cell(text)))
  for (const { stage, setting: kept, amount, note, ingredient } of keptSettings) {
    const cells = [stage, kept, amount, note, ...(ingredient === undefined ? [] : [ingredient])]
    settings.push(setting('Kept setting', ...cells.map(cell)))
  }
  return settings
}

/** The settings with what each jotting comes to behind it, for people: those who read it again pass over that. */
export function withSaid(
  settings: readonly OwnSetting[],
  jottings: readonly { readonly said: string }[],
): OwnSetting[] {
  const said = jottings.values()
  return settings.map(one =>
    one.key === 'Jotting' ? { ...one, cells: [...one.cells, cell(said.next().value?.said ?? '')] } : one,
  )
}

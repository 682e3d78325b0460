import '../cells/rare-cells-at-once.js'
import type { Worded } from '../../engine/index.js'
import { hasBatch } from '../document/formula.js'
import { type Allergens, type Ingredient, isUnlisted } from '../document/larder.js'
import { ingredientKey, type LinePlan, type StagePlan } from '../outline/outline.js'
import { type FigureSheet, isUnsaid } from '../sheet/figures.js'
import { withOwnLabel } from './own-label.js'
import { type LabelDiagnostic, labelNote } from './words.js'

/** One ingredient of a dough, through all its stages. */
export interface LabelPart {
  readonly name: string // as the formula writes it first
  readonly ingredient: Ingredient | undefined // as the larder has it
  readonly isWater: boolean
  readonly isSalt: boolean
  readonly share: number // gram a gram of dough
  readonly allergens: Allergens | undefined // undefined: nobody has said
}

/** What a dough is made of; no parts where a weight is not known. */
export interface LabelParts {
  readonly parts: readonly LabelPart[] // in the order in which they are first mixed
  readonly notes: readonly Worded<LabelDiagnostic>[]
}

type Mix = ReadonlyMap<string, LabelPart>

const waterKey = 'usual-water'

/** How the flour of a starter is called where nothing in its formula is the flour it is fed with: by the cereal of the EU's list. */
function flourName({ eu }: Allergens): string {
  const cereals = eu.flatMap(entry => /^cereals containing gluten \(([^)]+)\)$/.exec(entry)?.[1] ?? [])
  const [only, ...more] = cereals
  return only && more.length === 0 ? `${only.charAt(0).toUpperCase()}${only.slice(1)} flour` : 'Flour'
}

/** Works out what a dough is made of: as its batch is weighed, or by what is written where it has none. */
class PartsOf {
  readonly notes: Worded<LabelDiagnostic>[] = []
  readonly #sheet: FigureSheet
  readonly #isBatch: boolean
  readonly #mixes = new Map<StagePlan, Mix>()
  readonly #unsaid: string[] = []
  readonly #told = new Set<string>()
  isKnown = true

  constructor(sheet: FigureSheet) {
    this.#sheet = sheet
    this.#isBatch = hasBatch(sheet.formula)
  }

  parts(): readonly LabelPart[] {
    const mix = this.#mixOf(this.#sheet.workedOut.outline.final)
    if (this.#unsaid.length) this.#tell({ code: 'labelLinesUnsaid', ingredients: [...new Set(this.#unsaid)] })
    if (this.isKnown && mix.size === 0) this.#tell({ code: 'labelNothingWeighed' })
    return this.isKnown ? [...mix.values()] : []
  }

  #tell(what: LabelDiagnostic): void {
    const key = JSON.stringify(what)
    if (!this.#told.has(key)) this.notes.push(labelNote(what))
    this.#told.add(key)
  }

  #grams({ line }: LinePlan): number | undefined {
    const figures = this.#sheet.line(line.id)
    return this.#isBatch ? (this.#sheet.weighed(line.id)?.grams ?? figures.batch) : figures.weight
  }

  /** What a gram of a stage is made of. */
  #mixOf(stage: StagePlan): Mix {
    const known = this.#mixes.get(stage)
    if (known) return known
    const mix = new Map<string, LabelPart>()
    this.#mixes.set(stage, mix) // while it is looked at
    const weighed = stage.lines.flatMap(plan => this.#weighed(plan))
    const total = weighed.reduce((sum, { grams }) => sum + grams, 0)
    for (const { plan, grams } of weighed) if (total > 0) this.#add(mix, plan, grams / total)
    return mix
  }

  #weighed(plan: LinePlan): { plan: LinePlan; grams: number }[] {
    const { line } = plan
    const name = line.ingredient.trim()
    if (!name && !line.amount) return []
    if (isUnsaid(line, this.#sheet.line(line.id))) {
      this.#unsaid.push(name)
      return []
    }
    const grams = this.#grams(plan)
    if (grams === undefined || grams < 0) {
      this.isKnown = false
      this.#tell({ code: 'labelWeightUnknown', ingredient: name || line.amount })
      return []
    }
    return grams > 0 ? [{ plan, grams }] : []
  }

  #add(mix: Map<string, LabelPart>, plan: LinePlan, share: number): void {
    const { source, countsAs, ingredient, line } = plan
    if (source) {
      for (const [key, part] of this.#mixOf(source)) put(mix, key, { ...part, share: part.share * share })
    } else if (countsAs?.kind === 'starter') {
      const flour = share / (1 + countsAs.hydration)
      this.#water(mix, share - flour)
      this.#flourOf(mix, plan, flour)
    } else if (countsAs?.kind === 'water') this.#water(mix, share)
    else
      put(mix, ingredientKey(plan), {
        name: line.ingredient.trim() || '–',
        ingredient: ingredient && withOwnLabel(ingredient),
        isWater: false,
        isSalt: countsAs?.kind === 'salt',
        share,
        allergens: ingredient?.allergens,
      })
  }

  #water(mix: Map<string, LabelPart>, share: number): void {
    const ingredient = this.#sheet.larder.find('Water')
    const none = { us: [], eu: [], canada: [] }
    put(mix, waterKey, { name: 'Water', ingredient, isWater: true, isSalt: false, share, allergens: none })
  }

  /** The flour in a starter counts as the flour that it is fed with. */
  #flourOf(mix: Map<string, LabelPart>, starter: LinePlan, share: number): void {
    const { line, ingredient } = starter
    const fed = this.#fedWith(starter)
    if (fed) {
      this.#tell({
        code: 'labelStarterFlour',
        starter: line.ingredient.trim(),
        flour: fed.line.ingredient.trim(),
      })
      return this.#add(mix, fed, share)
    }
    const allergens = ingredient?.allergens
    if (!allergens || isUnlisted(allergens))
      this.#tell({ code: 'labelStarterFlourUnknown', starter: line.ingredient.trim() })
    const name = allergens ? flourName(allergens) : 'Flour'
    const there = this.#sheet.larder.find(name)
    put(mix, there?.id ?? name.toLowerCase(), {
      name,
      ingredient: there && withOwnLabel(there),
      isWater: false,
      isSalt: false,
      share,
      allergens: allergens && isUnlisted(allergens) ? undefined : allergens,
    })
  }

  /** The heaviest flour of its stage, or else of the formula, that has everything the starter is listed for. */
  #fedWith(starter: LinePlan): LinePlan | undefined {
    const listed = starter.ingredient?.allergens?.eu ?? []
    const fits = ({ countsAs, ingredient }: LinePlan) =>
      countsAs?.kind === 'flour' && listed.every(entry => ingredient?.allergens?.eu.includes(entry))
    const heaviest = (lines: readonly LinePlan[]) =>
      lines.filter(fits).sort((a, b) => (this.#grams(b) ?? 0) - (this.#grams(a) ?? 0))[0]
    const { stages } = this.#sheet.workedOut.outline
    return heaviest(starter.stage.lines) ?? heaviest(stages.flatMap(({ lines }) => lines))
  }
}

/** Adds a part to those there are; of one ingredient there is one. */
function put(mix: Map<string, LabelPart>, key: string, part: LabelPart): void {
  const there = mix.get(key)
  mix.set(key, there ? { ...there, share: there.share + part.share } : part)
}

/**
 * What the dough of a formula is made of, through all stages: starters as flour and water, in shares of its weight. As its batch is
 * weighed, or by what is written where it has none.
 */
export function labelParts(sheet: FigureSheet): LabelParts {
  const found = new PartsOf(sheet)
  const parts = found.parts()
  return { parts, notes: found.notes }
}

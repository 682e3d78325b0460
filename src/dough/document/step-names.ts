import { type Line, nameKey, type Stage, type Step } from './formula.js'

const parted = /(;|,(?!\d)|(?<!\d),)/ // a comma between digits is a decimal sign

/** The pieces of a step's text, parted by commas and semicolons. */
export const stepPieces = (text: string): string[] =>
  text
    .split(parted)
    .filter((_, i) => i % 2 === 0)
    .map(piece => piece.trim())
    .filter(piece => piece !== '')

/** How a list of the lines that go in at a step begins: `adds Salt, Water (2)`. */
export const addsWord = /^(?:adds?|ajoute[rz]?|gibt)\s+(?=\S)/iu

const keyOf = (name: string): string => nameKey(name.replace(/\s*[,;]\s*/g, ', '))

/** The line that a name says: `Water (2)` is the second of that name in the stage, a name alone the first not yet `taken`. */
function lineNamed(name: string, lines: readonly Line[], taken: ReadonlySet<Line>): Line | undefined {
  const called = (key: string) => lines.filter(({ ingredient }) => ingredient && keyOf(ingredient) === key)
  const key = keyOf(name)
  const [, bare = '', count] = /^(.*\S) ?\((\d+)\)$/.exec(key) ?? []
  return [...called(key), called(bare)[Number(count) - 1]].find(line => line && !taken.has(line))
}

/**
 * The line that the first of some names says, and of how many of them its name is made: that of `Butter, soft` of two.
 * Undefined where they begin with none.
 */
export function lineFirstNamed(names: readonly string[], lines: readonly Line[], taken: ReadonlySet<Line>) {
  for (let count = Math.min(names.length, 4); count > 0; count--) {
    const line = lineNamed(names.slice(0, count).join(', '), lines, taken)
    if (line) return { line, count }
  }
  return undefined
}

const noName = /^(?:[\d=½¼¾⅓⅔]|(?:at|à|in|au|bei)\s)/iu // a time, a temperature

/** A stage's method once its lines are others, and the steps at which a line that is gone was added. */
export interface MethodFollowing {
  readonly method: readonly Step[] // the same where no name changes
  readonly left: readonly Step[]
}

/**
 * The method of a stage whose lines become `now`: each step adds the lines that it added, by the names they have, and no
 * longer those that are gone. What names no line stays as typed.
 */
export function methodFollowing({ lines, method = [] }: Stage, now: readonly Line[]): MethodFollowing {
  const before = new Set<Line>()
  const after = new Set<Line>()
  const left = new Set<Step>()

  const nameOf = (line: Line, typed: string): string => {
    const { ingredient } = line
    const same = now.filter(other => nameKey(other.ingredient) === nameKey(ingredient))
    const names = [typed, ingredient, `${ingredient} (${same.indexOf(line) + 1})`]
    return names.find(name => lineNamed(name, now, after) === line) ?? ingredient
  }
  const followed = (step: Step): Step => {
    const parts = step.text.split(parted) // pieces, and between them what parts them
    let text = ''
    let adds = '' // `adds `, until a name stands behind it
    let isAdding = false
    for (let i = 0, next = 0; i < parts.length; i = next) {
      const pieces = parts
        .slice(i)
        .filter((_, at) => at % 2 === 0)
        .map(piece => piece.trim())
      const [word = ''] = addsWord.exec(pieces[0]!) ?? []
      pieces[0] = pieces[0]!.slice(word.length)
      isAdding = word !== '' || (isAdding && !noName.test(pieces[0]))
      adds = word || (isAdding ? adds : '')
      const found = isAdding ? lineFirstNamed(pieces, lines, before) : undefined
      next = i + 2 * (found?.count ?? 1)
      const [, space = '', typed = '', end = ''] = /^(\s*)(.*?)(\s*)$/s.exec(
        parts.slice(i, next - 1).join(''),
      )!
      const line = found && now.find(({ id }) => id === found.line.id)
      if (found) before.add(found.line)
      if (found && !line) {
        left.add(step)
        continue
      }
      const name = typed.slice(word.length)
      text += `${text && parts[i - 1]}${space}${adds}${line?.ingredient ? nameOf(line, name) : name}${end}`
      if (line) after.add(line)
      adds = ''
    }
    return text === step.text ? step : { ...step, text: text.trim() }
  }
  const all = method.map(followed)
  return { method: all.some((step, i) => step !== method[i]) ? all : method, left: [...left] }
}

import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path/posix'

/** What each file or room imports, by path. */
export type ImportGraph = ReadonlyMap<string, ReadonlySet<string>>

/** The TypeScript files below a folder. */
export const filesBelow = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map(f => join(folder, f.replaceAll('\\', '/')))
    .filter(f => f.endsWith('.ts') && !f.endsWith('.d.ts'))
    .sort()

/** The folder of a file. */
export const roomOf = (file: string): string => dirname(file)

/** Paths from the top that a file imports, type imports and those fetched later included; packages are left out. */
export function importsOf(file: string, text = readFileSync(file, 'utf8')): string[] {
  const code = text.replace(/\/\*[\s\S]*?\*\//g, '')
  return [...code.matchAll(/(?:\bfrom|\bimport)\s*\(?\s*'(\.[^']*)'/g)].map(([, target]) =>
    normalize(join(dirname(file), target!)).replace(/\.js$/, '.ts'),
  )
}

export function importGraph(files: readonly string[]): ImportGraph {
  const known = new Set(files)
  return new Map(files.map(file => [file, new Set(importsOf(file).filter(to => known.has(to)))]))
}

/** The same between rooms: what is imported within a room is left out. */
export function roomGraph(graph: ImportGraph): ImportGraph {
  const rooms = new Map<string, Set<string>>()
  for (const [file, targets] of graph) {
    const room = roomOf(file)
    const into = rooms.get(room) ?? new Set<string>()
    rooms.set(room, into)
    for (const target of targets) if (roomOf(target) !== room) into.add(roomOf(target))
  }
  return rooms
}

/** One circle of imports as the path around it, `a → b → a`; undefined where there is none. */
export function circleIn(graph: ImportGraph): string | undefined {
  const done = new Set<string>()
  const path: string[] = []
  const follow = (at: string): string | undefined => {
    const from = path.indexOf(at)
    if (from >= 0) return [...path.slice(from), at].join(' → ')
    if (done.has(at)) return undefined
    path.push(at)
    for (const next of graph.get(at) ?? []) {
      const circle = follow(next)
      if (circle) return circle
    }
    path.pop()
    done.add(at)
    return undefined
  }
  for (const start of graph.keys()) {
    const circle = follow(start)
    if (circle) return circle
  }
  return undefined
}

import { type FigureDiagnostic, figureProblem } from '../../src/dough/sheet/figure-words'
import { parse } from '../../src/engine/expression/parse'
import type { CellError, CellValue } from '../../src/engine/expression/problem'
import { Graph } from '../../src/engine/graph/graph'

/** Enters lines such as `water = 70% * flour` into a graph: a plain number is an input, anything else an expression. */
export function enter(graph: Graph, lines: string): void {
  for (const line of lines.split(/[\n;]/).filter(line => line.includes('='))) {
    const at = line.indexOf('=')
    const name = line.slice(0, at).trim()
    const text = line.slice(at + 1).trim()
    if (/^-?[\d.]+$/.test(text)) graph.input(name, Number(text))
    else graph.define(name, parse(text))
  }
}

/** A graph of those lines. */
export function sheet(lines: string): Graph {
  const graph = new Graph()
  graph.transact(() => enter(graph, lines))
  return graph
}

/** Values as text: `water 700, salt: Nothing here is called "flour".` */
export function show(graph: Graph, names: string): string {
  return names
    .split(' ')
    .map(name => (tell => `${name}${tell}`)(told(graph.value(name))))
    .join(', ')
}

function told(value: CellValue): string {
  if (typeof value === 'number') return ` ${value}`
  if ('message' in value) return `: ${value.message}` // as it was told to the graph
  if (value.path) return `: ${value.path.join(' takes from ')}.`
  return `: ${figureProblem(value as CellError & FigureDiagnostic).message}`
}

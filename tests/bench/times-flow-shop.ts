import type { AloneGroup, TimePlan, TimeProblem, TimeSpan } from '../../src/times/index'

// The no-wait flow shop: every product goes through the same machines in the same order and waits for none of them,
// as dough does not. What is looked for is the shortest day. Products are the mill's own.

/** Minutes: mixing, resting, making up, proofing, baking. Mixer, table and oven take one product at a time. */
const products: readonly (readonly [
  mix: number,
  rest: number,
  table: number,
  proof: number,
  bake: number,
])[] = [
  [12, 40, 25, 60, 45],
  [8, 20, 15, 45, 22],
  [15, 60, 30, 75, 50],
  [10, 30, 20, 40, 18],
  [14, 45, 10, 90, 55],
  [9, 15, 35, 50, 25],
  [11, 50, 18, 55, 35],
  [7, 25, 28, 35, 20],
]

const machines = ['mixer', 'table', 'oven'] as const

/** The day from `begin` to `end` is wanted as short as can be. */
export function flowShop(): TimeProblem {
  const moments = ['begin', 'end']
  const spans: TimeSpan[] = [{ from: 'begin', to: 'end', least: 0, most: 2000, usual: 0 }]
  const uses = machines.map((): { from: string; to: string }[] => [])
  for (const [product, times] of products.entries()) {
    const names = ['mix', 'mixed', 'table', 'made', 'bake', 'out'].map(step => `${step} ${product + 1}`)
    moments.push(...names)
    for (const [k, minutes] of times.entries())
      spans.push({ from: names[k]!, to: names[k + 1]!, least: minutes, most: minutes })
    spans.push({ from: 'begin', to: names[0]!, least: 0, most: Infinity })
    spans.push({ from: names[5]!, to: 'end', least: 0, most: Infinity })
    for (const [machine, of] of uses.entries())
      of.push({ from: names[2 * machine]!, to: names[2 * machine + 1]! })
  }
  const alone: AloneGroup[] = machines.map((name, k) => ({ name, uses: uses[k]! }))
  return { moments, spans, holds: [{ moment: 'begin', at: 0 }], alone }
}

/** Minutes of the whole day, and of the oven standing empty from its first load to the end of its last. */
export interface Figures {
  readonly makespan: number
  readonly idle: number
}

export function figuresOf(plan: TimePlan): Figures {
  const starts = products.map((_, product) => plan.at.get(`mix ${product + 1}`)!)
  return figures(starts)
}

/** A plain list schedule: the products in the order given, each as early as those before it let it. */
export function listSchedule(): Figures {
  const starts: number[] = []
  for (const product of products.keys()) {
    const first = starts.at(-1) ?? 0
    let start = first
    for (let moved = true; moved; ) {
      moved = false
      for (const [other, begun] of starts.entries()) {
        for (const machine of machines.keys()) {
          const [from, to] = useOf(product, machine)
          const [begins, ends] = useOf(other, machine)
          if (start + from >= begun + ends || start + to <= begun + begins) continue
          start = begun + ends - from
          moved = true
        }
      }
    }
    starts.push(start)
  }
  return figures(starts)
}

/** When a product takes a machine and leaves it, from its beginning on. */
function useOf(product: number, machine: number): [number, number] {
  const times = products[product]!
  const before = times.slice(0, 2 * machine).reduce((sum, minutes) => sum + minutes, 0)
  return [before, before + times[2 * machine]!]
}

function figures(starts: readonly number[]): Figures {
  const bakes = starts.map(
    (start, product) => useOf(product, 2).map(time => start + time) as [number, number],
  )
  const last = Math.max(...bakes.map(([, out]) => out))
  const baked = bakes.reduce((sum, [into, out]) => sum + out - into, 0)
  return {
    makespan: last - Math.min(...starts),
    idle: last - Math.min(...bakes.map(([into]) => into)) - baked,
  }
}

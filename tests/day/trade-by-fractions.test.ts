import assert from 'node:assert/strict'
import { describe, test } from 'node:test'
import { Weights } from '../../src/day/plan/weigh-list.js'
import { dayMade } from '../../src/day/trade/builds-made.js'
import { doughCosts } from '../../src/day/trade/dough-costs.js'
import { needsOf } from '../../src/day/trade/needs.js'
import type { DayBread } from '../../src/dough/document/day.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { type Ingredient, larderOf } from '../../src/dough/document/larder.js'
import { randomOf } from '../random.js'
import { bread, saturday } from './notation.js'

/*
 * Ten days, each worked out a second time in fractions of whole numbers (BigInt), from what the formulas say and from nothing that
 * the program worked out. The days are made so that every weight comes out in whole grams: then what a scale weighs is what is
 * wanted, and totals and costs have to be the same to the last digit a double has.
 */

/** A fraction of whole numbers. */
class Part {
  constructor(
    readonly over: bigint,
    readonly under = 1n,
  ) {}

  static of = (value: number): Part => {
    const [whole = '0', digits = ''] = String(value).split('.')
    return new Part(BigInt(whole + digits), 10n ** BigInt(digits.length))
  }
  plus = ({ over, under }: Part): Part => new Part(this.over * under + over * this.under, this.under * under)
  times = ({ over, under }: Part): Part => new Part(this.over * over, this.under * under)
  by = ({ over, under }: Part): Part => new Part(this.over * under, this.under * over)
  /** Whole packs that hold it. */
  get up(): number {
    return this.over <= 0n ? 0 : Number((this.over + this.under - 1n) / this.under)
  }
  get value(): number {
    const whole = this.over / this.under
    return Number(whole) + Number(((this.over - whole * this.under) * 10n ** 18n) / this.under) / 1e18
  }
}
const none = new Part(0n)
const part = (value: number): Part => Part.of(value)

const close = (actual: number | undefined, wanted: Part, what: string) => {
  const { value } = wanted
  const off = Math.abs((actual ?? Number.NaN) - value)
  assert.ok(off <= 1e-9 * Math.max(1, Math.abs(value)), `${what}: ${actual}, not ${value}`)
}

const names = ['Bread flour', 'Wholemeal', 'Dark rye', 'Water', 'Salt', 'Ripe starter', 'Seeds'] as const
type Name = (typeof names)[number]

/** A bread as it is made up, in whole grams. */
interface Made {
  readonly levain: Readonly<Partial<Record<Name, number>>>
  readonly dough: Readonly<Partial<Record<Name, number>>>
  readonly takes: number // grams of levain
  readonly keep: number // grams kept back
  readonly factor: number // how often it is made
  readonly loss: number // hundredths
  readonly bakeLoss: number
  readonly pieces: readonly number[] // counts, of pieces of one weight
}

const sum = (grams: Readonly<Partial<Record<Name, number>>>): number =>
  Object.values(grams).reduce((all, one) => all + one, 0)

const linesOf = (grams: Readonly<Partial<Record<Name, number>>>): string =>
  Object.entries(grams)
    .map(([name, weight]) => `${name} ${weight} g`)
    .join('\n')

const kinds: Readonly<Record<Name, Ingredient['countsAs']>> = {
  'Bread flour': { kind: 'flour' },
  Wholemeal: { kind: 'flour' },
  'Dark rye': { kind: 'flour' },
  Water: { kind: 'water' },
  Salt: { kind: 'salt' },
  'Ripe starter': { kind: 'starter', hydration: 1 },
  Seeds: { kind: 'other' },
}

for (let seed = 1; seed <= 10; seed++)
  describe(`a day by fractions, seed ${seed}`, () => {
    const { next } = randomOf(seed * 7919)
    const from = (least: number, most: number): number => least + Math.floor(next() * (most - least + 1))

    const bought = (name: Name): Partial<Ingredient> => {
      if (name === 'Water') return seed % 2 ? {} : { pack: 1000, price: 0 }
      const isUnpriced = name === 'Seeds' || (name === 'Salt' && seed % 3 === 0)
      return {
        pack: [500, 1000, 5000, 16000, 25000][from(0, 4)]!,
        ...(isUnpriced || name === 'Ripe starter' ? {} : { price: from(95, 4250) / 100 }),
        ...(from(0, 1) ? { stock: from(0, 9000) } : {}),
      }
    }
    const larder = larderOf(
      names.map(
        (name): Ingredient => ({
          id: name.replace(' ', '-'),
          name,
          otherNames: name === 'Wholemeal' ? ['Whole wheat flour'] : [],
          kind: kinds[name].kind,
          countsAs: kinds[name],
          moisture: 0,
          fat: 0,
          sugar: 0,
          protein: 0,
          salt: 0,
          note: '',
          ...bought(name),
        }),
      ),
    )

    // The second bread takes the levain of the first, made up alike in another amount: they are made together.
    const levain = {
      'Ripe starter': 10 * from(2, 5),
      'Bread flour': 10 * from(8, 12),
      Water: 10 * from(8, 12),
    }
    const made: readonly Made[] = [0, 1, 2].map(i => {
      const own = i === 2 ? { 'Ripe starter': 30, 'Dark rye': 100, Water: 10 * from(8, 12) } : levain
      return {
        levain: own,
        dough: {
          'Bread flour': 100 * from(3, 9),
          [i === 1 ? 'Dark rye' : 'Wholemeal']: 100 * from(1, 4),
          Water: 100 * from(4, 9),
          Salt: 10 * from(1, 3),
          ...(i === 2 && { Seeds: 50 }),
        },
        takes: sum(own) * from(1, 3),
        keep: i === 1 ? 0 : sum(own) * from(0, 1),
        factor: from(1, 6),
        loss: [0, 2, 4][from(0, 2)]!,
        bakeLoss: [0, 12, 15][from(0, 2)]!,
        pieces: i === 0 ? [from(2, 9), from(1, 5)] : [from(1, 12)],
      }
    })
    const formulas = made.map(({ levain, dough, takes, keep }, i): Formula => {
      const written = bread(
        ['Mill wheat', 'Rye mixed', 'Seeded tin'][i]!,
        `${i === 2 ? 'Rye levain' : 'Levain'}:\n${linesOf(levain)}\nFinal dough:\n${linesOf(dough)}\n${i === 2 ? 'Rye levain' : 'Levain'} ${takes} g`,
      )
      const [first, ...rest] = written.stages
      return { ...written, stages: [keep ? { ...first!, keepBack: keep } : first!, ...rest] }
    })
    const pieceOf = ({ dough, takes, factor, loss, pieces }: Made): Part =>
      part((sum(dough) + takes) * factor)
        .times(new Part(BigInt(100 - loss), 100n))
        .by(part(pieces.reduce((all, count) => all + count, 0)))
    const day = saturday([], {
      breads: formulas.map(({ id }, i): DayBread => {
        const { loss, bakeLoss, pieces } = made[i]!
        return {
          id: `b${i + 1}`,
          formula: id,
          batch: {
            make: 'pieces',
            pieces: pieces.map((count, at) => ({
              count,
              weight: pieceOf(made[i]!).value,
              name: `shape ${at}`,
            })),
            ...(loss && { loss: loss / 100 }),
            ...(bakeLoss && { bakeLoss: bakeLoss / 100 }),
          },
        }
      }),
      together: ['levain'],
    })
    const worked = dayMade(day, formulas, new Weights(formulas, larder))

    /** Grams of an ingredient that a bread needs through its stages. */
    const gramsOf = (name: Name, { levain, dough, takes, keep, factor }: Made): Part =>
      part(factor * (dough[name] ?? 0)).plus(
        part(levain[name] ?? 0)
          .times(part(takes * factor + keep))
          .by(part(sum(levain))),
      )
    const total = (name: Name): Part => made.map(one => gramsOf(name, one)).reduce((a, b) => a.plus(b), none)
    const perGram = (name: Name): Part => {
      const { price, pack } = larder.find(name)!
      return price === undefined ? none : part(price).by(part(pack!))
    }
    const costOf = (one: Made): Part =>
      names.map(name => gramsOf(name, one).times(perGram(name))).reduce((a, b) => a.plus(b), none)

    test('the levain of two breads is built once', () => {
      assert.deepEqual(
        worked.builds.map(({ name, breads }) => `${name} for ${breads.join(' and ')}`),
        [
          'Levain for b1 and b2',
          'Rye levain for b3',
          'Final dough for b1',
          'Final dough for b2',
          'Final dough for b3',
        ],
      )
    })

    test('totals, packs and what is short', () => {
      const { all, used, buying } = needsOf(worked, larder)
      let boughtFor = none
      assert.deepEqual(
        all.map(({ name }) => name).toSorted(),
        names.filter(name => total(name).over > 0n).toSorted(),
      )
      for (const { name, grams, packs, short, toBuy, cost } of all) {
        const wanted = total(name as Name)
        const { pack, price, stock } = larder.find(name)!
        close(grams, wanted, `grams of ${name}`)
        const missing = stock === undefined ? wanted : wanted.plus(part(-stock))
        const lacking = missing.over > 0n ? missing : none
        if (stock === undefined) assert.equal(short, undefined)
        else close(short, lacking, `${name} short`)
        assert.equal(packs, pack === undefined ? undefined : wanted.by(part(pack)).up, `packs of ${name}`)
        assert.equal(toBuy, pack === undefined ? undefined : lacking.by(part(pack)).up, `${name} to buy`)
        close(cost.amount, wanted.times(perGram(name as Name)), `cost of ${name}`)
        if (price && pack) boughtFor = boughtFor.plus(part(lacking.by(part(pack)).up).times(part(price)))
      }
      close(
        used.amount,
        made.map(costOf).reduce((a, b) => a.plus(b), none),
        'all that is used',
      )
      close(buying.amount, boughtFor, 'what is to be bought')
      assert.deepEqual([...used.unpriced].toSorted(), seed % 3 === 0 ? ['Salt', 'Seeds'] : ['Seeds'])
      assert.deepEqual([...used.free].toSorted(), seed % 2 ? ['Ripe starter', 'Water'] : ['Ripe starter'])
    })

    test('what each dough costs, by piece and by kilogram', () => {
      for (const [i, cost] of doughCosts(worked, larder).entries()) {
        const one = made[i]!
        const dough = part((sum(one.dough) + one.takes) * one.factor)
        const count = part(one.pieces.reduce((all, pieces) => all + pieces, 0))
        close(cost.dough, dough, 'dough')
        close(cost.cost.amount, costOf(one), 'cost')
        close(cost.perKiloOfDough, costOf(one).times(part(1000)).by(dough), 'a kilogram of dough')
        for (const piece of cost.pieces) {
          close(piece.cost, costOf(one).by(count), 'a piece')
          close(piece.dough, pieceOf(one), 'dough of a piece')
          if (!one.bakeLoss) assert.equal(piece.baked, undefined)
        }
        const bread = pieceOf(one)
          .times(count)
          .times(new Part(BigInt(100 - one.bakeLoss), 100n))
        if (one.bakeLoss)
          close(cost.perKiloOfBread, costOf(one).times(part(1000)).by(bread), 'a kilogram of bread')
        else assert.equal(cost.perKiloOfBread, undefined)
        assert.deepEqual(cost.cost.unpriced.includes('Seeds'), i === 2)
      }
    })
  })

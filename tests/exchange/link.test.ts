import assert from 'node:assert/strict'
import { test } from 'node:test'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { larderWith, usualLarder } from '../../src/dough/larder/usual-larder.js'
import { formulaFromLink, isFormulaLink, linkOf } from '../../src/exchange/data/link.js'
import { withoutIds } from '../../src/exchange/data/new-ids.js'
import { pack, toBase64Url, unpack } from '../../src/exchange/data/packed.js'
import { formulaOf, workedCheck } from '../dough/notation.js'
import { randomOf } from '../random.js'
import { anyFormula } from './any-formula.js'

const base = 'https://mill.example/tarebook/?a=b#open'
const mill = { ...formulaOf(workedCheck), name: 'Mill wheat' }

async function fragmentOf(formula: Parameters<typeof linkOf>[0]): Promise<string> {
  const link = await linkOf(formula, base)
  assert.ok(typeof link === 'string', JSON.stringify(link))
  return new URL(link).hash
}

/** A link whose bytes hold what is given. */
async function linkWith(json: string, version = 1): Promise<string> {
  return `#formula=${toBase64Url(Uint8Array.from([version, ...(await pack(json))!]))}`
}

const readOf = async (fragment: string) => {
  const read = await formulaFromLink(fragment)
  return 'problem' in read ? read.problem.message : read
}

test('a link carries the formula in its fragment alone, and is short', async () => {
  const link = await linkOf(mill, base)
  assert.ok(typeof link === 'string')
  assert.match(link, /^https:\/\/mill\.example\/tarebook\/\?a=b#formula=[\w-]+$/)
  assert.ok(link.length < 600, `${link.length} characters`)
  assert.equal(isFormulaLink(new URL(link).hash), true)
  assert.equal(isFormulaLink('#open'), false)
})

test('a formula opened from a link has ids of its own and no kept states', async () => {
  const { states: _none, ...kept } = mill as typeof mill & { states?: never }
  const fragment = await fragmentOf({ ...mill, states: [{ id: 's', name: 'x', keptAt: '', formula: kept }] })
  const [one, two] = [await formulaFromLink(fragment), await formulaFromLink(fragment)]
  assert.ok('formula' in one && 'formula' in two)
  assert.equal(one.formula.states, undefined)
  assert.notEqual(one.formula.id, two.formula.id)
  assert.notEqual(one.formula.stages[0]!.lines[0]!.id, two.formula.stages[0]!.lines[0]!.id)
  assert.ok(Math.abs(openFormula(one.formula).reading('trueHydration')! - 0.70473) < 1e-5)
})

test('formulas of every kind come through a link as they were (seed 51)', async () => {
  const random = randomOf(51)
  for (let i = 0; i < 100; i++) {
    const formula = anyFormula(random)
    const read = await formulaFromLink(await fragmentOf(formula))
    assert.ok('formula' in read, `round ${i}: ${JSON.stringify(read)}`)
    assert.deepEqual(read.remarks, [])
    assert.deepEqual(withoutIds(read.formula), withoutIds(formula), `round ${i}`)
  }
})

test('what an ingredient of the baker’s own counts as goes along', async () => {
  const salt = usualLarder.find(i => i.name === 'Salt')!
  const larder = larderWith([{ ...salt, id: 'mine', name: 'Mill salt', otherNames: [] }])
  const link = await linkOf(formulaOf('Final dough:\n Bread flour = 100%\n Mill salt = 2%'), base, larder)
  const read = await formulaFromLink(new URL(link as string).hash)
  assert.ok('formula' in read)
  assert.equal(openFormula(read.formula).reading('salt'), 0.02)
})

test('a formula too long for a link is told to go as a file', async () => {
  const random = randomOf(52)
  const note = Array.from({ length: 9000 }, () => random.below(36).toString(36)).join('')
  const link = await linkOf({ ...mill, note }, base)
  assert.ok(typeof link !== 'string')
  assert.match(
    link.problem.message,
    /^Mill wheat is too long for a link: \d+ characters, where 8000 get through everywhere\. Send it as a file instead\.$/,
  )
})

const damaged = 'This link is damaged or not whole. Ask for it again, or for the formula as a file.'
for (const [what, fragment, said] of [
  ['nothing', '', 'There is no formula in this link.'],
  ['another fragment', '#open', 'There is no formula in this link.'],
  ['an empty formula', '#formula=', damaged],
  ['what is not base64url', '#formula=<script>', damaged],
  ['bytes without sense', '#formula=AQID_-__', damaged],
  ['a link that ends early', linkWith(JSON.stringify(mill)).then(l => l.slice(0, -9)), damaged],
  ['a link with something behind it', linkWith('{}').then(l => `${l}AAAA`), damaged],
  [
    'a link of a newer version',
    linkWith('{}', 2),
    'This link was made by a newer Tarebook. Bring this one up to date and open it again.',
  ],
  ['a link of version 0', linkWith('{}', 0), damaged],
  ['a text that is no JSON', linkWith('{"name":'), damaged],
  ['a list', linkWith('[]'), damaged],
  ['a formula without stages', linkWith('{"name":"x","stages":[]}'), damaged],
  ['a formula of nothing but depth', linkWith(`${'{"a":'.repeat(5000)}1${'}'.repeat(5000)}`), damaged],
  [
    'a link of a million characters',
    `#formula=${'A'.repeat(1e6)}`,
    'This link is longer than any that Tarebook makes. It was not opened.',
  ],
  [
    'a link that unpacks to more than a formula',
    linkWith(`{"name":"${'x'.repeat(3e6)}"}`),
    'This link unpacks to more than any formula holds. It was not opened.',
  ],
] as const)
  test(`${what} gives a sentence and no formula`, async () => {
    assert.equal(await readOf(await fragment), said)
  })

test('what of a formula is not understood is left out and told', async () => {
  const read = await formulaFromLink(await linkWith(JSON.stringify({ ...mill, note: 5, __proto__x: 1 })))
  assert.ok('formula' in read)
  assert.deepEqual(
    read.remarks.map(r => r.message),
    ['The formula has a note that is not understood; it is left out.'],
  )
})

test('unpacking stops early, whatever it would come to', async t => {
  const bomb = (await pack('\0'.repeat(2e8)))!
  let unpacked = 0 // bytes
  const Unpacking = DecompressionStream
  t.after(() => Object.assign(globalThis, { DecompressionStream: Unpacking }))
  class Counted {
    readonly writable: WritableStream
    readonly readable: ReadableStream<Uint8Array>
    constructor(format: CompressionFormat) {
      const stream = new Unpacking(format)
      this.writable = stream.writable
      const counting = new TransformStream<Uint8Array, Uint8Array>({
        transform(chunk, out) {
          unpacked += chunk.byteLength
          out.enqueue(chunk)
        },
      })
      this.readable = stream.readable.pipeThrough(counting)
    }
  }
  Object.assign(globalThis, { DecompressionStream: Counted })
  const read = await unpack(bomb, 1e5)
  assert.ok('problem' in read)
  assert.ok(unpacked > 1e5 && unpacked < 1e6, `${unpacked} bytes were unpacked`)
})

test('links with any letter changed never throw (seed 53)', async () => {
  const random = randomOf(53)
  const fragment = await fragmentOf(mill)
  for (let i = 0; i < 70; i++) {
    const at = 9 + random.below(fragment.length - 9)
    const changed = fragment.slice(0, at) + random.pick([...'AZaz09-_']) + fragment.slice(at + 1)
    const read = await formulaFromLink(changed)
    if ('formula' in read) openFormula(read.formula).problems
  }
})

import assert from 'node:assert/strict'
import { test } from 'node:test'
import { textOf } from '../../src/exchange/arriving/file-text'

const bytes = (...parts: (number | string)[]): Uint8Array =>
  Uint8Array.from(parts.flatMap(p => (typeof p === 'string' ? [...p].map(c => c.charCodeAt(0)) : [p])))
const utf16 = (text: string, little: boolean): number[] =>
  [...text].flatMap(c => {
    const [low, high] = [c.charCodeAt(0) & 0xff, c.charCodeAt(0) >> 8]
    return little ? [low, high] : [high, low]
  })

test('UTF-8 is read as it is, with or without a mark', () => {
  const plain = new TextEncoder().encode('Épeautre')
  assert.deepEqual(textOf(plain), { text: 'Épeautre' })
  assert.deepEqual(textOf(Uint8Array.from([0xef, 0xbb, 0xbf, ...plain])), { text: 'Épeautre' })
})

test('UTF-16 is read by its mark', () => {
  assert.deepEqual(textOf(bytes(0xff, 0xfe, ...utf16('Mąka', true))), { text: 'Mąka' })
  assert.deepEqual(textOf(bytes(0xfe, 0xff, ...utf16('Mąka', false))), { text: 'Mąka' })
})

test('what is not UTF-8 is read as Western, with a remark', () => {
  const read = textOf(bytes('M\xe9teil'))
  assert.ok('text' in read)
  assert.equal(read.text, 'Méteil')
  assert.match(read.remark ?? '', /Look at names with accents/)
})

for (const [what, content] of [
  ['a zipped workbook', bytes('PK', 3, 4, 'x')],
  ['an old workbook', bytes(0xd0, 0xcf, 0x11, 0xe0)],
  ['a picture', bytes(0x89, 'PNG', 0, 0)],
] as const) {
  test(`${what} is refused in a sentence that says what to do`, () => {
    const read = textOf(content)
    assert.ok('refusal' in read)
    assert.match(read.refusal, /CSV/)
  })
}

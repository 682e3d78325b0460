import assert from 'node:assert/strict'
import { test } from 'node:test'
import {
  photographsIn,
  type WithPicture,
  withPhotographs,
} from '../../src/exchange/data/photographs-in-file.js'
import { readWorkbookFile, writeWorkbookFile } from '../../src/exchange/data/workbook-file.js'
import { randomOf } from '../random.js'

const workbook = { name: 'Brackwater Mill', formulas: [], larder: [] }
const saved = '2026-12-05T09:00:00.000Z'
const text = writeWorkbookFile(workbook, saved)

/** So many pictures of so many bytes, each other ones. */
async function* pictures(count: number, bytes: number): AsyncGenerator<WithPicture> {
  const { below } = randomOf(bytes)
  const noise = Uint8Array.from({ length: bytes }, () => below(256))
  for (let i = 0; i < count; i++) {
    const own = noise.slice()
    own.set([0xff, 0xd8, i].slice(0, bytes))
    yield {
      photograph: {
        id: `p${i}`,
        bake: `b${i % 7}`,
        taken: saved,
        described: i === 0 ? 'Crumb “open”,\n "photographs": [\n' : '',
        width: 1600,
        height: 1200,
      },
      picture: new Blob([own]),
    }
  }
}

test('a workbook file with photographs is one JSON text, and reads back as it was written', async () => {
  const file = (await withPhotographs(text, pictures(3, 50_001)))!
  const whole = JSON.parse(await file.text())
  assert.equal(whole.name, 'Brackwater Mill')
  assert.equal(whole.photographs.length, 3)
  const read = (await photographsIn(file))!
  assert.equal(await read.workbook.text(), text)
  assert.deepEqual(readWorkbookFile(await read.workbook.text()).problems, [])
  const wanted = pictures(3, 50_001)
  let count = 0
  for await (const { photograph, picture } of read.read()) {
    const { value } = await wanted.next()
    assert.deepEqual(photograph, value.photograph)
    assert.deepEqual(
      Buffer.from(await picture.arrayBuffer()),
      Buffer.from(await (value as WithPicture).picture.arrayBuffer()),
    )
    count += 1
  }
  assert.equal(count, 3)
})

test('a file without photographs has none, also where a text of it looks so', async () => {
  const named = writeWorkbookFile({ ...workbook, name: 'A,\n "photographs": [\n' }, saved)
  assert.equal(await photographsIn(new Blob([named])), undefined)
  assert.equal(await withPhotographs(text, pictures(0, 0)), undefined)
})

test('many of 400 kB are read in slices: no more than a megabyte of the file at a time', async () => {
  const file = (await withPhotographs(text, pictures(12, 400_000)))!
  assert.ok(file.size > 6e6)
  const { arrayBuffer } = Blob.prototype
  let largest = 0
  Blob.prototype.arrayBuffer = function () {
    largest = Math.max(largest, this.size)
    return arrayBuffer.call(this)
  }
  let count = 0
  try {
    for await (const { picture } of (await photographsIn(file))!.read()) {
      assert.equal(picture.size, 400_000)
      count += 1
    }
  } finally {
    Blob.prototype.arrayBuffer = arrayBuffer
  }
  assert.equal(count, 12)
  assert.ok(largest > 0 && largest <= 2 ** 20 + 100, `${largest} bytes`)
})

test('what is damaged of it is left out, and the rest is read', async () => {
  const file = await (await withPhotographs(text, pictures(3, 900)))!.text()
  const broken = file.replace('"id":"p1"', '"id":17').replace(/"jpeg":"[^"]{9}/, '"jpeg":"not base 64!')
  const ids: string[] = []
  for await (const { photograph } of (await photographsIn(new Blob([broken])))!.read())
    ids.push(photograph.id)
  assert.deepEqual(ids, ['p2'])
})

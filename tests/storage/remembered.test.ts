import { test } from 'node:test'
import { remembered } from '../../src/storage/disk/remembered'
import { deepEqual, equal } from '../assert'
import { SmallTexts } from './stand-ins'

test('what is remembered is there when it is opened again, and gone when forgotten', () => {
  const texts = new SmallTexts()
  remembered('columns', texts).put('a', { stages: 'none' })
  remembered('columns', texts).put('b', 2)
  deepEqual(remembered('columns', texts).all(), { a: { stages: 'none' }, b: 2 })
  remembered('columns', texts).forget('a')
  deepEqual(remembered('columns', texts).all(), { b: 2 })
  deepEqual(remembered('others', texts).all(), {})
})

test('of more than a hundred the oldest are forgotten; what is put again is young', () => {
  const columns = remembered('columns', new SmallTexts())
  for (let i = 0; i < 100; i++) columns.put(`k${i}`, i)
  columns.put('k0', 'again')
  columns.put('k100', 100)
  const all = columns.all()
  equal(Object.keys(all).length, 100)
  equal(all.k0, 'again')
  equal(all.k1, undefined)
})

test('damaged, full or missing storage remembers nothing and throws nothing', () => {
  const texts = new SmallTexts()
  for (const damaged of ['{', '{"a":1}', '[1,["a"],[2,3]]', 'null']) {
    texts.kept.set('tarebook columns', damaged)
    deepEqual(remembered('columns', texts).all(), {}, damaged)
  }
  texts.full = true
  remembered('columns', texts).put('a', 1)
  deepEqual(remembered('columns', texts).all(), {})
  remembered('columns', undefined).put('a', 1)
  deepEqual(remembered('columns', undefined).all(), {})
})

test('a key that every object has is a key like others', () => {
  const columns = remembered('columns', new SmallTexts())
  columns.put('__proto__', 1)
  equal(Object.hasOwn(columns.all(), '__proto__'), true)
})

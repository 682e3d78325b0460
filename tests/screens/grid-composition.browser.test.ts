import { setViewport } from '@web/test-runner-commands'
import { commandOf, isComposing } from '../../components/grid/moving/key-map'
import { equal, ok } from '../assert'
import { press, type } from '../keys'
import { itOnce } from '../once'
import { amounts, type Desk, field, goTo, setUp } from './grid-desk'

const key = (init: KeyboardEventInit) => new KeyboardEvent('keydown', init)

describe('Composed input', () => {
  let desk: Desk

  beforeEach(async () => {
    await setViewport({ width: 1280, height: 900 })
    desk = await setUp()
  })

  // No command of the runner begins a composition; what the browser sends then is put to the table of keys.
  for (const [what, event] of [
    ['a composition under way', key({ key: 'Process', isComposing: true })],
    ['a key that begins one', key({ key: 'Process', keyCode: 229 })],
    ['a dead key', key({ key: 'Dead' })],
    ['an accented letter', key({ key: 'é' })],
    ['a letter beyond the basic plane', key({ key: '𠮷' })],
  ] as const)
    itOnce(`${what} begins an editor`, () => equal(commandOf(event, false)?.do, 'type'))

  it('an Enter that ends a composition is left to the field', () => {
    ok(isComposing(key({ key: 'Enter', isComposing: true })))
    ok(isComposing(key({ key: 'Enter', keyCode: 229 }))) // Safari
    ok(!isComposing(key({ key: 'Enter', keyCode: 13 })))
  })

  it('shortcuts and modifiers do not begin an editor', () => {
    for (const init of [
      { key: 's', ctrlKey: true },
      { key: 's', metaKey: true },
      { key: 'Shift' },
      { key: 'F5' },
      { key: 'Tab' },
    ])
      ok(commandOf(key(init), false)?.do !== 'type', JSON.stringify(init))
  })

  it('text in other scripts is kept as it was composed', async () => {
    await goTo(desk.grid, 'Add an ingredient 2')
    await press('F2')
    await type('あまざけ 米麹')
    equal(field(desk.grid)?.value, 'あまざけ 米麹')
    await press('Enter')
    ok(amounts(desk.sheet, 1).endsWith('; あまざけ 米麹'))
  })
})

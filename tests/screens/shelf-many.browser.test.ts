import { emulateMedia, setViewport } from '@web/test-runner-commands'
import '../../components/shelf/tb-shelf'
import type { TbShelf } from '../../components/shelf/tb-shelf'
import type { Formula } from '../../src/dough/document/formula'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { press, type } from '../keys'
import { straightDough } from './breads'
import { Around, dressPage, english, passesAxeInBoth, textOf } from './mount'

describe('A shelf of many formulas', () => {
  let shelf: TbShelf
  let around: Around

  const bread = (name: string, group?: string): Formula => ({
    ...straightDough(
      `Bread flour = 100%\nWater = 66%\n${name === 'Tin 2' ? 'Caraway = 1%' : 'Salt = 2%'}`,
      name,
    ),
    id: name.replace(' ', '-'),
    ...(group && { group }),
  })
  const tins = () => Array.from({ length: 9 }, (_, i) => bread(`Tin ${9 - i}`, i < 2 ? 'Sweet' : undefined))

  async function show(formulas: readonly Formula[]): Promise<void> {
    localStorage.clear()
    around = new Around({ formulas })
    shelf = around.hold(document.createElement('tb-shelf'))
    around.onEdit = workbook => {
      shelf.formulas = workbook.formulas
    }
    const readings = () => ({ trueHydration: 0.66, prefermentedFlour: undefined })
    Object.assign(shelf, { formulas, current: formulas[0]?.id ?? '', readings, numbers: english })
    await waitUntil(() => shelf.more, 'what a long shelf can do is fetched')
    await shelf.updateComplete
  }
  const root = () => shelf.shadowRoot!
  const names = () =>
    [...root().querySelectorAll('a')].map(a => a.firstChild!.nextSibling!.textContent!.trim())
  const chooser = () => root().querySelector('tb-chooser')!
  const find = <E extends HTMLElement>(selector: string, words = ''): E =>
    [
      ...(chooser()?.shadowRoot?.querySelectorAll<E>(selector) ?? []),
      ...root().querySelectorAll<E>(selector),
    ].find(e => textOf(e).includes(words))!
  const settled = async () => {
    await shelf.updateComplete
    await chooser()?.updateComplete
  }
  /** Reaches something with the focus and presses a key on it. */
  async function on(selector: string, words: string, ...keys: string[]): Promise<void> {
    find(selector, words).focus()
    await press(...keys)
    await settled()
  }
  const groups = () =>
    around.history.workbook.formulas.filter(f => f.group).map(f => `${f.name} in ${f.group}`)

  before(dressPage)
  afterEach(async () => {
    shelf.remove()
    localStorage.clear()
    await setViewport({ width: 1440, height: 900 })
    await emulateMedia({ colorScheme: 'light' })
  })

  it('has groups that are closed and opened, and stay so', async () => {
    await show(tins())
    deepEqual(names().slice(0, 2), ['Tin 7', 'Tin 6'], 'those in none come first')
    const details = () => root().querySelector('details')!
    equal(textOf(details().querySelector('summary')), 'Sweet 2')
    ok(details().open)
    await on('summary', 'Sweet', 'Enter')
    await waitUntil(() => !details().open && localStorage.length > 0, 'it is closed')
    const { formulas } = shelf
    shelf.remove()
    shelf = document.createElement('tb-shelf')
    Object.assign(shelf, { formulas, numbers: english })
    document.body.append(shelf)
    await waitUntil(() => shelf.more && root().querySelector('details'), 'the groups are there again')
    equal(details().open, false)
  })

  it('is ordered by name or as it was, and keeps to it', async () => {
    await show(tins())
    await on('.tools select', '', 'ArrowDown') // by name
    await waitUntil(() => names()[0] === 'Tin 1', 'it is ordered by name')
    equal(names().join(), 'Tin 1,Tin 2,Tin 3,Tin 4,Tin 5,Tin 6,Tin 7,Tin 8,Tin 9')
    await on('.tools select', '', 'Home')
    await waitUntil(() => names()[0] === 'Tin 7', 'it is as it was')
  })

  it('finds what stands in a formula, and says where', async () => {
    await show(tins())
    root().querySelector<HTMLInputElement>('input[type=search]')!.focus()
    await type('carA')
    await waitUntil(() => names().join() === 'Tin 2', 'one holds it')
    equal(textOf(root().querySelector('a small')), 'Caraway')
  })

  it('puts several into a group with the keyboard, by the box of another group too, and takes them out again', async () => {
    await show(tins())
    await on('.tools button', 'Choose', 'Enter')
    await waitUntil(
      () => chooser()?.shadowRoot?.activeElement?.matches('input'),
      'the first box has the focus',
    )
    await press('Space', 'Tab', 'Space')
    await settled()
    equal(textOf(find('[role=status]')), '2 chosen')
    find('[aria-label="All of Sweet"]').focus()
    await press('Space')
    await settled()
    equal(textOf(find('[role=status]')), '4 chosen')
    await on('button', 'Group', 'Enter')
    await waitUntil(() => chooser().shadowRoot!.activeElement?.id === 'group', 'its name is asked for')
    await type('Winter')
    await press('Enter')
    await waitUntil(() => !chooser(), 'it is done')
    equal(groups().sort().join(), 'Tin 6 in Winter,Tin 7 in Winter,Tin 8 in Winter,Tin 9 in Winter')
    equal(around.history.undoLabel, 'Put 4 formulas into Winter')
    equal(textOf(root().activeElement).startsWith('Tin'), true, 'the focus is on a formula')
  })

  it('asks for the group of one from its menu, its name filled in; without a name it is in none', async () => {
    await show(tins())
    root().querySelector<HTMLElement>('tb-menu[label="Actions for Tin 9"]')!.focus()
    await press('ArrowDown', 'g', 'Enter')
    const field = await waitUntil(
      () => chooser()?.shadowRoot?.querySelector<HTMLInputElement>('#group:focus'),
      'its group is asked for',
    )
    equal(field.value, 'Sweet')
    await press('Delete', 'Enter')
    await waitUntil(() => !chooser(), 'it is done')
    equal(groups().join(), 'Tin 8 in Sweet')
    equal(textOf(root().activeElement), 'Tin 966 % true')
  })

  it('deletes, sends out and prints several; Escape leads back', async () => {
    await show(tins())
    await on('.tools button', 'Choose', 'Enter')
    await waitUntil(() => chooser()?.shadowRoot?.activeElement, 'the first box has the focus')
    await press('Space')
    find('label', 'Tin 1').querySelector('input')!.focus()
    await press('Space')
    await settled()
    const formulas = ['Tin-7', 'Tin-1']
    await on('button', 'Send out', 'Enter')
    await on('button', 'Print cards', 'Enter')
    deepEqual(around.wishes, [
      { want: 'send-out', formulas },
      { want: 'card', formulas },
    ])
    await on('button', 'Delete', 'Enter')
    await waitUntil(() => !chooser(), 'it is done')
    equal(around.history.workbook.formulas.length, 7)
    equal(around.history.undoLabel, 'Delete 2 formulas')
    await on('.tools button', 'Choose', 'Enter')
    await waitUntil(() => chooser()?.shadowRoot?.activeElement, 'several can be chosen')
    await press('Escape')
    await waitUntil(() => !chooser(), 'it is done')
    match(textOf(root().activeElement), /^Tin/)
  })

  it('is plain while there are few: no order, nothing to look for; and changes nothing while another tab edits', async () => {
    await show(tins().slice(3, 5))
    equal(root().querySelector('.tools, input, details'), null)
    await show(tins())
    shelf.readOnly = true
    await on('.tools button', 'Choose', 'Enter')
    await waitUntil(() => chooser()?.shadowRoot?.activeElement, 'several can be chosen')
    deepEqual([...chooser().shadowRoot!.querySelectorAll('.bar button')].map(textOf), [
      'All',
      'Done',
      'Send out',
      'Print cards',
      'Labels',
      'Handout',
    ])
  })

  it('holds up on a laptop and a phone', async () => {
    await show([
      ...tins(),
      bread('Pumpernickel with a very long name of one word: Hochzeitsroggenvollkornbrot', 'Sweet'),
    ])
    for (const width of [1440, 390]) {
      await setViewport({ width, height: 844 })
      shelf.style.cssText = width > 400 ? 'width: 216px' : ''
      await passesAxeInBoth(shelf)
      await on('.tools button', 'Choose', 'Enter')
      await waitUntil(() => chooser()?.shadowRoot?.activeElement, 'several can be chosen')
      await press('Space')
      await settled()
      await on('button', 'Group', 'Enter')
      await passesAxeInBoth(shelf)
      for (const part of [
        root().querySelector('nav')!,
        ...chooser().shadowRoot!.querySelectorAll('.bar, ul'),
      ])
        ok(part.scrollWidth <= part.clientWidth, `nothing sticks out of ${part.localName}, ${width} px wide`)
      await press('Escape', 'Escape')
      await waitUntil(() => !chooser(), 'it is done')
    }
  })
})

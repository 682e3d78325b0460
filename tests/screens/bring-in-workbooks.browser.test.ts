import '../../components/bring-in/tb-bring-in'
import type { TbBringIn } from '../../components/bring-in/tb-bring-in'
import type { Formula } from '../../src/dough/document/formula'
import type { Workbook } from '../../src/dough/document/workbook'
import { newDay } from '../../src/dough/edits/fetched/day-edits'
import { usualLarder } from '../../src/dough/larder/usual-larder'
import { writeWorkbookFile } from '../../src/exchange/index'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { press } from '../keys'
import { itCase } from '../once'
import { millWheat, straightDough } from './breads'
import { holdsUp, Opened } from './dialogs'
import { dressPage, textOf } from './mount'

const named = (name: string, note = ''): Formula => ({
  ...straightDough('Bread flour = 100%\nWater = 66%\nSalt = 2%', name),
  note,
})
const bran = { ...usualLarder[0]!, id: 'bran', name: 'Hill bran', otherNames: [] }

/** One formula the same, one that differs, one that only the file has, and an ingredient. */
function breads(): { here: Partial<Workbook>; file: Workbook } {
  const same = named('Spelt tin')
  const mine = named('Mill wheat', 'mine')
  return {
    here: { name: 'Brackwater Mill', formulas: [same, mine, named('Only here')] },
    file: {
      name: 'Old laptop',
      formulas: [same, { ...mine, note: 'theirs' }, named('Only there')],
      larder: [bran],
    },
  }
}

describe('Bringing in a workbook file', () => {
  let opened: Opened<TbBringIn>

  async function show({ here, file } = breads(), text?: string): Promise<void> {
    opened = new Opened(document.createElement('tb-bring-in'), here)
    const json = text ?? writeWorkbookFile(file, '2026-05-03T08:00:00.000Z')
    opened.dialog.show({ file: new File([json], 'workbook.json') })
    await opened.whenOpen()
    await waitUntil(() => opened.root.querySelector('#understood, .refusal'), 'it is read')
  }
  const workbook = () => opened.around.history.workbook
  const shelf = () => workbook().formulas.map(f => `${f.name}${f.note && `: ${f.note}`}`)

  before(dressPage)
  afterEach(() => opened.remove())

  it('shows what would change before anything does', async () => {
    await show()
    equal(textOf(opened.find('h2')), 'Bring in a workbook')
    match(textOf(opened.find('#understood')), /^Old laptop: 3 formulas and 1 ingredient of the larder, saved/)
    match(textOf(opened.find('section', 'New formulas')), /1 Only there/)
    match(textOf(opened.find('section', 'The same here')), /1 Spelt tin/)
    match(textOf(opened.find('.one')), /^Mill wheat Yours: 1 stage, 3 lines. In the file: 1 stage, 3 lines/)
    match(textOf(opened.find('section', 'New in the larder')), /Hill bran/)
    equal(shelf().length, 3)
  })

  it('adds what is new and keeps both of what differs, as one step', async () => {
    await show()
    await opened.click('footer .main', 'Add to this workbook')
    await opened.whenClosed()
    deepEqual(shelf(), ['Spelt tin', 'Mill wheat: mine', 'Only here', 'Mill wheat 2: theirs', 'Only there'])
    deepEqual(
      workbook().larder.map(i => i.name),
      ['Hill bran'],
    )
    equal(workbook().name, 'Brackwater Mill')
    opened.around.history.undo()
    equal(shelf().length, 3)
  })

  it('shows the days of a file, and keeps both of one that differs', async () => {
    const { here, file } = breads()
    const day = newDay({ name: 'Saturday oven', date: '2026-12-05', zone: 'UTC' })
    const days = [{ ...day, note: 'theirs' }, newDay({ name: 'Market', date: '2026-12-12', zone: 'UTC' })]
    await show({ here: { ...here, days: [day] }, file: { ...file, days } })
    match(textOf(opened.find('#understood')), /: 3 formulas, 1 ingredient of the larder and 2 days, saved/)
    match(textOf(opened.find('section', 'Days, to be added')), /1 Market, 2026-12-12/)
    match(textOf(opened.find('section', 'Days that differ')), /Saturday oven, 2026-12-05 Keep both/)
    await opened.click('footer .main', 'Add to this workbook')
    await opened.whenClosed()
    deepEqual(
      workbook().days!.map(d => `${d.name} ${d.note}`),
      ['Saturday oven ', 'Saturday oven (from the file) theirs', 'Market '],
    )
  })

  it('says which days are gone when everything is replaced', async () => {
    const { here, file } = breads()
    const day = newDay({ name: 'Saturday oven', date: '2026-12-05', zone: 'UTC' })
    await show({ here: { ...here, days: [day] }, file: { ...file, leeway: 0.2 } })
    await opened.click('.ways .choice', 'Replace everything here')
    match(textOf(opened.find('.grave', 'Cleared away from here')), /Saturday oven, 2026-12-05/)
    ok(opened.find('p', 'How far waits may move is taken from the file.'))
  })

  for (const [at, [words, mine]] of (
    [
      ['Take the file’s', 'Mill wheat: theirs'],
      ['Keep mine', 'Mill wheat: mine'],
    ] as const
  ).entries())
    itCase(at)(`decides for each that differs: ${words}`, async () => {
      await show()
      await opened.click('.decision .choice', words)
      await opened.click('footer .main')
      deepEqual(shelf(), ['Spelt tin', mine, 'Only here', 'Only there'])
    })

  it('replaces everything after it was asked twice, by keys, and one undo brings it back', async () => {
    await show()
    opened.find('.ways input').focus()
    await press('ArrowDown')
    match(textOf(opened.find('.grave', 'Cleared away from here')), /1 Only here/)
    await opened.click('footer .main', 'Replace everything')
    match(
      textOf(opened.find('.question')),
      /1 formula of yours would be cleared away, 1 thing of yours would be as in the file/,
    )
    ok(/Keep what is here/.test(textOf(opened.root.activeElement)), 'the focus is on the safe answer')
    await press('Tab', 'Enter')
    match(textOf(opened.find('.question')), /Really replace everything/)
    equal(shelf().length, 3)
    await press('Tab', 'Enter')
    await opened.whenClosed()
    deepEqual(shelf(), ['Spelt tin', 'Mill wheat: theirs', 'Only there'])
    equal(workbook().name, 'Old laptop')
    opened.around.history.undo()
    deepEqual(shelf(), ['Spelt tin', 'Mill wheat: mine', 'Only here'])
    equal(workbook().name, 'Brackwater Mill')
  })

  it('leaves all as it is when the second question is answered with no', async () => {
    await show()
    await opened.click('.ways .choice', 'Replace everything here')
    await opened.click('footer .main')
    await opened.click('footer .main')
    await opened.click('footer .lined', 'Keep what is here')
    ok(opened.find('footer .main', 'Replace everything'))
    equal(shelf().length, 3)
  })

  it('has nothing to add where the file says what is here already', async () => {
    const { here } = breads()
    await show({ here, file: { name: '', larder: [], formulas: here.formulas! } })
    ok(opened.find<HTMLButtonElement>('footer .main', 'Nothing to add').disabled)
  })

  for (const [at, [what, text, says]] of (
    [
      [
        'deep JSON',
        `{"format": "tarebook workbook file", "version": 1, "formulas": ${'['.repeat(90_000)}`,
        /not the whole/,
      ],
      ['JSON of something else', '{"name": "Loaf"}', /not a workbook file of Tarebook/],
      ['a file of a newer version', '{"format": "tarebook workbook file", "version": 99}', /newer Tarebook/],
    ] as const
  ).entries())
    itCase(at)(`says in a sentence why ${what} is not read`, async () => {
      await show(breads(), text)
      match(textOf(opened.find('.of-error')), says)
      ok(opened.find<HTMLButtonElement>('footer .main').disabled)
      equal(shelf().length, 3)
    })

  it('holds up on a laptop and a phone, merging and replacing', async () => {
    await show({
      ...breads(),
      here: { ...breads().here, formulas: [millWheat(), named('Mill wheat', 'mine')] },
    })
    await holdsUp(opened)
    await opened.click('.ways .choice', 'Replace everything here')
    await holdsUp(opened)
  })
})

import { equal, match, ok, waitUntil } from '../assert'
import { saturday } from '../day/notation'
import { press, type } from '../keys'
import { asleep, DaysOpened, wheat } from './days-desk'
import { dressPage, textOf } from './mount'

describe('A day by the clock', () => {
  let open: DaysOpened
  let said: string[]

  function show(more: object = {}) {
    const formula = wheat()
    const day = saturday([[formula, 6]], { asleep, ...more })
    open = new DaysOpened({ formulas: [formula], days: [day] }, day)
    said = []
    open.days.addEventListener('tb-say', event => said.push((event as CustomEvent<string>).detail))
  }

  before(dressPage)
  afterEach(() => open.remove())

  // The worked check: levain at 1800 min, mixing 2317.69, salt 2364.62, folds 2399.62 and 2434.62, dividing 2593.46, baking 3375.
  it('stands with its dates and its times, each wait with its leeway', async () => {
    show()
    await open.time('Mix')
    equal(
      open.rows.join('\n'),
      [
        '6:00 Mix Levain',
        '6:10 Ripen Levain',
        '14:38 Mix',
        '14:48 Rest',
        '15:25 Work in',
        '15:30 Bulk',
        '16:00 Bulk, first fold',
        '16:35 Bulk, second fold',
        '19:13 Divide and shape',
        '19:33 Retard',
        '7:30 Heat up Oven',
        '8:15 Bake',
      ].join('\n'),
    )
    equal(open.all('h3[id^=d]').map(textOf).join(', '), 'Friday, December 4, Saturday, December 5')
    match(textOf(await open.find('button.how', /^37 min of 30–60 min/)), /37 min of 30–60 min/)
    match(
      textOf(await open.find('.note')),
      /All of it fits\. .*Because nobody is up before 6:00, four waits are up to 48 min shorter than usual \(27 % of the time between their shortest and longest\)\./,
    )
  })

  // Ripening and rest share 560 of their 585 min by their leeway, 120 and 30: 520 and 40. Mixing moves by 12.31, bulk by 15.38.
  it('holds a time that is typed in its place, says what moved, and lets it follow again by Delete', async () => {
    show()
    ;(await open.time('Work in')).focus()
    await type('15:40')
    equal((open.focused as HTMLInputElement).value, '15:40')
    await press('Enter')
    const held = await open.time(/^Work in: 15:40, held$/)
    equal(open.day.holds.map(h => h.at).join(), '2026-12-04T15:40')
    equal(open.focused, held)
    ok(
      Number(getComputedStyle(held).fontWeight) > 600 &&
        /underline/.test(getComputedStyle(held).textDecorationLine),
    )
    match(said.at(-1)!, /^Work in held at 15:40\. 7 other times moved, by at most 15 min\.$/)
    await press('Delete')
    await open.time(/^Work in: 15:25$/)
    equal(open.day.holds.length, 0)
    match(said.at(-1)!, /^Work in follows again\./)
    equal(open.focused, await open.time('Work in'))
  })

  it('keeps what it cannot read in the field, and says what a time is like', async () => {
    show()
    ;(await open.time('Rest')).focus()
    await press('Enter')
    await type('noon')
    await press('Tab')
    const why = await open.find('[role=alert]')
    equal(textOf(why), '“noon” is not a time. Write one like 6:30 or 18:45.')
    const field = await open.find<HTMLInputElement>('input', 'Time of Rest')
    equal(field.value, 'noon')
    equal(field.getAttribute('aria-invalid'), 'true')
    field.focus()
    await press('Escape')
    equal(open.focused, await open.time('Rest'))
    equal(open.day.holds.length, 0)
  })

  it('goes from time to time by arrows, and by Tab through all there is', async () => {
    show()
    ;(await open.time('Mix')).focus()
    await press('ArrowDown', 'ArrowDown')
    equal(open.focused, open.all('button.time')[2])
    await press('Tab')
    equal(open.focused, open.all('button.how')[2])
    await press('ArrowUp', 'Shift+Tab')
    equal(open.focused, open.all('button.time')[1])
  })

  it('shows how a time came about, followed part by part, and gives the focus back', async () => {
    show()
    await open.time('Mix')
    const how = open.all('button.how')[2]!
    how.focus()
    await press('Enter')
    const words = await open.find('#words')
    equal(
      textOf(words),
      'ready 9:00 − bake 45 min − retard 12 h 42 − divide and shape 20 min − bulk 3 h 44 − work in 5 min − rest 37 min − mix 10 min',
    )
    equal(open.focused, await open.find('h3', 'Mix 14:38'))
    match(
      textOf(await open.find('.because', /^Bulk/)),
      /has 3 h 44 of its 3\.5–4\.5 h, because nobody is up before 6:00/,
    )
    ;(await open.find('button.source', /^Retard/)).focus()
    await press('Enter')
    await open.find('h3', 'Retard 19:33')
    ;(await open.find('button.back')).focus()
    await press('Enter')
    await open.find('h3', 'Mix 14:38')
    await press('Escape')
    await waitUntil(() => open.all('tb-time-working').length === 0, 'it is closed')
    equal(open.focused, how)
  })

  // From 15:30 to 17:00 is 1 h 30; salt 5 min and bulk 3 h 30 are 3 h 35, which end at 19:05, or begin at 13:25.
  it('tells what cannot be together, keeps the last plan in sight, and takes the advice', async () => {
    show({ asleep: [] })
    ;(await open.time('Work in')).focus()
    await type('15:30')
    await press('Enter')
    await open.time(/^Work in: 15:30, held/)
    const before = open.rows
    ;(await open.time('Divide and shape')).focus()
    await type('17:00')
    await press('Enter')
    const conflict = await open.find('.warn [role=alert]')
    equal(
      textOf(conflict),
      'Work in at 15:30 and Divide and shape at 17:00 leave 1 h 30; work in (5 min) and bulk (at least 3 h 30) need 3 h 35. Hold Work in at 13:25, or hold Divide and shape at 19:05.',
    )
    match(textOf(await open.find('.warn')), /are from the last plan that fitted/)
    equal(open.rows.length, before.length)
    match(textOf(await open.find('small.wrong')), /^Does not fit; it is 19:\d\d in this plan\.$/)
    const advised = open.all('.warn .do button').map(textOf)
    equal(
      advised.join(', '),
      'Hold Work in at 13:25, Hold Divide and shape at 19:05, Let Work in follow, Let Divide and shape follow',
    )
    ;(await open.find('.warn button', 'Hold Divide and shape at 19:05')).focus()
    await press('Enter')
    await open.time(/^Divide and shape: 19:05, held$/)
    equal(open.all('.warn').length, 0)
    await open.find('button.how', /^3 h 30 of 3\.5–4\.5 h/)
  })

  it('shows the day with nothing held where it is opened as it does not fit', async () => {
    const formula = wheat()
    const day = saturday([[formula, 6]])
    const [, final] = formula.stages
    const at = (step: number, time: string) => ({
      moment: `b1 ${final!.id} ${final!.method![step]!.id}`,
      at: `2026-12-04T${time}`,
    })
    const held = { ...day, holds: [at(2, '15:30'), at(4, '17:00')] }
    open = new DaysOpened({ formulas: [formula], days: [held] }, held)
    match(textOf(await open.find('.warn')), /The times below are those without any held time\./)
    await open.time(/^Work in: 15:30, held$/)
    equal(open.all('small.wrong').length, 2)
    ;(await open.find('button', 'Let the time of Divide and shape follow')).focus()
    await press('Enter')
    await open.time(/^Divide and shape: 19:/)
    equal(open.all('.warn').length, 0)
  })

  it('can only be looked at where another tab has the workbook', async () => {
    const formula = wheat()
    const day = saturday([[formula, 6]])
    open = new DaysOpened({ formulas: [formula], days: [day] }, day, { readOnly: true })
    const time = (await open.time('Mix')) as HTMLButtonElement
    ok(time.disabled)
    equal(open.all('tb-menu').length, 0)
    ok(open.all<HTMLInputElement>('input').every(field => field.readOnly))
  })
})

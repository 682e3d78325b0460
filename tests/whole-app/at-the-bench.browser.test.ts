import { equal, match, ok, waitUntil } from '../assert.js'
import { press, type } from '../keys.js'
import { OpenApp } from './app.js'

const text = (element: Element | undefined | null) => (element?.textContent ?? '').replace(/\s+/g, ' ').trim()

// A bread of the examples on a day, at the bench on a phone: as somebody with one clean knuckle does it.
describe('At the bench, on a phone', () => {
  const run = Date.now()
  let app: OpenApp
  let day = '' // its address

  const heading = () => text(app.maybe('tb-bench h1, .todo h1'))
  const step = () => app.maybe('.todo')?.dataset.key // several may be called the same
  const ticks = () => app.all('.tick')
  const isTicked = (tick: Element | undefined) => tick?.getAttribute('aria-checked') === 'true'

  before(async () => {
    app = await OpenApp.open(`bench-${run}`, { width: 390, height: 844 })
    app.frame.contentWindow!.location.hash = '#days'
    await app.click('button', 'New day')
    await app.click('button', 'Add a bread')
    await app.click('[role=menuitem]', 'Mill wheat')
    await app.find('a', 'To the bench')
    day = app.frame.contentWindow!.location.hash
    await app.click('a', 'To the bench')
    await waitUntil(() => ticks().length > 0, 'its weighing list is there')
  })
  after(() => app.close())

  it('what is pressed is at least 56 px high, and a weight at least 40 px', () => {
    const small = [...ticks(), ...app.all('.go > *, tb-bench-measures button, .list button, .back')].filter(
      button => button.getBoundingClientRect().height < 55.9,
    )
    equal(small.map(text).join(' | '), '')
    // A figure is 0.7 of its letters' size, or a little more.
    for (const weight of app.all('.tick strong'))
      ok(Number.parseFloat(getComputedStyle(weight).fontSize) * 0.7 >= 40, text(weight))
    for (const bowl of app.all('.running b'))
      ok(Number.parseFloat(getComputedStyle(bowl).fontSize) >= 28, text(bowl))
    for (const box of app.all('.box')) ok(box.getBoundingClientRect().width >= 56, 'its box')
    match(text(app.maybe('.water')), /^at \d+(\.\d)?\s°C/)
  })

  it('a line is ticked off with one press, and is there after a reload', async () => {
    const tops = () =>
      ticks()
        .map(tick => tick.getBoundingClientRect().top - ticks()[0]!.getBoundingClientRect().top)
        .join()
    const above = () => ticks()[0]!.getBoundingClientRect().top + app.frame.contentWindow!.scrollY
    const [before, from] = [tops(), above()]
    await app.click('.tick')
    await waitUntil(() => isTicked(ticks()[0]), 'the first line is ticked off')
    await app.find('.answer p')
    equal(tops(), before) // no row moves from under the finger
    equal(above(), from)
    await app.reload()
    await waitUntil(() => isTicked(ticks()[0]), 'it still is')
    match(text(await app.find('.when')), /begun at/)
  })

  it('another weight that went in is typed on the number pad', async () => {
    await app.click('button.other')
    await app.click('dialog button', 'Ripe starter')
    await type('77')
    await press('Enter')
    await waitUntil(() => /77\s*g/.test(text(ticks()[0])), 'it is what went in')
  })

  it('what is measured is kept', async () => {
    await app.click('tb-bench-measures button, button', /^Dough/)
    await type('25.5')
    await press('Enter')
    await app.find('button', /Dough\s*25.5/)
    await app.click('button.lined', /^Water/)
    await type('24')
    await press('Enter')
    await app.find('button', /Water\s*24/)
  })

  it('done goes on to what is next, and says what moved; undo takes it back', async () => {
    const [name, first] = [heading(), step()]
    await app.click('.go .main')
    await app.find('dialog h2', /^Not ticked yet: .*Water/)
    await app.click('dialog button', 'Back')
    equal(step(), first)
    await app.click('.go .main')
    await app.click('dialog button', 'Done anyway')
    await waitUntil(() => step() !== first, 'it goes on')
    await app.find('.status :is(p, summary)')
    await app.click('button.undo', /Undo: Done/)
    await waitUntil(() => step() === first, 'it is to be done again')
    await app.click('.go .main')
    await app.click('dialog button', 'Done anyway')
    await app.find('.list.done button', new RegExp(name))
  })

  it('a timer is a moment: it goes on over a reload', async () => {
    await app.click('button', 'New timer')
    await type('7')
    await press('Enter')
    await app.find('li', /7 min/)
    await app.reload()
    await app.find('li', /7 min\s*at/)
  })

  it('putting it off by ten minutes moves what follows', async () => {
    await app.click('.go button', 'Later')
    await app.click('button', /^10 min$/)
    const answer = await app.find('.answer .moved', /later|Nothing else moved/)
    const { top, bottom } = answer.getBoundingClientRect()
    ok(top >= 0 && bottom <= 844, 'the answer is in sight')
    const isMoved = /later/.test(text(answer))
    if (isMoved) await app.find('.list .by', /later/)
    await app.click('button.undo', /Undo: Later/)
    await waitUntil(() => !app.maybe('.moved') && !app.maybe('.list .by'), 'nothing says that it moved')
    await app.click('.go button', 'Later')
    await app.click('button', /^10 min$/)
    await app.find('.answer .moved')
  })

  it('finished, it is a bake with what went in, that can be said more of and kept as a state', async () => {
    await app.click('button', /^Finish here/)
    await app.find('dialog h2', /^Still running: /)
    await app.click('dialog button', 'Finish anyway')
    await app.find('h1', 'Mill wheat')
    await app.find('td', /^77$/)
    await app.click('fieldset label input')
    await app.click('button', /^Bake it like that day/)
    await app.find('.toast', /bring it back from its kept states/)
  })

  it('the rise that it tells is taken for the next mixing when that is pressed, and the water follows', async () => {
    app.frame.contentWindow!.location.hash = day
    await app.find('p', /^Your last bake: .*°C/)
    const water = () => text(app.maybe('.ways .big'))
    const before = water()
    await app.click('button', /^Take .* for the rise in mixing/)
    await waitUntil(() => water() !== before, 'the water is another')
    await app.find('p', /It says so already/)
  })

  it('its bakes are drawn, with the figures as a table', async () => {
    app.frame.contentWindow!.location.hash = '#bench'
    await app.click('a', /^Mill wheat/)
    await app.click('a', 'All bakes of Mill wheat')
    await app.find('svg[role=img]')
    await app.find('td', /°C/)
  })

  it('bakes, one bake and those of a bread have the foot of a phone and a way to the days; a bench has its own', async () => {
    const { location } = app.frame.contentWindow!
    const ofBread = location.hash
    location.hash = '#bench'
    const bake = (await app.find('li a', /^Mill wheat/)).getAttribute('href')!
    for (const hash of [bake, ofBread, '#bench']) {
      location.hash = hash
      await app.find(hash === bake ? 'tb-bake' : hash === ofBread ? 'tb-bakes-of' : 'tb-bench-place')
      await app.find('tb-places')
      await app.find('nav a[href="#days"]', 'Days')
    }
    location.hash = day.replace('#days', '#bench')
    await waitUntil(() => !app.maybe('tb-places'), 'there is no foot')
    await app.find('.back')
    location.hash = '#bench'
    await app.click('nav button', 'Days')
    await app.find('tb-day-list')
  })

  it('deleted for good, it is not there any more', async () => {
    app.frame.contentWindow!.location.hash = '#bench'
    await app.click('a', /^Mill wheat/)
    await waitUntil(() => !app.maybe('.toast'), 'no sentence lies over the foot of the page')
    await app.click('button', 'Delete this bake')
    await app.find('span', /This cannot be undone/)
    await app.click('button', 'Delete this bake')
    await app.find('p', 'Nothing has been baked yet.')
  })

  it('a formula by itself is weighed at a bench from its method', async () => {
    app.frame.contentWindow!.location.hash = ''
    ;(await app.find('tb-method')).scrollIntoView()
    await app.click('a', /^At the bench/)
    await waitUntil(() => ticks().length > 0, 'its weighing list is there')
    await app.click('.tick')
    await waitUntil(() => isTicked(ticks()[0]), 'the first line is ticked off')
  })
})

import { equal, match, ok, waitUntil } from '../assert.js'
import { press, type } from '../keys.js'
import { OpenApp } from './app.js'

// In a page of its own: in one with others’ days the keys that bring its formulas in went elsewhere.
const text = (element: Element | undefined | null) =>
  (element?.textContent ?? '').replace(/[\s\u00a0]+/g, ' ').trim()

const breads = ['Miller loaf', 'Pond rye', 'Weir spelt', 'Sluice seeded', 'Ford white']

/** Five breads of one levain; each makes two pieces of 945 g out of 1,890 g of dough, and takes 220 g of the levain. */
const csv = [
  'formula,stage,ingredient,amount,counts as,setting',
  ...breads.flatMap(bread => [
    `${bread},,,2 × 945 g (round tin),,make`,
    `${bread},Levain,Ripe starter,20 g,,`,
    `${bread},Levain,Bread flour,100 g,,`,
    `${bread},Levain,Water,100 g,,`,
    `${bread},Levain,Mix,10 min,hands,step`,
    `${bread},Levain,Ripen,8–14 h,wait,step`,
    `${bread},Final dough,Bread flour,1000 g,,`,
    `${bread},Final dough,Water,650 g,,`,
    `${bread},Final dough,Salt,20 g,,`,
    `${bread},Final dough,Levain,220 g,,`,
    `${bread},Final dough,Mix,10 min,hands,step`,
    `${bread},Final dough,Proof,2–9 h,wait,step`,
    `${bread},Final dough,Bake,"30 min, 12 at once",bake,step`,
  ]),
].join('\n')

// Twelve Miller loaves and eight Pond ryes are 6 and 4 times as written, the three others once: 13 times in all. Of the levain
// 13 × 220 g are made. Bread flour: 13 × (1000 + 100) = 14,300 g; water 13 × 750, salt 13 × 20, starter 13 × 20 g.
describe('Five breads of one levain, ready by 8:00', () => {
  let app: OpenApp

  const total = (ingredient: string) =>
    text(app.all('tbody tr').find(row => text(row.querySelector('button')) === ingredient))
  const totalIs = (ingredient: string, said: RegExp) =>
    waitUntil(() => said.test(total(ingredient)), `${ingredient}: ${said}; it is ${total(ingredient)}`)
  const boxes = () => app.all('tb-weigh-lists input, li input[type=checkbox]') as HTMLInputElement[]

  before(async () => {
    app = await OpenApp.open(`order-${Date.now()}`)
  })
  after(() => app.close())

  it('are put on a day with one levain for all', async () => {
    await app.paste(csv)
    await app.click('button', 'Add 5 formulas')
    await app.find('a', /^Ford white/)
    await app.click('nav button', 'Days')
    await app.click('button', 'New day')
    for (const bread of breads) {
      await app.click('button', 'Add a bread')
      await app.click('[role=menuitem]', bread)
      await app.find('a.bread', bread)
    }
    const ready = await app.click('input', 'Time it is to be ready')
    await press('Control+a')
    await type('8:00')
    await press('Enter')
    await waitUntil(() => (ready as HTMLInputElement).value === '8:00', 'they are ready by 8:00')
    await app.click('label', /^Make Levain once for Miller loaf, /)
    ;(await app.find('a', 'What to weigh and order')).focus() // the plan comes anew, and moves it about
    await press('Enter')
    await app.find('h1', 'What to weigh and order')
    await totalIs('Bread flour', / 5,500 g\b/) // five times as written
  })

  it('are as many as was ordered, in one edit', async () => {
    await app.click('textarea#orders')
    await type('12 miller loaf, 8 pond rey')
    await app.find('select', /Choose a bread/)
    await press('Control+Enter')
    await waitUntil(() => app.focused?.localName === 'select', 'the name that is none is asked')
    await app.click('button', 'Pond rye?')
    await app.click('button', 'Bake so many')
    await totalIs('Bread flour', / 14,300 g\b/)
    await totalIs('Water', / 9,750 g\b/)
    await totalIs('Salt', / 260 g\b/)
    await totalIs('Ripe starter', / 260 g\b/)
    await waitUntil(() => app.focused?.id === 'orders', 'the field is there for the next orders')
    await press('Shift+Tab') // in the field they would be the field’s own
    await waitUntil(() => app.focused?.id !== 'orders', 'the field is left')
    await press('Control+z')
    await totalIs('Bread flour', / 5,500 g\b/)
    await press('Control+y')
    await totalIs('Bread flour', / 14,300 g\b/)
  })

  it('say what is short and what it costs once the larder knows it', async () => {
    await app.click('tbody button', 'Bread flour')
    await app.click('summary', 'Pack, price and stock')
    for (const [label, typed] of [
      [/^A pack holds/, '5 kg'],
      [/^Price of a pack/, '6'],
      [/^In stock/, '4 kg'],
    ] as const) {
      const field = await waitUntil(
        () => app.all('label', label)[0]?.parentElement?.querySelector('input'),
        `there is ${label}`,
      )
      field.focus()
      await type(typed)
    }
    await press('Enter')
    await waitUntil(() => !app.maybe('dialog[open]'), 'it is in the larder')
    equal(app.all('.needs thead th').map(text).join(), 'Ingredient,Needed,In cups, spoons, pieces,Costs')
    // 14.3 kg at 1.20 a kilogram; 10.3 kg are three packs of 5 kg
    await totalIs('Bread flour', /4 kg in stock, 10\.3 kg short: 3 packs of 5 kg 14,300 g \D?17\.16/)
    const sums = app.all('tfoot tr').map(text)
    match(sums[0]!, /^All that is used at least \D?17\.16$/)
    match(sums[1]!, /^What is to be bought at least \D?18\.00$/)
    await app.find('.remark', /^Salt has no price/)
    await app.find('.remark', /^Water and Ripe starter have no price, and are taken to cost nothing/)
    // Twelve pieces of 945 g take 6 × 1.1 kg of flour: 7.92
    await app.find(
      '.costs li',
      /^Miller loaf 11,340 g of dough at least \D?7\.92 at least \D?0\.66 a piece of 945 g, round tin/,
    )
  })

  it('are weighed by lists in the order of mixing, ticked off over a reload', async () => {
    const lists = app.all('h3').map(text)
    equal(lists[0], 'Levain')
    equal(lists.filter(name => name === 'Levain').length, 1)
    equal(lists.length, 6)
    boxes()[0]!.focus()
    await press('Space')
    await app.find('[role=status]', /^1 of 23 weighed/)
    await app.reload()
    await app.find('[role=status]', /^1 of 23 weighed/)
    ok(boxes()[0]!.checked)
    ok(!boxes()[1]!.checked)
  })

  // Two pieces of three breads, 12 and 8 of the others: two people, six Miller loaves each
  it('are handed out from there in the order of the day, as much as it makes', async () => {
    const [near, below] = app.all('button', 'Handout').map(button => button.getBoundingClientRect().top)
    const orders = app.all('textarea#orders')[0]!.getBoundingClientRect().top
    ok(near! < orders && orders < below!, 'one stands above, one beneath all of it')
    await app.click('button', 'Handout')
    await app.find('.paper header p', /For 2 people$/)
    const rows = app.all('.breads tbody tr').map(row => [...row.children].map(text))
    equal(rows.map(([name]) => name).join(), breads.join())
    match(rows[0]![1]!, /^6 × 945 g, /)
    match(rows[0]![2]!, /^12 × 945 g, round tin, 11,340 g of dough$/)
    await press('Escape')
    await app.find('h1', 'What to weigh and order')
  })
})

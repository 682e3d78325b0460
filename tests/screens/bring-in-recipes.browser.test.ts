import '../../components/bring-in/tb-bring-in'
import type { TbBringIn } from '../../components/bring-in/tb-bring-in'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { press, type } from '../keys'
import { millWheat } from './breads'
import { holdsUp, Opened } from './dialogs'
import { dressPage, passesAxe, textOf } from './mount'

const loaf = `Saturday loaf

Levain
20 g ripe starter
50 g bread flour
50 g water

Dough
120 g levain
1 kg strong white flour
650–680 ml lukewarm water
a pinch of instant yeast
2 1/4 tsp fine sea salt

Method
Mix, rest and bake at 240 °C.
`

const needy = `Nut loaf

500 g bread flour
320–340 g water
a handful of walnuts
salt to taste
`

describe('Bringing in a recipe in words', () => {
  let opened: Opened<TbBringIn>

  async function show(text = loaf): Promise<void> {
    opened = new Opened(document.createElement('tb-bring-in'), { formulas: [millWheat()] })
    opened.dialog.show({ text })
    await opened.whenOpen()
    await waitUntil(() => opened.root.querySelector('#understood, .refusal'), 'it is read')
  }
  const added = () => opened.around.history.workbook.formulas[1]
  const addedLines = () => added()?.stages.flatMap(s => s.lines) ?? []
  const inside = () => opened.root.querySelector('tb-recipe-lines')!.shadowRoot!
  const lineOf = (words: string) =>
    [...inside().querySelectorAll('li')].find(li => textOf(li).includes(words)) as HTMLElement
  const state = () => textOf(inside().querySelector('#state'))

  before(dressPage)
  afterEach(() => opened.remove())

  it('shows each line beside the text it comes from, and says what was guessed', async () => {
    await show()
    match(textOf(opened.find('#understood')), /^1 formula and 8 lines understood from the pasted text/)
    const salt = lineOf('2 1/4 tsp fine sea salt')
    equal(salt.querySelector('input')!.value, 'Fine sea salt')
    equal(salt.querySelector<HTMLInputElement>('.amount')!.value, '2 1/4 tsp')
    match(textOf(lineOf('a pinch')), /Guessed\. A pinch was taken as/)
    match(state(), /^2 lines hold a guess\./)
  })

  const method = () => opened.root.querySelector('tb-recipe-steps')!.shadowRoot!
  const stepOf = (words: string) =>
    [...method().querySelectorAll('li')].find(li => textOf(li).includes(words)) as HTMLElement
  const addedSteps = () =>
    added()?.stages.flatMap(s =>
      (s.method ?? []).map(({ kind, does, text }) => `${kind} ${does}: ${text}`),
    ) ?? []

  it('shows each step of the method beside its words, and says what was guessed', async () => {
    await show()
    match(textOf(method().querySelector('h3')), /^Method: 3 steps$/)
    const bake = stepOf('and bake at 240 °C.')
    equal(bake.querySelector<HTMLInputElement>('.does')!.value, 'Bake')
    equal(bake.querySelector<HTMLInputElement>('.text')!.value, 'at 240 °C')
    match(textOf(bake), /Guessed\. No time is given: write one\./)
    equal(opened.root.querySelector('.rest')?.textContent?.includes('bake at 240'), false)
  })

  it('a step is mended by typing, another left out, and that is what is added', async () => {
    await show()
    const time = stepOf('and bake').querySelector<HTMLInputElement>('.text')!
    time.focus()
    await press('Control+a')
    await type('45 min, at 240 °C')
    await press('Tab')
    await waitUntil(
      () => !textOf(stepOf('and bake')).includes('Guessed'),
      'nothing of it is guessed any more',
    )
    stepOf('rest').querySelector<HTMLElement>('.out')!.focus()
    await press('Enter')
    await waitUntil(() => stepOf('rest').classList.contains('out'), 'it is out')
    await opened.click('footer .main', 'Add 1 formula')
    deepEqual(addedSteps(), ['hands Mix: ', 'bake Bake: 45 min, at 240 °C'])
  })

  it('what is typed into a step and not understood is said, and the whole has no faults that axe finds', async () => {
    await show()
    const time = stepOf('and bake').querySelector<HTMLInputElement>('.text')!
    time.focus()
    await press('Control+a')
    await type('until dark')
    await press('Tab')
    await waitUntil(() => /“until dark” is not understood/.test(textOf(stepOf('and bake'))), 'it is said')
    await passesAxe(opened.root.querySelector('tb-recipe-steps')!)
  })

  it('takes a guess as right by the keyboard, and the focus goes on to the next', async () => {
    await show()
    const [first, second] = [...inside().querySelectorAll<HTMLElement>('.guess button')]
    first!.focus()
    await press('Enter')
    await waitUntil(() => inside().activeElement === second, 'the next one has the focus')
    await press('Enter')
    await waitUntil(() => /^No guesses are left to check/.test(state()), 'all is said')
    equal(inside().activeElement?.id, 'state')
    await opened.click('footer .main', 'Add 1 formula')
    ok(!/guessed from/.test(added()!.note))
    const bake = added()!.stages.at(-1)!.method!.at(-1)!
    deepEqual([bake.does, bake.text, bake.note], ['Bake', 'at 240 °C', 'and bake at 240 °C.'])
  })

  it('takes all guesses as right at once', async () => {
    await show()
    await opened.click('button', 'All of it is right')
    match(state(), /^No guesses are left to check/)
  })

  it('leaves lines without an amount unconfirmed, counts them, and goes to the first', async () => {
    await show(needy)
    match(state(), /^1 line holds a guess\..* 2 lines still need an amount\./)
    await opened.click('button', 'All of it is right')
    match(state(), /^2 lines still need an amount\./)
    const walnuts = lineOf('a handful of walnuts')
    equal(inside().activeElement, walnuts.querySelector('.amount'))
    match(textOf(walnuts.querySelector('.guess')), /^No amount\. What a handful weighs is not known/)
    await type('40 g')
    await press('Tab')
    match(state(), /^1 line still needs an amount\./)
    match(textOf(lineOf('a handful of walnuts')), /Right, as you said/)
  })

  it('takes a line without an amount as right only when it has one', async () => {
    await show(needy)
    await opened.click('[aria-label="Yes, that is right: Walnuts"]')
    const amount = lineOf('a handful of walnuts').querySelector<HTMLInputElement>('.amount')!
    equal(inside().activeElement, amount)
    match(state(), /2 lines still need an amount\./)
    await type('40 g')
    await press('Tab')
    match(state(), /1 line still needs an amount\./)
    amount.focus()
    await press('Control+a', 'Delete', 'Tab')
    match(state(), /2 lines still need an amount\./)
  })

  it('says by how much two measures differ that agree, and asks nothing of it', async () => {
    await show('800 g (28.2 oz) bread flour\n500 g water')
    match(state(), /^No guesses are left to check/)
    match(textOf(lineOf('28.2 oz')), /Note: 28\.2 oz as written Also given as 28\.2 oz: 0\.0679 % less/)
  })

  it('says of a guess nobody confirmed on its line what it was read from, and of no other', async () => {
    await show()
    await opened.click('footer .main')
    const notes = addedLines().flatMap(({ ingredient, note }) => (note ? [`${ingredient}: ${note}`] : []))
    deepEqual(
      notes.filter(note => /Not confirmed/.test(note)),
      [
        'Water: 650–680 ml as written, lukewarm. Not confirmed: read from “650–680 ml lukewarm water”',
        'Instant yeast: Not confirmed: read from “a pinch of instant yeast”',
      ],
    )
    equal(addedLines().find(line => line.ingredient === 'Instant yeast')!.source, 'a pinch of instant yeast')
    ok(!/Not confirmed/.test(added()!.note))
  })

  it('changes an ingredient and an amount in place, leaves a line out, and gives the bread a name', async () => {
    await show()
    lineOf('a pinch').querySelector('input')!.focus()
    await press('Control+a')
    await type('Dry yeast')
    await press('Tab', 'Control+a')
    await type('2')
    await press('Tab')
    match(state(), /^1 line holds a guess/)
    await opened.click('[aria-label="Leave out Fine sea salt"]')
    match(textOf(inside().activeElement), /Put back/)
    opened.find('#name').focus()
    await press('Control+a')
    await type('Mill loaf')
    await press('Tab')
    await opened.click('footer .main', 'Add 1 formula')
    equal(added()!.name, 'Mill loaf')
    deepEqual(
      addedLines()
        .map(line => `${line.ingredient} ${line.amount}`)
        .slice(-2),
      ['Water 665 ml', 'Dry yeast 2 g'],
    )
  })

  it('puts a line back that was left out', async () => {
    await show()
    await opened.click('[aria-label="Leave out Fine sea salt"]')
    match(textOf(opened.find('#understood')), /7 lines/)
    await press('Enter')
    match(textOf(opened.find('#understood')), /8 lines/)
  })

  it('asks before what was said of the lines is lost', async () => {
    await show()
    await opened.click('button', 'All of it is right')
    await press('Escape')
    match(textOf(opened.find('.question')), /Leave without keeping/)
  })

  it('says what to write when nothing of a text is understood', async () => {
    await show('hello')
    match(textOf(opened.find('.of-error')), /No ingredient was found in this text/)
    ok(opened.find<HTMLButtonElement>('footer .main').disabled)
  })

  it('holds up on a laptop and a phone', async () => {
    await show(`${loaf}\n${needy}`)
    await holdsUp(opened)
  })
})

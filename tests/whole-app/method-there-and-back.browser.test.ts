import { readFormulas } from '../../src/exchange/index'
import { deepEqual, equal, match, waitUntil } from '../assert'
import { press, type } from '../keys'
import { OpenApp } from './app'

const recipe = `Pond loaf

Levain
20 g ripe starter
50 g bread flour
50 g water

Dough
500 g bread flour
350 g water
10 g salt
120 g levain

Method
1. For the levain, mix starter, flour and water and let it ripen 8 to 10 hours at 24 °C.
2. Mix flour, water and levain, cover and let rest 30 minutes.
3. Work in the salt for 5 minutes.
4. Bulk ferment 4 hours at 25 °C, with four sets of folds every half hour.
5. Shape and retard overnight, 12 to 15 hours.
6. Bake 25 minutes covered at 230 °C, then 20 uncovered.
`
const steps = [
  'Method of Levain: Mix · Ripen 8–10 h, at 24 °C',
  'Method of Dough: Mix · Rest 30 min · Add salt 5 min, adds Salt · Bulk 4 h, at 25 °C, 4 × 5 min every 30 min · Shape · Retard 12–15 h · Bake covered 25 min, at 230 °C · Bake uncovered 20 min, at 230 °C',
]

/** The whole app with the real mouse and keys: a recipe comes with its method, which leaves and comes back as it is. */
describe('A method comes, leaves and comes back', () => {
  let app: OpenApp
  let atFirst = 0 // formulas on the shelf
  let [csv, file] = ['', '']

  before(async () => {
    app = await OpenApp.open(`method-${Date.now()}`)
    atFirst = shelf().length
  })
  after(() => app.close())

  const text = (element: Element | null | undefined) =>
    (element?.textContent ?? '').replace(/\s+/g, ' ').trim()
  const shelf = () => app.all('nav a').map(text)
  const methods = () => app.all('tr.method').map(text)
  const closed = () => waitUntil(() => !app.maybe('dialog[open]'), 'the dialog is closed')
  const said = (methods: readonly string[]) => methods.map(words => words.replaceAll('\u00a0', ' '))

  /** Puts a text into the dialog with the clipboard and has it read. */
  async function paste(words: string): Promise<void> {
    await app.click('button', 'Bring in')
    const field = await app.find('#pasted')
    field.focus()
    await navigator.clipboard.writeText(words)
    await press('Control+v')
    await app.click('footer button', 'Read it')
  }

  /** What the open formula is in a form. */
  async function sent(label: string, id: string): Promise<string> {
    await app.click('button', 'Send out')
    await app.click('.form', label)
    const written = await waitUntil(
      () => (app.maybe(`textarea#${id}`) as HTMLTextAreaElement | undefined)?.value,
      `there is ${id}`,
    )
    await press('Escape')
    await closed()
    return written
  }

  /** Takes back what added the formula, which is gone then. */
  async function takenBack(): Promise<void> {
    await press('Control+z')
    await waitUntil(() => shelf().length === atFirst, 'it is gone from the shelf')
  }

  const isBack = () =>
    waitUntil(
      () => shelf().length === atFirst + 1 && said(methods()).join() === steps.join(),
      'its steps stand beneath their stages',
    )

  it('as steps beside the words of a recipe, where what is guessed says so', async () => {
    await paste(recipe)
    await app.find('h3', 'Method: 10 steps')
    const beside = app
      .all('tb-recipe-steps')
      .flatMap(of => [...of.shadowRoot!.querySelectorAll('li')])
      .map(li => ({
        source: text(li.querySelector('.source')),
        does: li.querySelector<HTMLInputElement>('.does')!.value,
        time: li.querySelector<HTMLInputElement>('.text')!.value,
        isGuess: li.querySelector('.guess') !== null,
      }))
    deepEqual(beside[5], {
      source: '“Bulk ferment 4 hours at 25 °C, with four sets of folds every half hour.” row 18',
      does: 'Bulk',
      time: '4 h, at 25 °C, 4 × 5 min every 30 min',
      isGuess: true,
    })
    deepEqual(
      beside.flatMap(({ does, isGuess }) => (isGuess ? [does] : [])),
      ['Bulk', 'Bake uncovered'],
    )
    await app.click('button', 'All steps are right')
    await waitUntil(() => app.all('tb-recipe-steps .guess').length === 0, 'nothing is guessed any more')
  })

  it('and is added with one press, and beneath each stage stands what is done with it', async () => {
    await app.click('button', 'Add 1 formula')
    await closed()
    await isBack()
  })

  it('its adding is taken back and made again', async () => {
    await takenBack()
    await press('Control+Shift+z')
    await app.click('nav a', /^Pond loaf/)
    await isBack()
  })

  it('a step is changed where the line leads, and that is taken back', async () => {
    await app.click('tr.method button', /^Method of Levain/)
    await waitUntil(() => (app.focused as HTMLInputElement | null)?.value === 'Mix', 'the first step')
    await press('Tab', 'Tab')
    equal(app.focused?.ariaLabel, 'Time and what else matters')
    await type('10 min')
    await press('Escape', 'Control+a')
    await type('8 min')
    await press('Enter')
    await waitUntil(() => /^Method of Levain: Mix 8 min/.test(methods()[0]!), 'the line follows')
    await press('Escape')
    await waitUntil(() => text(app.focused).startsWith('Levain'), 'the focus is in its stage')
    await press('Control+z')
    await isBack()
  })

  it('leaves as CSV and as a workbook file, and comes back from each the same, byte for byte', async () => {
    csv = await sent('CSV', 'csv')
    file = await sent('Workbook file', 'workbook')
    equal(readFormulas(csv).formulas[0]!.stages[1]!.method?.length, 8)

    await takenBack()
    await paste(csv)
    await app.find('#understood', /^1 formula and 7 lines/)
    await app.click('footer button', 'Add 1 formula')
    await closed()
    await isBack()
    equal(await sent('CSV', 'csv'), csv)

    await takenBack()
    await paste(file)
    await app.find('#understood', /1 formula/)
    await app.click('footer button.main')
    await closed()
    await waitUntil(() => shelf().length === atFirst + 1, 'it is on the shelf')
    await app.click('nav a', /^Pond loaf/)
    await isBack()
    const withoutMoment = (json: string) => json.replace(/"savedAt": "[^"]*"/, '')
    equal(withoutMoment(await sent('Workbook file', 'workbook')), withoutMoment(file))
    match(file, /"does": "Retard"/)
    equal(await sent('CSV', 'csv'), csv)
  })
})

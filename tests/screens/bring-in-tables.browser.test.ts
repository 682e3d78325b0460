import '../../components/tb-bring-in'
import type { TbBringIn } from '../../components/tb-bring-in'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { press, type } from '../keys'
import { millWheat } from './breads'
import { holdsUp, Opened } from './dialogs'
import { dressPage, textOf } from './mount'

const levain = `Stage,Ingredient,%,Weight (g),Comment
Levain,Ripe starter,100,675,
,Bread flour,100,675,strong
,Water,100,675,26 °C
,Total,300,"1,025",
Final dough,Bread flour,100,1000,
,Water,68,680,cool
,Salt,2,20,
,Levain,20,200,
`
const today = 'Zutat;Menge;Heute\nMehl;500;600\nWasser;350;420\n'

describe('Bringing in a table from elsewhere', () => {
  let opened: Opened<TbBringIn>

  async function show(detail: { file?: File; text?: string }): Promise<void> {
    opened = new Opened(document.createElement('tb-bring-in'), { formulas: [millWheat()] })
    opened.dialog.show(detail)
    await opened.whenOpen()
    await waitUntil(() => opened.root.querySelector('#understood, .refusal'), 'it is read')
  }
  const added = () => opened.around.history.workbook.formulas.slice(1)
  const amounts = () =>
    added().flatMap(f => f.stages.flatMap(s => s.lines.map(l => `${l.ingredient} ${l.amount}`)))
  const uses = () =>
    [
      ...opened.root
        .querySelector('tb-columns')!
        .shadowRoot!.querySelectorAll<HTMLSelectElement>('th select'),
    ].map(select => select.value)
  const becomes = () =>
    [...opened.root.querySelector('tb-columns')!.shadowRoot!.querySelectorAll('.becomes')].map(row =>
      textOf(row),
    )

  before(() => {
    dressPage()
    localStorage.clear()
  })
  afterEach(() => {
    opened.remove()
    localStorage.clear()
  })

  it('guesses the columns, each with its reason, and shows what becomes of each row', async () => {
    await show({ file: new File([levain], 'levain.csv') })
    match(textOf(opened.find('#understood')), /^1 formula and 7 lines understood from levain\.csv/)
    deepEqual(uses(), ['stage', 'ingredient', 'percent', 'grams', 'note'])
    match(textOf(opened.find('#why-3')), /Weight \(g\)/)
    match(becomes()[0]!, /Ripe starter 675 g in Levain/)
    match(becomes()[3]!, /Total, not a line/)
    match(textOf(opened.find('.counts')), /9 rows: 7 lines, 1 total, 1 row of headings/)
    match(textOf(opened.find('.totals')), /The file says Levain 1,025 g; its lines add to 2,025 g/)
  })

  for (const [what, text, says] of [
    [
      'several',
      'Zutat;Menge\nMehl;500\nQuarzmehl;20\nZaubersauer;80\nFlitter;3\n',
      /^Not in the larder: Quarzmehl \(most likely flour\), Zaubersauer \(most likely starter\), Flitter\. Only their weight is counted until you say what they count as\.$/,
    ],
    [
      'one',
      'Ingredient;Grams\nBread flour;500\nGlitter;3\n',
      /^Not in the larder: Glitter\. Only its weight is counted until you say what it counts as\.$/,
    ],
    ['a recipe’s', '500 g bread flour\n3 g glitter\n', /^Not in the larder: Glitter\. Only its weight/i],
  ] as const)
    it(`names ${what} that the larder does not know, before anything is added`, async () => {
      await show({ text })
      match(textOf(opened.find('.unknown')), says)
      equal(added().length, 0)
    })

  it('says nothing of the larder where it knows all, stages and what a file says itself among it', async () => {
    await show({ file: new File([levain], 'levain.csv') })
    ok(!opened.root.querySelector('.unknown'))
    opened.remove()
    await show({
      text: 'formula,stage,ingredient,amount,note,counts as\nA,Dough,Bread flour,500 g,,\nA,Dough,Glitter,3 g,,other\n',
    })
    match(textOf(opened.find('#understood')), /2 lines/)
    ok(!opened.root.querySelector('.unknown'))
  })

  it('adds what was read, as one step', async () => {
    await show({ text: levain })
    await opened.click('footer .main', 'Add 1 formula')
    deepEqual(amounts(), [
      'Ripe starter 675 g',
      'Bread flour 675 g',
      'Water 675 g',
      'Bread flour 1000 g',
      'Water 680 g',
      'Salt 20 g',
      'Levain 200 g',
    ])
    opened.around.history.undo()
    equal(added().length, 0)
  })

  it('reads a column otherwise when told so by keys, and remembers it for the same headings', async () => {
    await show({ text: today })
    deepEqual(uses(), ['ingredient', 'amount', 'leave out'])
    opened.find('#use-1').focus()
    await press('l')
    opened.find('#use-2').focus()
    await press('g')
    await waitUntil(() => /Mehl 600 g/.test(becomes()[0] ?? ''), 'it is read anew')
    match(textOf(opened.find('#why-2')), /As you said/)
    await opened.click('footer .main', 'Add 1 formula')
    deepEqual(amounts(), ['Mehl 600 g', 'Wasser 420 g'])
    opened.remove()

    await show({ text: today.replace('600', '900') })
    match(textOf(opened.find('.remembered')), /as you said/)
    match(becomes()[0]!, /Mehl 900 g/)
    await opened.click('.remembered button')
    await waitUntil(() => /Mehl 500 g/.test(becomes()[0] ?? ''), 'it is guessed anew')
  })

  it('takes a name, a decimal sign and the rows above the first line from the baker', async () => {
    await show({ text: 'Mehl;1,500\nWasser;0,900\n' })
    opened.find('#decimal').focus()
    await press('ArrowUp')
    await waitUntil(() => /1500 g/.test(becomes()[0] ?? ''), 'the comma stands between thousands')
    await press('ArrowDown')
    await waitUntil(() => /1\.500 g/.test(becomes()[0] ?? ''), 'the comma is decimal')
    opened.find('#name').focus()
    await type('Hill loaf')
    await press('Tab')
    await waitUntil(
      () => opened.root.querySelector('.formula h3')?.textContent === 'Hill loaf',
      'it has the name',
    )
    opened.find('#headings').focus()
    await press('ArrowUp', 'Tab')
    await waitUntil(() => becomes().length === 1, 'the first row is no line any more')
  })

  it('reads a table with a column for each stage, and leaves one of them out when told so', async () => {
    await show({
      text: 'Ingredient,Levain,Final dough\nBread flour,100,820\nWater,80,690\nSalt,,21\nLevain,,180\n',
    })
    deepEqual(uses(), ['ingredient', 'of a stage', 'of a stage'])
    match(textOf(opened.find('#why-stages')), /Please look\. Headings name stages/)
    match(becomes()[0]!, /Bread flour 100 g in Levain\. Also 820 g in Final dough\./)
    opened.find('#use-1').focus()
    await press('l')
    await waitUntil(
      () => /^→ Bread flour 820 g in Final dough$/.test(becomes()[0]!),
      'the levain is left out',
    )
    equal(opened.find<HTMLSelectElement>('#stages').value, 'columns')
    await opened.click('footer .main', 'Add 1 formula')
    deepEqual(amounts(), ['Bread flour 820 g', 'Water 690 g', 'Salt 21 g', 'Levain 180 g'])
  })

  it('says what cannot be read before a column is named', async () => {
    await show({ text: 'name;price\nflour;1,20\n' })
    match(textOf(opened.find('.of-error')), /which column holds/)
    ok(opened.find<HTMLButtonElement>('footer .main').disabled)
    opened.find('#use-1').focus()
    await press('g')
    await waitUntil(() => !opened.find<HTMLButtonElement>('footer .main').disabled, 'now there is a formula')
  })

  it('reads it as a recipe when told so, and back', async () => {
    await show({ text: 'Flour,500 g\nWater,350 g\n' })
    opened.find('#read-as').focus()
    await press('ArrowDown')
    await waitUntil(() => opened.root.querySelector('tb-recipe-lines'), 'it is read as a recipe')
    equal(opened.root.activeElement?.id, 'read-as')
    await press('ArrowUp')
    await waitUntil(() => opened.root.querySelector('tb-columns'), 'it is read as a table')
  })

  for (const [what, text, says] of [
    ['ten thousand columns', `${'a;'.repeat(10_000)}\nb;1\n`, /columns; 250 are the most/],
    ['a pasted text of more than 5 MB', 'Flour;500 g\n'.repeat(450_000), /more than 5 MB of text/],
  ] as const) {
    it(`refuses ${what} in a sentence`, async () => {
      await show({ text })
      match(textOf(opened.find('.refusal')), says)
      equal(added().length, 0)
    })
  }

  it('shows script in names as what it is: text', async () => {
    await show({ text: 'Zutat;Menge\n<img src=x onerror=alert(1)>;500 g\nWasser;<b>1</b>\n' })
    match(becomes()[0]!, /<img src=x onerror=alert\(1\)> 500 g/)
    equal(opened.root.querySelector('tb-columns')!.shadowRoot!.querySelectorAll('img').length, 0)
  })

  it('holds up on a laptop and a phone', async () => {
    await show({ text: levain })
    await holdsUp(opened)
  })
})

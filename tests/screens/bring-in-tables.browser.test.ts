import '../../components/bring-in/tb-bring-in'
import type { TbBringIn } from '../../components/bring-in/tb-bring-in'
import { openFormula } from '../../src/dough/formula-sheet'
import { countsAsText } from '../../src/exchange/values/counts-as'
import { deepEqual, equal, match, near, ok, waitUntil } from '../assert'
import { press, type } from '../keys'
import { itCase } from '../once'
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

  const unknown = () =>
    [...(opened.root.querySelector('tb-unknown')?.shadowRoot?.querySelectorAll('li') ?? [])].map(li =>
      [
        textOf(li.querySelector('label')),
        textOf(li.querySelector('select')!.selectedOptions[0]),
        textOf(li.querySelector('[id^=why]')),
      ].join(' | '),
    )
  const meanings = () =>
    added().map(f => f.meanings.map(({ ingredient, countsAs }) => [ingredient, countsAsText(countsAs)]))

  for (const [at, [what, text, says]] of (
    [
      [
        'several',
        'Zutat;Menge\nMehl;500\nQuarzmehl;20\nZaubersauer;80\nFlitter;3\n',
        [
          'Quarzmehl | Flour | a guess from its name',
          'Zaubersauer | Starter | a guess from its name',
          'Flitter | Not known | only its weight counts',
        ],
      ],
      ['a recipe’s', '500 g bread flour\n3 g glitter\n', ['glitter | Not known | only its weight counts']],
      [
        'none that is a stage of the formula, nor guesses one that is a stage of another',
        'Formula,Stage,Ingredient,g\nA,Sauerteig,Rye flour,100\nA,Dough,Sauerteig,100\nB,Dough,Sauerteig,100\n',
        [
          'Rye flour | Flour | a guess from its name',
          'Sauerteig | Not known | only its weight counts; a stage of another formula has this name',
        ],
      ],
    ] as const
  ).entries())
    itCase(at)(`names ${what} that the larder does not know, before anything is added`, async () => {
      await show({ text })
      deepEqual(unknown(), [...says])
      equal(added().length, 0)
    })

  const rye = 'Ingredient,Grams\nRye flour,500\nBrook water,350\nLevain,100\nGlitter,3\n'

  it('says of a long table how many rows come below those shown, and of a total that it was not compared', async () => {
    const seeds = Array.from({ length: 14 }, (_, i) => `Final dough;Seed ${i + 1};${i + 1} g`)
    const text = ['Stage;Ingredient;Amount', ...seeds, ';Total seeds;90 g'].join('\n')
    await show({ file: new File([text], 'seeds.csv') })
    equal(becomes().length, 12)
    match(textOf(opened.find('.counts')), /^And 3 more rows: /)
    match(textOf(opened.find('.totals summary')), /^1 total not compared$/)
  })

  it('counts what was guessed as guessed, with nothing to be done', async () => {
    await show({ text: rye })
    await opened.click('footer .main', 'Add 1 formula')
    deepEqual(meanings(), [
      [
        ['Rye flour', 'flour'],
        ['Brook water', 'water'],
        ['Levain', 'starter 100%'],
      ],
    ])
    near(openFormula(added()[0]!).reading('trueHydration'), 400 / 550)
  })

  it('takes from the baker, by keys, what each counts as, and shows it with the lines as read', async () => {
    await show({ text: rye })
    opened.find('#as-0').focus()
    await press('o')
    opened.find('#as-3').focus()
    await press('w')
    opened.find('#hydration-2').focus()
    await press('Control+a')
    await type('5')
    await press('Tab')
    match(textOf(opened.find('#wrong-2')), /10 to 1000/)
    opened.find('#hydration-2').focus()
    await press('Control+a')
    await type('125')
    await press('Tab')
    opened.find('#as-1').focus()
    await press('n')
    deepEqual(unknown(), [
      'Rye flour | Other | as you said',
      'Brook water | Not known | as you said: only its weight counts',
      'Levain | Starter | as you said',
      'Glitter | Water | as you said',
    ])
    match(textOf(opened.find('.formula table')), /Levain counts as starter 125% 100 g/)
    await opened.click('footer .main', 'Add 1 formula')
    deepEqual(meanings(), [
      [
        ['Rye flour', 'other'],
        ['Levain', 'starter 125%'],
        ['Glitter', 'water'],
      ],
    ])
  })

  it('shows a dozen of thousands of names, counts the others, and goes on to them', async () => {
    const many = Array.from({ length: 3000 }, (_, at) => `${at % 3 ? 'Meal' : 'Flour'} ${at};5 g\n`).join('')
    await show({ text: `Zutat;Menge\n${many}` })
    equal(unknown().length, 12)
    equal(textOf(opened.find('.rest')), 'And 2988 more: 996 flour, 1992 not known.')
    opened.find('button', 'Show the next 100').focus()
    await press('Enter')
    await waitUntil(() => unknown().length === 112, 'they are shown')
    equal(opened.root.querySelector('tb-unknown')!.shadowRoot!.activeElement?.id, 'as-12')
    const changed: MutationRecord[] = []
    const watch = new MutationObserver(records => changed.push(...records))
    for (const root of [opened.root, opened.root.querySelector('tb-unknown')!.shadowRoot!])
      watch.observe(root, { subtree: true, childList: true, characterData: true, attributes: true })
    await press('w')
    await waitUntil(() => unknown()[12] === 'Flour 12 | Water | as you said', 'it is set')
    watch.disconnect()
    ok(changed.length > 0 && changed.length < 20, `${changed.length} places were written anew`)
  })

  it('says of a table that was brought in before that it is here', async () => {
    await show({ text: rye })
    await opened.click('footer .main', 'Add 1 formula')
    opened.dialog.show({ text: rye })
    await waitUntil(() => opened.root.querySelector('.here'), 'it says so')
    ok(opened.find<HTMLButtonElement>('footer .main', 'Nothing to add').disabled)
  })

  it('says nothing of the larder where it knows all, stages and what a file says itself among it', async () => {
    await show({ file: new File([levain], 'levain.csv') })
    ok(!opened.root.querySelector('tb-unknown'))
    opened.remove()
    await show({
      text: 'formula,stage,ingredient,amount,note,counts as\nA,Dough,Bread flour,500 g,,\nA,Dough,Glitter,3 g,,other\n',
    })
    match(textOf(opened.find('#understood')), /2 lines/)
    ok(!opened.root.querySelector('tb-unknown'))
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

  for (const [at, [what, text, says]] of (
    [
      ['ten thousand columns', `${'a;'.repeat(10_000)}\nb;1\n`, /columns; 250 are the most/],
      ['a pasted text of more than 5 MB', 'Flour;500 g\n'.repeat(450_000), /more than 5 MB of text/],
    ] as const
  ).entries()) {
    itCase(at)(`refuses ${what} in a sentence`, async () => {
      await show({ text })
      match(textOf(opened.find('.refusal')), says)
      equal(added().length, 0)
    })
  }

  it('shows script in names as what it is: text', async () => {
    await show({ text: 'Zutat;Menge\n<img src=x onerror=alert(1)>;500 g\nWasser;<1\n' })
    match(becomes()[0]!, /<img src=x onerror=alert\(1\)> 500 g/)
    equal(opened.root.querySelector('tb-columns')!.shadowRoot!.querySelectorAll('img').length, 0)
  })

  it('holds up on a laptop and a phone', async () => {
    await show({ text: `${levain},Glitter,3,3,\n,Rye flour,10,100,\n,Sauerteig,10,100,\n` })
    await holdsUp(opened)
    opened.remove()
    await show({ text: 'Ingredient,Grams\nRye flour,500\nLevain,100\n' })
    await holdsUp(opened)
  })
})

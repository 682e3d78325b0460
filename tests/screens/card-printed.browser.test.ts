import { emulateMedia, setViewport } from '@web/test-runner-commands'
import '../../components/card/tb-card'
import { type PaperName, paperMargin, papers } from '../../components/card/paper'
import type { TbCard } from '../../components/card/tb-card'
import { paperWords } from '../../components/card/words'
import '../../components/sheet/tb-cautions'
import flatbread from '../../examples/held-back-flatbread.csv' with { type: 'text' }
import millWheat from '../../examples/mill-wheat.csv' with { type: 'text' }
import buns from '../../examples/morning-buns.csv' with { type: 'text' }
import baguette from '../../examples/poolish-baguette.csv' with { type: 'text' }
import spelt from '../../examples/seeded-spelt-tin.csv' with { type: 'text' }
import rye from '../../examples/two-build-rye.csv' with { type: 'text' }
import { allergenSentence, localCodesSentence } from '../../src/dough/about/words'
import type { Formula } from '../../src/dough/document/formula'
import { emptyWorkbook } from '../../src/dough/document/workbook'
import { openFormula } from '../../src/dough/formula-sheet'
import { larderWith } from '../../src/dough/larder/usual-larder'
import { readFormulas } from '../../src/exchange/index'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { press } from '../keys'
import { millWheat as bread, straightDough } from './breads'
import { dressPage, english, passesAxeInBoth, textOf } from './mount'

const pixels = 96 / 25.4 // a millimetre

describe('The printed card', () => {
  let card: TbCard
  let opener: HTMLButtonElement
  const six = [millWheat, rye, baguette, flatbread, buns, spelt].map(csv => readFormulas(csv).formulas[0]!)

  async function show(formula: Formula, ...others: Formula[]) {
    localStorage.clear()
    opener = document.createElement('button')
    opener.textContent = 'Print a card'
    card = document.createElement('tb-card')
    document.body.append(opener, card)
    opener.focus()
    Object.assign(card, {
      workbook: { ...emptyWorkbook, formulas: [formula, ...others] },
      larder: larderWith([]),
      numbers: english,
    })
    await card.show(
      others.length ? { formulas: [formula, ...others].map(({ id }) => id) } : { formula: formula.id },
    )
  }
  const find = <E extends HTMLElement>(selector: string, words = '') =>
    [...card.shadowRoot!.querySelectorAll<E>(selector)].find(e => textOf(e).includes(words))!
  const paper = () => find('.paper')
  const tick = async (words: string) => {
    find<HTMLInputElement>('.choice:has([type=checkbox])', words).querySelector('input')!.focus()
    await press('Space')
    await card.updateComplete
  }
  /** Goes to the first or last public list, with the keyboard. */
  const list = async (key: 'Home' | 'End') => {
    find<HTMLSelectElement>('[aria-label="Public list of allergens"]').focus()
    await press(key)
    await card.updateComplete
  }
  const choose = async (name: PaperName) => {
    find<HTMLSelectElement>('select').focus()
    await press(name === 'a4' ? 'Home' : 'End')
    await waitUntil(
      () => find('main').getAttribute('style')?.includes(`${papers[name].width};`),
      'the paper is there',
    )
    await card.updateComplete
  }

  before(dressPage)
  beforeEach(() => setViewport({ width: 1440, height: 900 }))
  afterEach(async () => {
    await emulateMedia({ media: 'screen', colorScheme: 'light' })
    document.documentElement.style.cssText = ''
    card.remove()
    opener.remove()
    localStorage.clear()
  })

  it('shows what to weigh for the batch, stage by stage in the order they are mixed', async () => {
    await show(bread({ batch: { make: 'pieces', pieces: [{ count: 6, weight: 900 }], loss: 0.02 } }))
    deepEqual([...card.shadowRoot!.querySelectorAll('h2 > :first-child')].map(textOf), [
      'Levain',
      'Final dough',
    ])
    match(textOf(find('.batch')), /Make 6 pieces of 900 g.*2 % lost/)
    match(textOf(find('tr', 'Wholemeal spelt')), /^516 g Wholemeal spelt 18\.0 %$/)
    match(textOf(find('.leads')), /True hydration 70\.5 % Salt 1\.88 % Prefermented flour 10\.3 %/)
    match(textOf(find('.others')), /All as weighed, in steps of 1\sg \(0\.1\sg below 10\sg\)$/)
    match(textOf(find('tr', 'Ripe starter')), /g Ripe starter \(100 % hydration\) /)
    const [levain, final] = [...card.shadowRoot!.querySelectorAll('.stage')]
    equal(levain!.querySelectorAll('td.grams').length, 3)
    equal(final!.querySelectorAll('td.grams').length, 5)
  })

  it('says for which batch its notes are written, where it is for another', async () => {
    const formula = { ...bread(), note: 'Three loaves.' }
    await show({ ...formula, batch: { make: 'pieces', pieces: [{ count: 6, weight: 900 }] } })
    // 820 + 180 + 690 + 21 + 210 g
    match(textOf(find('.prose')), /^Notes are as written for the formula’s own batch of 1,921\sg\.$/)
    await tick('Notes')
    ok(!find('.prose', 'Notes are'), 'not without notes')
    card.remove()
    opener.remove()
    await show(formula)
    equal(textOf(find('.prose')), 'Three loaves.')
  })

  it('has decimals under each other, no noughts at the end, eggs counted, and what a piece weighs as dough', async () => {
    // 12 × 85 g baked, 15 % lost: 100 g of dough each, 1,200 g in all; 240 g of it is egg of 50 g, 4.8 of them
    const [dough] = straightDough(
      'Bread flour = 600 g\nWater = 348.5 g\nSalt = 9 g\nYeast = 2.5 g\nEggs = 240 g',
      '',
    ).stages
    const pieces = [{ count: 12, weight: 85 }]
    await show(bread({ stages: [dough!], batch: { make: 'baked pieces', pieces, bakeLoss: 0.15 } }))
    const grams = [...card.shadowRoot!.querySelectorAll<HTMLElement>('td.grams')]
    deepEqual(grams.map(textOf), ['600 g', '349 g', '9 g', '2.5 g', '240 g'])
    const ends = grams.map(cell => {
      const text = document.createRange()
      text.setStart(cell.firstChild!, 0)
      const [figure] = [...cell.childNodes].filter(
        node => node instanceof Text && /\d/.test(node.data),
      ) as Text[]
      const mark = figure!.data.indexOf('.')
      text.setStart(figure!, 0)
      text.setEnd(figure!, mark < 0 ? figure!.data.length : mark)
      return text.getBoundingClientRect().right
    })
    ok(Math.max(...ends) - Math.min(...ends) < 0.6, `whole grams end at ${ends}`)
    match(textOf(find('tr', 'Eggs')), /^240 g about 5 × Eggs/)
    match(textOf(find('.leads')), /Dough weight 1,20\d g ?12 × 100 g/)
  })

  it('shows the method of each stage beneath its lines, and what to look for with the notes', async () => {
    await show(six[0]!)
    const methods = () => [...card.shadowRoot!.querySelectorAll('table + ol')].map(textOf)
    const [levain, final] = methods()
    equal(levain, 'Mix 10 min Ripen 5–7 h, at 24 °C doubled and still domed; it floats or smells of apples')
    match(final!, /^Mix 15 min Rest 30–45 min Mix in 5 min, adds Salt Bulk 3\.5–4\.5 h, .* Cool 1–3 h$/)
    await tick('Notes')
    equal(methods()[0], 'Mix 10 min Ripen 5–7 h, at 24 °C')
  })

  it('minds what stands too warm by its method', async () => {
    await show(six[4]!)
    match(textOf(find('footer')), /Egg or milk, warm: By its method, what is in Final dough stands 4\.4 h/)
  })

  it('names the allergens listed, what each is in and what is not known, and leaves the deciding to labels and law', async () => {
    const [final] = straightDough('Bread flour = 100%\nMilk = 30%\nEggs = 2 each\nMahleb = 1%', '').stages
    await show(bread({ stages: [final!] }))
    await list('End') // Canada
    const said = textOf(find('footer'))
    match(said, /gluten source \(wheat\) in Bread flour; milk in Milk; eggs in Eggs\. Not known: Mahleb\./)
    ok(said.includes(allergenSentence))
    match(said, /Egg or milk: .*2 hours.*Raw flour: Do not taste/)
    ok(said.includes(localCodesSentence))
    ok(!/\bsafe|\bfree\b/i.test(textOf(paper())), 'it clears nothing')
  })

  it('says that the allergens of an own flour are not known until they are said', async () => {
    const { allergens: _allergens, ...rye } = larderWith([]).find('Dark rye flour')!
    const own = { ...rye, id: 'own', name: 'Hill meal', otherNames: [] }
    const none = { us: [], eu: [], canada: [] }
    await show(straightDough('Hill meal = 100%\nWater = 70%', 'Hill loaf'))
    for (const [said, isKnown] of [
      [{}, false],
      [{ allergens: none }, false],
      [{ allergens: none, noneListed: true }, true],
    ] as const) {
      card.larder = larderWith([{ ...own, ...said }])
      await card.updateComplete
      equal(textOf(find('footer')).includes('Not known: Hill meal.'), !isKnown)
    }
  })

  it('has no cautions where there is nothing to mind', async () => {
    await show(straightDough('Water = 100 g', 'Nothing yet'))
    ok(!textOf(find('footer')).includes(localCodesSentence))
  })

  it('goes by the public list chosen in its bar, and so does the sheet behind', async () => {
    const cautions = document.createElement('tb-cautions')
    cautions.numbers = english
    await show(six[0]!)
    cautions.sheet = openFormula(six[0]!)
    document.body.append(cautions)
    for (const [key, said, value] of [
      ['Home', 'the nine major allergens of the United States', 'us'],
      ['End', 'the priority allergens of Canada', 'canada'],
    ] as const) {
      await list(key)
      ok(textOf(find('footer')).includes(`Listed, of ${said}: `), said)
      await waitUntil(
        () => cautions.shadowRoot!.querySelector('select')?.value === value,
        'the sheet has it too',
      )
    }
    cautions.remove()
  })

  it('takes notes and cups and spoons along or leaves them', async () => {
    await show(six[0]!)
    ok(textOf(paper()).includes('26 °C in winter'))
    await tick('Notes')
    ok(!textOf(paper()).includes('26 °C in winter'))
    ok(!textOf(paper()).includes('cup'))
    await tick('Cups and spoons')
    match(textOf(find('tr', 'Salt')), /^35 g Salt .*tbsp.* 2\.20 %$/)
    match(textOf(find('footer')), /estimates.*true hydration [\d.]+ % instead of [\d.]+ %/)
  })

  it('begins at Print, and Escape leads back to where it was opened from', async () => {
    const alone: boolean[] = []
    const hear = (event: Event) => void alone.push((event as CustomEvent<boolean>).detail)
    document.addEventListener('tb-alone', hear)
    const { title } = document
    await show(six[0]!)
    equal(textOf(card.shadowRoot!.activeElement), 'Print')
    equal(document.title, 'Mill wheat')
    let printed = 0
    const { print } = window
    window.print = () => {
      printed += 1
    }
    await press('Enter')
    window.print = print
    equal(printed, 1)
    await press('Escape')
    await card.updateComplete
    document.removeEventListener('tb-alone', hear)
    ok(document.activeElement === opener)
    equal(card.shadowRoot!.querySelector('main'), null)
    equal(document.title, title)
    deepEqual(alone, [true, false])
  })

  it('goes when its formula is deleted elsewhere', async () => {
    await show(six[0]!)
    card.workbook = emptyWorkbook
    await card.updateComplete
    equal(card.shadowRoot!.querySelector('main'), null)
    ok(document.activeElement === opener)
  })

  for (const name of ['a4', 'letter'] as const)
    it(`is one page of ${paperWords[name]} for each of the examples, with all that can be on it`, async () => {
      for (const formula of six) {
        await show(formula)
        await choose(name)
        await tick('Cups and spoons')
        equal(textOf(find('.pages')), 'One page', formula.name)
        const [width, height] = [papers[name].width, papers[name].height].map(mm =>
          Math.floor((mm - 2 * paperMargin) * pixels),
        )
        await setViewport({ width: width!, height: height! })
        // Paper has no scroll bar that takes of its width.
        document.documentElement.style.cssText = 'overflow: hidden; scrollbar-gutter: auto'
        await emulateMedia({ media: 'print' })
        const { bottom, right } = paper().getBoundingClientRect()
        const { top } = card.getBoundingClientRect()
        ok(bottom - top <= height!, `${formula.name} is ${bottom - top} px high, of ${height}`)
        ok(paper().scrollWidth <= Math.ceil(right), 'nothing sticks out')
        ok(Number.parseFloat(getComputedStyle(find('td.grams')).fontSize) >= 20, 'figures for arm’s length')
        await emulateMedia({ media: 'screen' })
        await setViewport({ width: 1440, height: 900 })
        if (formula !== six.at(-1)) {
          card.remove()
          opener.remove()
        }
      }
    })

  it('prints several, each on a page of its own, and counts them', async () => {
    await show(...(six as [Formula, ...Formula[]]))
    equal(textOf(find('.pages')), '6 pages')
    equal(document.title, '6 cards')
    const levels = [...card.shadowRoot!.querySelectorAll('h1, h2')].map(
      h => h.getAttribute('aria-level') ?? h.localName,
    )
    deepEqual(levels.slice(0, 4), ['h1', '2', '3', '3'])
    equal(levels.filter(level => level === '2').length, 6)
    await passesAxeInBoth(card)
    await emulateMedia({ media: 'print' })
    const papers = [...card.shadowRoot!.querySelectorAll('.paper')]
    deepEqual(
      papers.map(one => getComputedStyle(one).breakBefore),
      ['auto', ...papers.slice(1).map(() => 'page')],
    )
  })

  it('says how many pages a formula takes that one page cannot hold', async () => {
    const [levain, final] = bread().stages
    const stages = [1, 2, 3, 4, 5, 6, 7].map(n => ({
      ...levain!,
      id: `${n}`,
      name: `Build ${n}`,
      lines: levain!.lines.map(l => ({ ...l, id: `${l.id} ${n}` })),
    }))
    await show(bread({ stages: [...stages, levain!, final!] }))
    match(textOf(find('.pages')), /^[2-3] pages$/)
  })

  it('says how many pages a very long formula takes, whichever type it was tried in', async () => {
    const [levain, final] = bread().stages
    const stages = Array.from({ length: 40 }, (_, n) => ({
      ...levain!,
      id: `${n}`,
      name: `Build ${n}`,
      lines: levain!.lines.map(l => ({ ...l, id: `${l.id} ${n}`, note: 'well stirred '.repeat(20) })),
    }))
    await show(bread({ stages: [...stages, levain!, final!] }))
    match(textOf(find('.pages')), /^\d+ pages$/)
  })

  it('is black on white in print, whatever the screen is, without its bar', async () => {
    await emulateMedia({ colorScheme: 'dark' })
    await show(six[0]!)
    await emulateMedia({ media: 'print' })
    equal(getComputedStyle(paper()).color, 'rgb(0, 0, 0)')
    equal(getComputedStyle(paper()).backgroundColor, 'rgb(255, 255, 255)')
    ok(!find('.bar').checkVisibility(), 'the bar is not printed')
  })

  it('holds up at three sizes, light and dark', async () => {
    await show(six[0]!)
    await tick('Cups and spoons')
    for (const width of [1440, 768, 390]) {
      await setViewport({ width, height: 844 })
      await passesAxeInBoth(card)
      ok(document.documentElement.scrollWidth <= width, `nothing sticks out, ${width} px wide`)
      for (const target of card.shadowRoot!.querySelectorAll(
        '.bar button, .bar select, .bar label:has(input)',
      )) {
        const { width: wide, height } = target.getBoundingClientRect()
        ok(wide >= 24 && height >= 24, `${textOf(target)} is big enough`)
      }
    }
  })
})

import '../../components/bring-in/tb-bring-in'
import type { TbBringIn } from '../../components/bring-in/tb-bring-in'
import { openFormula } from '../../src/dough/formula-sheet'
import { writeFormulas, writePlainText, writeWorkbookFile } from '../../src/exchange/index'
import { equal, match, ok, waitUntil } from '../assert'
import { press } from '../keys'
import { itCase } from '../once'
import { straightDough } from './breads'
import { Opened } from './dialogs'
import { dressPage, textOf } from './mount'

const loaves = Array.from({ length: 40 }, (_, at) =>
  straightDough('Bread flour = 100%\nWater = 66%\nSalt = 2%', `Loaf ${at}`),
)
const rows = (count: number) => {
  const row = (_: unknown, i: number) => `Mehl ${i};${i + 1},5;Teig ${i % 40};Loaf ${Math.floor(i / 4000)}\n`
  return `Zutat;Menge;Stufe;Bread\n${Array.from({ length: count }, row).join('')}`
}

const Native = globalThis.Worker

/** Has the page start this in place of its worker. */
function offerWorker(how: () => Worker): void {
  globalThis.Worker = new Proxy(Native, { construct: how })
}

describe('Bringing in a large file', () => {
  let opened: Opened<TbBringIn>
  let started: number
  let answers: number // of the worker, when it had read something
  let address: string

  before(async () => {
    dressPage()
    const page = await (await fetch('/site/index.html')).text()
    address = `/site/${/content="(reading-worker-[^"]+)"/.exec(page)![1]}`
    const named = document.createElement('meta')
    Object.assign(named, { name: 'reading-worker', content: address })
    document.head.append(named)
  })
  beforeEach(() => {
    started = 0
    answers = 0
    offerWorker(() => {
      started += 1
      const worker = new Native(address, { type: 'module' })
      worker.addEventListener('message', ({ data }) => {
        if ('arrived' in data) answers += 1
      })
      return worker
    })
  })
  afterEach(() => opened.remove())
  after(() => {
    globalThis.Worker = Native
  })

  async function show(text: string): Promise<void> {
    opened = new Opened(document.createElement('tb-bring-in'))
    opened.dialog.show({ file: new File([text], 'long.csv') })
    await opened.whenOpen()
  }
  const seen = () => opened.root.querySelector('#understood, .refusal')

  it('reads a small one beside the page too: what has not run yet is slow whatever it reads', async () => {
    await show(rows(3))
    await waitUntil(seen, 'it is read')
    match(textOf(seen()), /3 lines/)
    equal(answers, 1)
  })

  for (const [at, [what, text, says]] of (
    [
      ['a table', rows(150), /150 lines understood/],
      ['a recipe in words', `Mill loaf\n\n${'10 g salt, coarse\n'.repeat(120)}`, /120 lines/],
      ['a formula file', writeFormulas(loaves), /40 formulas/],
      ['a plain text', loaves.map(loaf => writePlainText(openFormula(loaf))).join('\n\n'), /40 formulas/],
      ['a workbook file', writeWorkbookFile({ name: '', larder: [], formulas: loaves }), /40 formulas/],
    ] as const
  ).entries())
    itCase(at)(`reads ${what} beside the page, pasted or from a file`, async () => {
      await show(text)
      await waitUntil(seen, 'the file is read')
      match(textOf(seen()), says)
      equal(started, 1)
      opened.remove()
      opened = new Opened(document.createElement('tb-bring-in'))
      opened.dialog.show({ text })
      await opened.whenOpen()
      await waitUntil(seen, 'the pasted text is read')
      match(textOf(seen()), says)
      equal(answers, 2)
    })

  it('reads what is pasted into the field there too', async () => {
    opened = new Opened(document.createElement('tb-bring-in'))
    opened.dialog.show()
    await opened.whenOpen()
    await navigator.clipboard.writeText(rows(2000))
    opened.find('#pasted').focus()
    await press('Control+v')
    await opened.click('footer .main', 'Read it')
    await waitUntil(seen, 'it is read')
    match(textOf(seen()), /2000 lines understood/)
    equal(answers, 1)
  })

  it('reads it beside the page, which goes on drawing, and reads a column otherwise there too', async () => {
    await show(rows(6000))
    await waitUntil(() => opened.root.querySelector('progress'), 'it says that it is reading')
    let drawn = 0 // frames
    const draw = () => {
      drawn += 1
      if (answers === 0) requestAnimationFrame(draw)
    }
    requestAnimationFrame(draw)
    await waitUntil(seen, 'it is read')
    equal(started, 1)
    equal(answers, 1)
    ok(drawn > 2, `the page drew ${drawn} frames before the worker had read it`)
    match(textOf(opened.find('#understood')), /6000 lines understood/)
    const elements = opened.root.querySelectorAll('*').length
    ok(elements < 6000, `what is shown of six thousand lines is ${elements} elements`)
    opened.find('#use-2').focus()
    await press('l')
    await waitUntil(
      () => /Leave/.test(textOf(opened.find<HTMLSelectElement>('#use-2').selectedOptions[0])),
      'it is set',
    )
    await waitUntil(
      () => opened.find('#stages') && !/Teig 1/.test(textOf(opened.find('.formula'))),
      'it is read anew',
    )
    equal(started, 1)
    equal(answers, 2)
  })

  it('can be stopped, and nothing is added', async () => {
    await show(rows(40_000))
    await waitUntil(() => opened.root.querySelector('progress'), 'it is being read')
    await opened.click('footer button', 'Stop reading')
    await waitUntil(
      () => textOf(opened.find('.told')) === 'Reading was stopped. Nothing was added.',
      'it says so',
    )
    ok(opened.find('#file'), 'another can be chosen')
  })

  it('is read on the page where there are no workers, or the worker cannot be fetched', async () => {
    offerWorker(() => {
      throw new Error('no workers here')
    })
    await show(rows(2000))
    await waitUntil(seen, 'it is read')
    match(textOf(seen()), /2000 lines/)
    opened.remove()
    offerWorker(() => new Native('/site/not-there.js', { type: 'module' }))
    await show(rows(2000))
    await waitUntil(seen, 'it is read')
    match(textOf(seen()), /2000 lines/)
  })

  it('is not even loaded when it is far too large', async () => {
    opened = new Opened(document.createElement('tb-bring-in'))
    const huge = new File([new Uint8Array(5 * 1024 * 1024 + 1)], 'huge.csv')
    huge.arrayBuffer = () => Promise.reject(new Error('it was loaded'))
    opened.dialog.show({ file: huge })
    await waitUntil(seen, 'it is refused')
    match(textOf(seen()), /huge\.csv is 5 MB/)
  })
})

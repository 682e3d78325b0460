import '../../components/send-out/tb-send-out'
import type { TbSendOut } from '../../components/send-out/tb-send-out'
import type { Day } from '../../src/dough/document/day'
import { readFormulas } from '../../src/exchange/index'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { saturday } from '../day/notation'
import { press } from '../keys'
import { millWheat, straightDough } from './breads'
import { holdsUp, Opened } from './dialogs'
import { dressPage, textOf } from './mount'

describe('Sending out formulas', () => {
  let opened: Opened<TbSendOut>
  const spelt = () => straightDough('Bread flour = 100%\nWater = 66%\nSalt = 2%', 'Épeautre: 1/2')

  async function show(
    detail: { formula?: string } = {},
    formulas = [millWheat({ id: 'mill' }), spelt()],
    days: Day[] = [],
  ) {
    opened = new Opened(document.createElement('tb-send-out'), { formulas, days, name: 'Brackwater Mill' })
    opened.dialog.show(detail)
    await opened.whenOpen()
  }
  const text = () => opened.find<HTMLTextAreaElement>('#csv').value
  const link = () => opened.find<HTMLAnchorElement>('a[download]')

  before(dressPage)
  afterEach(() => opened.remove())

  it('shows one formula with its figures for readers', async () => {
    await show({ formula: 'mill' })
    match(
      text(),
      /^formula,stage,ingredient,amount,note,counts as,setting,grams,percent,whole dough percent\n/,
    )
    match(text(), /Mill wheat,Final dough,Salt,21 g,,salt,,21,2\.1,1\.8841/)
    ok(!text().includes('Épeautre'))
    equal(link().download, 'Mill wheat.csv')
  })

  it('sends all, or another chosen with the keyboard, under a name any system takes', async () => {
    await show()
    equal(link().download, 'Brackwater Mill.csv')
    equal(readFormulas(text()).formulas.length, 2)
    opened.find('#what').focus()
    await press('End')
    await waitUntil(() => !text().includes('Mill wheat'), 'the other formula is shown')
    equal(link().download, 'Épeautre 1 2.csv')
  })

  it('offers what the day in sight bakes, and its handout', async () => {
    const day = saturday([[millWheat({ id: 'mill' }), 6]], { id: 'friday', name: 'Friday class' })
    location.hash = '#order/friday'
    try {
      await show({ formula: 'other' }, [millWheat({ id: 'mill' }), { ...spelt(), id: 'other' }], [day])
      equal(textOf(opened.find<HTMLSelectElement>('#what').selectedOptions[0]!), 'The breads of Friday class')
      ok(text().includes('Mill wheat') && !text().includes('Épeautre'), text())
      await opened.click('footer button', 'Handout')
      deepEqual(opened.around.wishes, [{ want: 'handout', day: 'friday' }])
    } finally {
      location.hash = ''
    }
  })

  it('gives the download the same bytes as it shows', async () => {
    await show({ formula: 'mill' })
    const response = await fetch(link().href)
    equal(response.headers.get('content-type'), 'text/csv;charset=utf-8')
    equal((await response.text()).replaceAll('\r\n', '\n'), text())
  })

  it('copies the text and says so', async () => {
    await show({ formula: 'mill' })
    await opened.click('footer button', 'Copy')
    await waitUntil(() => textOf(opened.find('.told')) === 'Copied.', 'it says so')
    const { formulas, problems } = readFormulas(await navigator.clipboard.readText())
    deepEqual(problems, [])
    equal(formulas[0]?.stages.length, 2)
  })

  it('selects the text where copying is not allowed', async () => {
    await show({ formula: 'mill' })
    const { clipboard } = navigator
    const writeText = clipboard.writeText.bind(clipboard)
    clipboard.writeText = () => Promise.reject(new DOMException('no', 'NotAllowedError'))
    try {
      await opened.click('footer button', 'Copy')
      await waitUntil(() => textOf(opened.find('.told')).includes('selected'), 'it says what to do')
    } finally {
      clipboard.writeText = writeText
    }
    const field = opened.find<HTMLTextAreaElement>('#csv')
    equal(field.selectionEnd - field.selectionStart, field.value.length)
  })

  it('follows the workbook while it is open', async () => {
    await show({ formula: 'mill' })
    opened.dialog.workbook = {
      ...opened.dialog.workbook,
      formulas: [millWheat({ id: 'mill', name: 'Hill wheat' })],
    }
    await opened.dialog.updateComplete
    match(text(), /Hill wheat,Levain/)
    await press('Escape')
    await opened.whenClosed()
  })

  it('says so when there is nothing to send', async () => {
    await show({}, [])
    match(textOf(opened.find('.body')), /no formula on the shelf yet/)
  })

  it('holds up on a laptop and a phone', async () => {
    await show()
    await opened.click('summary', 'What the columns hold')
    await opened.click('summary', 'Opening it')
    await holdsUp(opened)
  })
})

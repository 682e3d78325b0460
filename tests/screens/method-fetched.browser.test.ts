import '../../components/sheet/tb-sheet'
import { openFormula } from '../../src/dough/formula-sheet'
import { equal, waitUntil } from '../assert'
import { press, type } from '../keys'
import { millWheat } from './breads'
import { Around, dressPage, english } from './mount'

// In a page of its own: on others it has been fetched.
describe('The place for the first step, out of sight', () => {
  before(dressPage)

  it('is fetched when it is gone to, and its field takes the focus', async () => {
    const formula = millWheat()
    const sheet = new Around({ formulas: [formula] }).hold(document.createElement('tb-sheet'))
    sheet.style.marginTop = '200vh'
    Object.assign(sheet, { sheet: openFormula(formula), numbers: english })
    await sheet.updateComplete
    const place = sheet.shadowRoot!.querySelector('tb-method')!
    equal(customElements.get('tb-method'), undefined)

    await waitUntil(
      () => sheet.shadowRoot!.querySelector('tb-grid')?.shadowRoot?.querySelector('td'),
      'the grid',
    )
    place.focus({ preventScroll: true })
    await press('Shift+Tab', 'Tab')
    const field = await waitUntil(() => place.shadowRoot?.activeElement, 'a field has the focus')
    equal(field.ariaLabel, 'What is done')
    equal(place.hasAttribute('tabindex'), false)
    await type('Mix')
    await press('Enter')
    equal(place.shadowRoot!.activeElement?.ariaLabel, 'Time and what else matters')
    sheet.remove()
  })
})

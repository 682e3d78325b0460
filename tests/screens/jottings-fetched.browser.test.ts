import '../../components/sheet/tb-sheet'
import { openFormula } from '../../src/dough/formula-sheet'
import { equal, waitUntil } from '../assert'
import { press, type } from '../keys'
import { millWheat } from './breads'
import { Around, dressPage, english } from './mount'

// In a page of its own: on others it has been fetched.
describe('The place for the first jotting, out of sight', () => {
  before(dressPage)

  it('is fetched when it is gone to, and its field takes the focus', async () => {
    const formula = millWheat()
    const sheet = new Around({ formulas: [formula] }).hold(document.createElement('tb-sheet'))
    sheet.style.marginTop = '200vh'
    Object.assign(sheet, { sheet: openFormula(formula), numbers: english })
    await sheet.updateComplete
    const place = sheet.shadowRoot!.querySelector('tb-jottings')!
    equal(customElements.get('tb-jottings'), undefined)

    await waitUntil(
      () => sheet.shadowRoot!.querySelector('tb-grid')?.shadowRoot?.querySelector('td'),
      'the grid',
    )
    sheet.shadowRoot!.querySelector('tb-method')!.focus({ preventScroll: true }) // the stop before it
    await press('Tab')
    const field = await waitUntil(() => place.shadowRoot?.activeElement, 'a field has the focus')
    equal(field.ariaLabel, 'Name of a new jotting')
    equal(place.hasAttribute('tabindex'), false)
    await type('tin=5')
    equal(place.shadowRoot!.activeElement?.ariaLabel, 'Calculation of the new jotting')
    sheet.remove()
  })
})

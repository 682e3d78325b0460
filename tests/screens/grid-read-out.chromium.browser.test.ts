import { a11ySnapshot } from '@web/test-runner-commands'
import { ok, waitUntil } from '../assert'
import { setUp } from './grid-desk'

/** What is read out, which of the browsers under test only Chromium tells. */
describe('The grid, read out', () => {
  it('has rows out of sight', async () => {
    const spices = Array.from({ length: 200 }, (_, i) => `Spice ${i + 1} = 1 g`).join('\n')
    const { grid } = await setUp(`Final dough:\nBread flour = 1000 g\n${spices}\nSalt = 20 g`)
    const table = grid.shadowRoot!.querySelector('[role=grid]')!
    await waitUntil(() => !table.hasAttribute('aria-busy'), 'all rows are there')
    const rows = [...table.querySelectorAll('tr.line')]
    const last = rows.find(row => row.querySelector('.name')!.textContent === 'Spice 200')!
    ok(last.getBoundingClientRect().top > 2 * innerHeight)
    const heard = JSON.stringify(await a11ySnapshot({}))
    for (const name of ['Spice 1', 'Spice 100', 'Spice 200'])
      ok(heard.includes(`"${name} not in the larder`), name)
  })
})

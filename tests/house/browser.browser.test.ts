import { emulateMedia, sendKeys, sendMouse, setViewport } from '@web/test-runner-commands'
import { equal, ok, waitUntil } from '../assert'
import { press } from '../keys'

/** What every other test in the browser leans on: real keys, a real pointer, a clipboard, a viewport. */
describe('The browser under test', () => {
  let field: HTMLInputElement

  beforeEach(() => {
    field = document.createElement('input')
    document.body.append(field)
  })

  afterEach(() => field.remove())

  it('delivers real keys to the focused element', async () => {
    field.focus()
    const keys: string[] = []
    field.addEventListener('keydown', event => keys.push(`${event.isTrusted} ${event.key}`))
    await sendKeys({ type: '70' })
    await press('Tab')
    equal(field.value, '70')
    equal(keys.join(), 'true 7,true 0,true Tab')
  })

  it('delivers a real pointer', async () => {
    const { left, top } = field.getBoundingClientRect()
    await sendMouse({ type: 'click', position: [Math.round(left + 5), Math.round(top + 5)] })
    equal(document.activeElement, field)
  })

  it('copies and pastes with the keyboard', async () => {
    field.value = 'rye'
    field.focus()
    field.select()
    await press('Control+c')
    field.setSelectionRange(3, 3)
    await press('Control+v')
    await waitUntil(() => field.value === 'ryerye', 'the pasted text is in the field')
  })

  it('takes the size of a phone and a dark scheme', async () => {
    await setViewport({ width: 390, height: 844 })
    await emulateMedia({ colorScheme: 'dark' })
    equal(innerWidth, 390)
    ok(matchMedia('(prefers-color-scheme: dark)').matches)
    await emulateMedia({ colorScheme: 'light' })
    await setViewport({ width: 1280, height: 800 })
  })
})

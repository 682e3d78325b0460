/** Real keys for tests in the browser. */
import { sendKeys } from '@web/test-runner-commands'

/** Presses each of the keys in turn, with its modifiers: `press('Control+z')`, `press('Tab', 'Shift+Tab')`. */
export async function press(...chords: string[]): Promise<void> {
  for (const chord of chords) {
    const modifiers = chord.split('+')
    const key = modifiers.pop() || '+' // `Control++` ends in the key itself
    const held = modifiers.filter(name => name !== '')
    for (const name of held) await sendKeys({ down: name })
    await sendKeys({ press: key })
    for (const name of held.reverse()) await sendKeys({ up: name })
  }
}

/** Types the text key by key into what has the focus. */
export const type = (text: string): Promise<void> => sendKeys({ type: text })

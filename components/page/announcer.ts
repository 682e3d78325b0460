import type { Desk, DeskEvent } from '../desk/desk.js'

const pause = 150 // milliseconds; a burst of edits is said once

/**
 * Says sentences through the page's one polite live region: emptied, then set a moment later, so that the same
 * sentence twice is heard twice. The last of several within the moment wins.
 */
export class Announcer {
  #timer: ReturnType<typeof setTimeout> | undefined

  /**
   * Says what happened on the desk; `instead`: a sentence that says more of it. What puts it in words is fetched when first
   * wanted. Resolves to what of it is to be seen as well, or ''.
   */
  async tell(desk: Desk, event: DeskEvent, instead = ''): Promise<string> {
    if (instead) {
      this.say(instead)
      return ''
    }
    const { said, soakerCountedIn } = await import('../desk/said.js')
    this.say(said(desk, event))
    return soakerCountedIn(desk, event)
  }

  say(sentence: string): void {
    const region = document.getElementById('announcements')
    if (!region) return
    clearTimeout(this.#timer)
    region.textContent = ''
    this.#timer = setTimeout(() => {
      region.textContent = sentence
    }, pause)
  }
}

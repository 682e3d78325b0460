const pause = 150 // milliseconds; a burst of edits is said once

/**
 * Says sentences through the page's one polite live region: emptied, then set a moment later, so that the same
 * sentence twice is heard twice. The last of several within the moment wins.
 */
export class Announcer {
  #timer: ReturnType<typeof setTimeout> | undefined

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

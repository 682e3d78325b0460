/** What the address has behind its `#`, from a place on; as it is written where a stray `%` makes no sense. */
export function hashFrom(place: number): string {
  const text = location.hash.slice(place)
  try {
    return decodeURIComponent(text)
  } catch {
    return text
  }
}

/** Goes to a place by what its address has behind the `#`; where a dialog was closed, its entry of the history becomes that of the place. */
export function goTo(hash: string): void {
  if (`#${hash}` === location.hash) return
  if (history.state) location.replace(`#${hash}`)
  else location.hash = hash
}

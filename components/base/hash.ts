/** What the address has behind its `#`, from a place on; as it is written where a stray `%` makes no sense. */
export function hashFrom(place: number): string {
  const text = location.hash.slice(place)
  try {
    return decodeURIComponent(text)
  } catch {
    return text
  }
}

/** Puts text on the clipboard; false where the browser, or the way the page was opened, does not allow it. */
export async function copyText(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text)
    return true
  } catch {
    return false
  }
}

/** Puts HTML on the clipboard, with text for places that take no more; false where that is not allowed. */
export async function copyRich(html: string, text: string): Promise<boolean> {
  try {
    const kinds = { 'text/html': html, 'text/plain': text }
    const blobs = Object.entries(kinds).map(([type, data]) => [type, new Blob([data], { type })] as const)
    await navigator.clipboard.write([new ClipboardItem(Object.fromEntries(blobs))])
    return true
  } catch {
    return false
  }
}

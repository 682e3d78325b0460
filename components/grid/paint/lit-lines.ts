/** Whether a row's name can be seen: in the window, and not beneath a bar or a panel of the page. */
function isSeen(root: ShadowRoot, name: Element): boolean {
  const { left, top, height } = name.getBoundingClientRect()
  const there = root.elementFromPoint(left + 8, top + Math.min(height, 40) / 2)
  return there?.closest('tr') === name.parentElement
}

/** Brings the first line of the working that is shown into view, where none of them can be seen. */
export function bringIntoView(root: ShadowRoot): void {
  const names = [...root.querySelectorAll('tr.lit > th')]
  const [first] = names
  if (!first || names.some(name => isSeen(root, name))) return
  first.scrollIntoView({ block: 'center' })
  if (!isSeen(root, first)) first.scrollIntoView({ block: 'start' })
}

/** Brings a line of the working that is shown into view, where none of them is. */
export function bringIntoView(root: ParentNode): void {
  const rows = [...root.querySelectorAll('tr.lit')]
  const inView = rows.some(row => {
    const { top, bottom } = row.getBoundingClientRect()
    const middle = (top + bottom) / 2
    return middle > 0 && middle < innerHeight
  })
  if (!inView) rows[0]?.scrollIntoView({ block: 'center' })
}

/** Lets a file be dropped on an element; `over` is told whether one is held above it. */
export const fileDrop = (over: (isOver: boolean) => void, take: (file: File) => void) => ({
  dragOver: (event: DragEvent): void => {
    if (!event.dataTransfer?.types.includes('Files')) return
    event.preventDefault()
    over(true)
  },
  dragLeave: (): void => over(false),
  drop: (event: DragEvent): void => {
    const file = event.dataTransfer?.files[0]
    over(false)
    if (!file) return
    event.preventDefault() // or the browser would leave the page for the file
    take(file)
  },
})

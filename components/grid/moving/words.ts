/** The keys of the grid, for the help screen. `Ctrl` is ⌘ on a Mac. */
export const gridKeys: readonly { readonly keys: string; readonly does: string }[] = [
  { keys: '← → ↑ ↓', does: 'Go to the next cell' },
  { keys: 'Home, End', does: 'Go to the first or last cell of the row' },
  { keys: 'Ctrl+Home, Ctrl+End', does: 'Go to the first or last cell of the sheet' },
  { keys: 'Page Up, Page Down', does: 'Go a screenful up or down' },
  {
    keys: 'Any letter or digit',
    does: 'Replace what the cell holds; an arrow key then keeps it and moves on',
  },
  {
    keys: 'Enter, F2, double click',
    does: 'Edit in place; F2 again: the arrow keys move on from the cell. On a number that only follows: how it is worked out',
  },
  {
    keys: 'Enter, Shift+Enter (editing)',
    does: 'Keep it and go down, or up; on a line just begun, to the next one',
  },
  {
    keys: 'Tab, Shift+Tab (editing)',
    does: 'Keep it and go to the next, or previous, cell that can be typed in',
  },
  { keys: 'Escape (editing)', does: 'Leave the cell as it was' },
  { keys: 'Alt+Enter (in a note)', does: 'Begin a new line of the note' },
  { keys: 'Escape, then Tab', does: 'Leave the sheet for the next control' },
  { keys: 'Alt+Enter', does: 'Ask how the number is worked out' },
  { keys: 'Ctrl+Enter', does: 'Add a line below' },
  { keys: 'Alt+↑, Alt+↓', does: 'Move the line, or the stage, up or down' },
  { keys: 'Delete, Backspace', does: 'Clear the selected cells; with whole rows selected, remove the lines' },
  { keys: 'Shift+arrows, Shift+click', does: 'Select a block of cells' },
  { keys: 'Shift+Space, Ctrl+Space, Ctrl+A', does: 'Select the row, the column, everything' },
  { keys: 'Ctrl+C, Ctrl+X, Ctrl+V', does: 'Copy, cut, paste the selected cells' },
  { keys: 'Ctrl+Z', does: 'Undo' },
  { keys: 'Ctrl+Y, Ctrl+Shift+Z', does: 'Redo' },
  { keys: 'Shift+F10, Menu key', does: 'Open the actions of the row' },
]

import type { Field } from '../table/elements.js'

/** Puts text where the caret of the field is, as a key would; native undo takes it back. */
export function insertText(field: Field, text: string): void {
  // The one way to insert that the field's own undo knows; where it is gone, setRangeText does without.
  if (document.execCommand('insertText', false, text)) return
  field.setRangeText(text, field.selectionStart ?? 0, field.selectionEnd ?? 0, 'end')
  field.dispatchEvent(new Event('input', { bubbles: true }))
}

/** Opens the editor's list and its refusal upwards where the window ends below, and the list within its sides. */
export function placeEditor(field: HTMLElement | null): void {
  const editor = field?.closest<HTMLElement>('.editor')
  if (!field || !editor) return
  const end = visualViewport?.height ?? innerHeight
  editor.classList.toggle('up', field.getBoundingClientRect().bottom + 240 > end)
  const list = editor.querySelector('ul')
  if (!list || list.hidden) return
  editor.style.removeProperty('--list-shift')
  const { left, right } = list.getBoundingClientRect()
  const over = Math.min(0, left - 8) + Math.max(0, right - document.documentElement.clientWidth + 8)
  if (over) editor.style.setProperty('--list-shift', `${over}px`)
}

/** `field-sizing: content` is not in every browser yet: a note's field grows by hand. */
export function fit(field: Field): void {
  if (!(field instanceof HTMLTextAreaElement)) return
  field.style.height = 'auto'
  field.style.height = `${field.scrollHeight + 2}px`
}

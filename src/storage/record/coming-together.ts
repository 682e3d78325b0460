/** What a keeper fetches when edits come from elsewhere, or may have to be left behind. */
export { merge } from './merge.js'
export { takeIn, unsavedEdits, unsavedFormulas } from './unsaved.js'

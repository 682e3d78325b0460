/** What a keeper fetches when edits come from elsewhere, or may have to be left behind. */
export { leftText, withLeft } from './left-behind.js'
export { merge } from './merge.js'
export { takeIn, unsavedEdits, unsavedFormulas } from './unsaved.js'

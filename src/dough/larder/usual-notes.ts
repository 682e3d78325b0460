import { larderNotes } from './larder-notes.js'
import { useNotes } from './usual-larder.js'

/** `Cup unsifted. USDA NDB 20084.` */
function noteOf(source: string, doubt = ''): string {
  const said = [doubt, source && `USDA NDB ${source.padStart(5, '0')}`].filter(Boolean)
  return said.map(part => `${part}.`).join(' ')
}

const rows = larderNotes
  .trim()
  .split('\n')
  .map(row => row.split('|'))
useNotes(new Map(rows.map(([name = '', source = '', doubt]) => [name, noteOf(source, doubt)])))

/** Which test files share a page: what a page costs to begin with is more than most files. */
import { readFileSync, statSync } from 'node:fs'
import { dirname } from 'node:path'

const together = 24_000 // bytes of source: so few that a page does not grow old, and at the end no engine is left alone with many

/**
 * Whether each of its cases stands by itself. Elsewhere a case goes on where the one before it ended.
 * @param {string} file
 */
export const isOfCases = file => file.startsWith('tests/screens/')

/** @param {string} file */
const isAlone = file => readFileSync(file, 'utf8').includes('In a page of its own:')

/**
 * Files of a folder that stand beside each other share most of what they load.
 * @param {readonly string[]} files
 * @returns {string[][]} the largest first
 */
export function pagesOf(files) {
  /** @type {{ folder: string, size: number, files: string[] }[]} */
  const pages = []
  for (const file of files.toSorted()) {
    const [folder, { size }] = [dirname(file), statSync(file)]
    const last = pages.findLast(page => page.folder === folder)
    if (isAlone(file)) pages.push({ folder: file, size, files: [file] })
    else if (last && last.size + size <= together) {
      last.files.push(file)
      last.size += size
    } else pages.push({ folder, size, files: [file] })
  }
  return pages.toSorted((a, b) => b.size - a.size).map(({ files }) => files)
}

import { type Sentences, wording } from '../../engine/index.js'

/** Why the copy in a file is not up to date. */
export interface CopyDiagnostic {
  readonly code: 'copyNotAllowed' | 'copyFileGone' | 'copyFileOther' | 'copyNotWritten'
  readonly file: string // its name
}

export const copySentences: Sentences<CopyDiagnostic> = {
  copyNotAllowed: ({ file }) => `The browser asks again before Tarebook may write ${file}.`,
  copyFileGone: ({ file }) =>
    `${file} is no longer where it was, so the copy is not kept. Name a file again.`,
  copyFileOther: ({ file }) =>
    `Something else has written ${file} since Tarebook did, so it is left as it is. Bring it in to see what is in it, or write over it.`,
  copyNotWritten: ({ file }) =>
    `${file} could not be written. Tarebook tries again at the next change; the workbook in the browser is not touched by this.`,
}

export const copyProblem = wording(copySentences)

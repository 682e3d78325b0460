export const workingWords = {
  gone: 'No longer here',
  goneBecause: 'That line or stage is no longer in the formula.',
  close: 'Close',
  closeThis: 'Close this working',
  back: 'Back',
  copy: 'Copy',
  followedFrom: 'Followed from',
  sources: 'Where the figures came from',
  copied: 'The working is copied.',
  notCopied: 'The browser did not allow copying. Select the text instead.',
} as const

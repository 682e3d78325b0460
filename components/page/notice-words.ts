export const noticeWords = {
  notices: 'Notices',
  dismiss: 'Dismiss',
  dismissThis: (notice: string): string => `Dismiss: ${notice}`,
  download: 'Download CSV',
  tryAgain: 'Try again',
  editHere: 'Edit here',
  newVersion: 'A new version of Tarebook is ready.',
  reload: 'Reload',
  deleted: (formula: string): string => `Deleted ${formula}.`,
  undo: 'Undo',
} as const

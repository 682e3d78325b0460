export const deskWords = {
  gone: 'That is no longer here. Nothing was changed.',
} as const

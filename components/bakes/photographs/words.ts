/** Of the photographs of a bake. */
export const photographWords = {
  heading: 'Photographs',
  take: 'Take a photograph',
  choose: 'Choose from files',
  hint: 'Kept in this browser, without the place where it was taken, and made smaller if it is large.',
  look: (described: string, number: number, of: number): string =>
    described ? `Look at: ${described}` : `Look at photograph ${number} of ${of}`,
  alt: (described: string, number: number): string => described || `Photograph ${number}, not described`,
  title: (number: number, of: number): string => `Photograph ${number} of ${of}`,
  describe: 'What it shows, for people who listen to the page',
  describeHint: 'Crumb of the second loaf, open, a tunnel under the crust',
  taken: (date: string): string => `Added on ${date}`,
  remove: 'Delete this photograph',
  sure: 'Delete it for good? This cannot be undone.',
  keep: 'Keep it',
  removed: 'Deleted the photograph.',
  kept: (count: number): string => (count === 1 ? 'Kept the photograph.' : `Kept ${count} photographs.`),
  notAPicture: (file: string): string =>
    `“${file}” is not a picture this browser can show. Choose a JPEG or PNG.`,
  full: 'The storage of this browser is nearly full: the photograph was not kept, and nothing else is lost. Delete photographs you do not need, or make room on the device.',
  notKept: 'The photograph could not be kept: this browser does not store it. Nothing else is lost.',
  notRead: 'The photographs could not be read from the storage of this browser.',
  left: (count: number): string =>
    count === 1
      ? 'One photograph is of a bake that was deleted.'
      : `${count} photographs are of bakes that were deleted.`,
  removeLeft: (count: number): string => (count === 1 ? 'Delete it for good' : 'Delete them for good'),
  removedLeft: (count: number): string =>
    count === 1 ? 'Deleted the photograph.' : `Deleted ${count} photographs.`,
  working: 'Making it ready…',
} as const

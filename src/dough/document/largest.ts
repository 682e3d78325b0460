/** How large a formula may be: more than this of it is neither read from a file nor worked out. */
export const largest = {
  characters: 5_000_000, // of a table that is read or pasted
  lines: 5000,
  stages: 200,
  jottings: 1000,
  holds: 40, // solved together
  namings: 20_000, // of lines in amounts, each as often as lines that give may move it
} as const

/** The name a new stage begins with; from the second on with its number. */
export const newStageName = (n: number): string => (n === 1 ? 'New stage' : `New stage ${n}`)

export const nothingToAsk = 'There is no number here to ask about.'
export const onlyFollows = 'This number follows from the others.'

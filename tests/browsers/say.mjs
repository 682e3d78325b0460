/**
 * The console as it is before any runner of browser tests begins. Each takes it for itself and gives back what it found:
 * of several side by side the last to end gives back another's, into which nothing is heard.
 */
export const { log, error } = console

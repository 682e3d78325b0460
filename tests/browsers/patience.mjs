/**
 * How long a test waits for what has to come, in milliseconds. What comes late on a slow machine that runs three engines at
 * once has come all the same; only what never comes takes as long. Other limits are made of it.
 */
export const patience = 60_000

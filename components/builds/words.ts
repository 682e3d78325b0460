import { listed } from '../../src/engine/index.js'

const quoted = (name: string): string => `“${name}”`

/** What is said of the builds of a formula. */
export const buildWords = {
  heading: 'Builds',
  /** `stage` is called like the build, or the build is named beside it; `others` are the formulas that have it too. */
  kept: (stage: string, build: string, others: readonly string[]): string => {
    const name =
      stage === build
        ? `${stage} is a build of this workbook`
        : `${stage} is the build ${quoted(build)} of this workbook`
    return others.length
      ? `${name}, the same in ${listed(others)}: what changes here changes there.`
      : `${name}. No other formula takes it yet: type ${quoted(build)} as an ingredient there.`
  },
  letGo: 'Make it this formula’s own',
  letGoOf: (stage: string): string => `Make ${stage} this formula’s own`,
  /** A stage that is made at once with that of other breads of a day. */
  together: (stage: string, day: string, others: readonly string[]): string =>
    `${stage} is made together with that of ${listed(others)} on ${day}.`,
} as const

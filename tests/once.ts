/** Tests in the browser that ask nothing of an engine. */

/** Whether this engine is the one of those running that is asked what is asked once; the page that loads the tests says so. */
export const { isAskedOnce } = globalThis as unknown as { isAskedOnce: boolean }

/**
 * A test that runs in one engine: of names, roles and colours, say, which are the same in each. `browsers/report.mjs`
 * knows the suite it is in.
 */
export function itOnce(title: string, test: () => void | Promise<void>): void {
  if (isAskedOnce) describe('in one engine', () => void it(title, test))
}

/** For cases that go the same way with other data, one after the other: the first runs in each engine, the others in one. */
export const itCase = (at: number): typeof itOnce =>
  at === 0 ? (title, test) => void it(title, test) : itOnce

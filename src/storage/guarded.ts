/** A listener whose faults are reported as its own and stop nothing else. */
export const guarded =
  <A extends readonly unknown[]>(listener: (...args: A) => void) =>
  (...args: A): void => {
    try {
      listener(...args)
    } catch (error) {
      globalThis.reportError(error)
    }
  }

import { wish } from '../base/events.js'

/** A step of a formula, by ids. */
export interface StepPlace {
  readonly formula: string
  readonly stage: string
  readonly step: string
}

/** Opens a formula, with the focus in what is said of a step of its method. */
export async function goToStep(from: HTMLElement, { formula, stage, step }: StepPlace): Promise<void> {
  const app = document.querySelector('tb-app') // `from` goes from the page with its place
  wish(from, { want: 'open', formula })
  await Promise.all([app?.drawn(), import('./tb-method.js')])
  await app?.renderRoot.querySelector('tb-sheet')?.renderRoot.querySelector('tb-method')?.goTo(stage, step)
}

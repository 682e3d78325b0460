import { html, type TemplateResult } from 'lit'
import type { Learning } from '../../src/day/learning/learning.js'
import { speedLesson } from '../../src/day/learning/lessons.js'
import { ripeningLearnt, saysSo, takeStepTime } from '../../src/day/learning/taking-over.js'
import { ripeningStep, stageOf } from '../../src/day/mixing/fed-build.js'
import type { FedBuild } from '../../src/day/mixing/feeding-edit.js'
import { boundsText } from '../../src/day/plan/words.js'
import type { BaseElement } from '../base/base-element.js'
import { askEdit, say } from '../base/events.js'
import { showDecimals } from '../base/numbers.js'
import '../learnt/tb-learnt.js'
import type { BuildOf } from './feeding-answer.js'
import { feedingWords } from './words.js'

/** How fast bakes have found the levains that are fed: taken over, their steps say the time that follows, and the feeding with them. */
export function learntSpeed(
  from: BaseElement,
  learning: Learning | undefined,
  [main]: readonly BuildOf[],
  fed: readonly FedBuild[],
  celsius: number,
): TemplateResult[] {
  if (!learning || !main) return []
  const { sheet } = main
  return fed.flatMap(({ stage: id }) => {
    const { stage } = stageOf(sheet, id)
    const learnt = learning.learnt(speedLesson(sheet, id))
    const step = ripeningStep(stage)?.step
    const length = learnt && ripeningLearnt(sheet, id, learnt, celsius)
    if (!learnt || !step || !length) return []
    const at = { formula: sheet.formula.id, stage: id, step: step.id }
    return [
      html`<p class="hint">${feedingWords.speedLearnt(stage.name, step.does)}</p>
        <tb-learnt
          .learnt=${learnt}
          what=${feedingWords.speedOf(stage.name)}
          .show=${(value: number) => showDecimals(value, from.numbers, 2)}
          .taken=${boundsText(length)}
          .take=${() => {
            const refusal = askEdit(from, workbook => takeStepTime(workbook, at, step, length))
            if (refusal) say(from, refusal)
          }}
          ?isSo=${saysSo(step, length)}
          .numbers=${from.numbers}
          ?readOnly=${from.readOnly}
        ></tb-learnt>`,
    ]
  })
}

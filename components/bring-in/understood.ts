import { html, nothing, type TemplateResult } from 'lit'
import type { CountsAs } from '../../src/dough/document/formula.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import type { ArrivalKind } from '../../src/exchange/arriving/arriving.js'
import type { RestorePlan } from '../../src/exchange/index.js'
import type { Mapping } from '../../src/exchange/tables/index.js'
import type { NumberStyle } from '../base/numbers.js'
import { problemList } from '../controls/problem-list.js'
import { readAs, restOfRecipe, totalsFound } from './arrived-parts.js'
import type { Decided, Incoming } from './decided.js'
import { formulaSections } from './formula-sections.js'
import { originInWords, type Read } from './intake.js'
import type { RecipeSaid, StepsSaid } from './recipes/recipe-draft.js'
import { sumInWords } from './sum.js'
import { sumWords } from './words.js'
import type { RestoreWish } from './workbooks/restore-wish.js'

/** What was read, with what the baker decided of it so far, and where to say more. */
export interface Understood {
  readonly read: Read
  readonly decided: Decided
  readonly incoming: Incoming
  readonly plan: RestorePlan | undefined // of a workbook file
  readonly workbook: Workbook
  readonly larder: Larder
  readonly numbers: NumberStyle
  readonly canBeReadOtherwise: boolean
  readonly decide: (change: Partial<Decided>) => void
  readonly readAs: (as: ArrivalKind) => void
  readonly readWith: (mapping: Mapping) => void
  readonly copy: (text: string) => void
}

/** All that is shown of what was read, before anything of it is added. */
export function understood(shown: Understood): TemplateResult {
  const { read, numbers, canBeReadOtherwise, readWith, copy } = shown
  const { from, arrived, remark } = read
  const problems = arrived.problems.filter(problem => problem.code !== 'totalDiffers') // shown with the totals
  const { formulas } = shown.incoming
  return html`
    <div class="top">
      <h3 class="sum" id="understood" tabindex="-1">
        ${sumInWords(read, formulas, numbers)} <small>${sumWords.from(originInWords(from))}</small>
      </h3>
      ${canBeReadOtherwise ? readAs(arrived.as, shown.readAs) : nothing}
    </div>
    ${remark ? html`<p class="remark">${remark}</p>` : nothing}
    ${unknown(shown)} ${arrived.as === 'table' ? totalsFound(arrived.totals) : nothing} ${problemList(problems, 'error', copy)}
    ${
      arrived.as === 'table'
        ? html`<tb-columns
            .look=${arrived.look}
            .numbers=${numbers}
            @tb-mapping=${(e: CustomEvent<Mapping>) => readWith(e.detail)}
          ></tb-columns>`
        : nothing
    }
    ${problemList(problems, 'warning', copy)}
    ${arrived.as === 'workbook' ? workbookLook(shown) : formulasLook(shown, arrived)}
    ${problemList(problems, 'remark', copy)}
  `
}

/** What the larder does not know, to say what it counts as. */
function unknown({ incoming, decided, decide, numbers }: Understood): TemplateResult | typeof nothing {
  if (incoming.unknown.length === 0) return nothing
  return html`<tb-unknown
    .names=${incoming.unknown}
    .said=${decided.meanings}
    .numbers=${numbers}
    @tb-counts-as=${({ detail }: CustomEvent<{ key: string; countsAs: CountsAs | 'not known' }>) =>
      decide({ meanings: new Map(decided.meanings).set(detail.key, detail.countsAs) })}
  ></tb-unknown>`
}

function workbookLook({ plan, decided, decide, numbers }: Understood): TemplateResult | typeof nothing {
  if (!plan) return nothing
  return html`<tb-workbook-look
    .plan=${plan}
    .wanted=${decided.wanted}
    .numbers=${numbers}
    @tb-restore=${(e: CustomEvent<RestoreWish>) => decide({ wanted: e.detail, sure: 0 })}
  ></tb-workbook-look>`
}

function formulasLook(
  { read: { from }, workbook, larder, incoming, decided, decide, numbers }: Understood,
  arrived: Exclude<Read['arrived'], { as: 'workbook' }>,
): TemplateResult {
  const isRecipe = arrived.as === 'recipe'
  const sections = formulaSections({
    workbook,
    ...incoming,
    numbers,
    choose: (formula, choice) => decide({ choices: new Map(decided.choices).set(formula.id, choice) }),
    lines: !isRecipe,
    toWeigh: from === 'link' || from === 'pasted link' ? larder : undefined,
  })
  if (!isRecipe || arrived.lines.length === 0) return sections
  const [formula] = arrived.formulas
  return html`<tb-recipe-lines
      .formula=${formula}
      .lines=${arrived.lines}
      .said=${decided.said}
      .name=${decided.name || formula.name}
      .numbers=${numbers}
      @tb-said=${(e: CustomEvent<RecipeSaid>) => decide({ said: e.detail })}
      @tb-named=${(e: CustomEvent<string>) => decide({ name: e.detail })}
    ></tb-recipe-lines>
    ${
      arrived.steps.length > 0
        ? html`<tb-recipe-steps
            .formula=${formula}
            .steps=${arrived.steps}
            .said=${decided.steps}
            .lines=${decided.said}
            @tb-steps-said=${(e: CustomEvent<StepsSaid>) => decide({ steps: e.detail })}
          ></tb-recipe-steps>`
        : nothing
    }
    ${restOfRecipe(arrived.rest)} ${sections}`
}

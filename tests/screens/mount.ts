import { emulateMedia } from '@web/test-runner-commands'
import type { ElementContext } from 'axe-core'
import type { EditRequest, Wish } from '../../components/base/events'
import pageStyles from '../../src/app/styles.css' with { type: 'text' }
import { emptyWorkbook, type Workbook } from '../../src/dough/document/workbook'
import { Refusal } from '../../src/dough/edits/edits'
import { History } from '../../src/storage/index'
import { equal } from '../assert'
import { isAskedOnce } from '../once'

export const english = { language: 'en', decimal: '.' } as const

/** Gives the test's page the tokens and the ground of the app's page. */
export function dressPage(): void {
  if (document.querySelector('style[data-page]')) return
  const style = document.createElement('style')
  style.dataset.page = ''
  style.textContent = pageStyles
  document.head.append(style)
  document.documentElement.lang = 'en'
}

/** Stands in for the app around one element: makes the edits it asks for, keeps its wishes. */
export class Around {
  readonly history: History
  readonly wishes: Wish[] = []
  onEdit: (workbook: Workbook) => void = () => {}

  constructor(workbook: Partial<Workbook> = {}) {
    this.history = new History({ ...emptyWorkbook, ...workbook })
  }

  /** Puts an element on the page. */
  hold<E extends HTMLElement>(element: E): E {
    element.addEventListener('tb-edit', event => {
      const request = (event as CustomEvent<EditRequest>).detail
      try {
        const transaction = request.edit(this.history.workbook)
        if (!transaction) return
        this.history.apply(transaction)
        this.onEdit(this.history.workbook)
      } catch (error) {
        if (!(error instanceof Refusal)) throw error
        request.refusal = error.message
      }
    })
    element.addEventListener('tb-wish', event => this.wishes.push((event as CustomEvent<Wish>).detail))
    document.body.append(element)
    return element
  }
}

/**
 * Fails with the rules broken and where, in the one engine that is asked: names, roles and colours are those of each. The
 * rules about whole pages are left out for a single element. In the dark it looks at colours alone: in the light, the rest
 * has been looked at.
 */
export async function passesAxe(context: Element | Document, wholePage = false): Promise<void> {
  if (!isAskedOnce) return
  const { default: axe } = await import('axe-core') // 650 kB, which most pages do without
  const { violations } = await axe.run(context as ElementContext, {
    resultTypes: ['violations'], // what passes need not be written down
    preload: false, // of style sheets, for rules that are not asked
    ...(matchMedia('(prefers-color-scheme: dark)').matches
      ? { runOnly: ['color-contrast', 'link-in-text-block'] }
      : { rules: wholePage ? {} : { region: { enabled: false } } }),
  })
  const found = violations.map(v => `${v.id}: ${v.nodes.map(n => n.target.join(' ')).join(' | ')}`)
  equal(found.join('\n'), '')
}

/** The same in the light scheme and in the dark. */
export async function passesAxeInBoth(context: Element | Document): Promise<void> {
  for (const colorScheme of isAskedOnce ? (['light', 'dark'] as const) : []) {
    await emulateMedia({ colorScheme })
    await passesAxe(context)
  }
}

/** The text a reader sees, with single spaces. */
export const textOf = (element: Element | null | undefined): string =>
  (element?.textContent ?? '').replace(/\s+/g, ' ').trim()

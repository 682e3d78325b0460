import { afterPaint } from '../base/after-paint.js'

const stops = 'a[href], button, input, select, textarea, summary, [tabindex]'
const headings = 'h1, h2, h3'

const parentOf = (node: Element): Element | undefined => {
  if (node.parentElement) return node.parentElement
  const root = node.getRootNode()
  return root instanceof ShadowRoot ? root.host : undefined
}

/** The element that has the focus, through all shadow roots; the body when none has. */
function focused(): Element | null {
  let at = document.activeElement
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
  return at
}

const takesFocus = (element: Element): element is HTMLElement =>
  element instanceof HTMLElement &&
  element.matches(stops) &&
  !element.matches(':disabled') &&
  (element.tabIndex >= 0 || element.matches(headings)) &&
  element.checkVisibility({ visibilityProperty: true })

/** Whether the focus that was there could still be. */
const isThere = (element: Element): boolean => element.isConnected && takesFocus(element)

/** The first element within that takes the focus, through all shadow roots. */
function firstIn(element: Element): HTMLElement | undefined {
  if (element instanceof HTMLElement && (element.hidden || element.inert)) return undefined
  if (takesFocus(element)) return element
  for (const child of [...(element.shadowRoot?.children ?? []), ...element.children]) {
    const found = firstIn(child)
    if (found) return found
  }
  return undefined
}

/** What is beside the element: what follows it first, then what stands before it, the nearest first. */
function besides(element: Element): readonly Element[] {
  const all = [...(element.parentNode?.children ?? [])]
  const at = all.indexOf(element)
  return [...all.slice(at + 1), ...all.slice(0, at).reverse()]
}

/**
 * Gives the focus to what is nearest when what had it is removed, hidden or disabled, as by a deletion or a dismissal, and
 * nothing else has taken it: what followed it, else what stood before it, among what it lay beside. What is gone with the
 * place it was in, as another place is gone to, is left to the place; `lost` is for what lay by itself over or above it.
 */
export function keepFocusNear(lost: () => void, signal: AbortSignal): void {
  let had: Element | undefined
  let around: readonly { readonly node: Element; readonly besides: readonly Element[] }[] = []

  let isToLook = false
  let byPointer = false // the last thing done: then the page stays where it is
  const look = async (): Promise<void> => {
    if (!had || isToLook) return
    isToLook = true
    await afterPaint()
    isToLook = false
    if (!had || !document.hasFocus() || focused() !== document.body) return
    if (isThere(had)) return // asked last: it has the page laid out
    had = undefined
    giveOn()
  }

  function giveOn(): void {
    const top = around.at(-1)?.node
    for (const { node, besides } of around) {
      const isPlace = node === top
      if (isPlace || (node instanceof HTMLDialogElement && !node.open)) {
        if (node.isConnected) lost()
        return
      }
      for (const one of besides) {
        const next = one.isConnected ? firstIn(one) : undefined
        if (next) return next.focus({ preventScroll: byPointer })
      }
    }
  }

  const changes = new MutationObserver(() => void look())

  /** Remembers what has the focus and what is around it, as it stands now. */
  const note = (event: Event): void => {
    const { type } = event
    if (type !== 'focusin') byPointer = type === 'click' && (event as MouseEvent).detail > 0
    const at = focused()
    if (!at || at === document.body) {
      if (type === 'click' || (had && isThere(had))) had = undefined // it was left
      return
    }
    had = at
    changes.disconnect()
    const path = []
    const roots = new Set<Node>()
    for (let node: Element | undefined = at; node; node = parentOf(node)) {
      path.push({ node, besides: besides(node) })
      roots.add(node.getRootNode())
    }
    // Above what lies in the shadow of the page's one element there is nothing beside it.
    around = path.slice(0, Math.max(0, path.length - 3))
    for (const root of roots)
      changes.observe(root, {
        subtree: true,
        childList: true,
        attributes: true,
        attributeFilter: ['disabled', 'hidden', 'inert'],
      })
  }

  for (const name of ['focusin', 'keydown', 'keyup', 'click'])
    window.addEventListener(name, note, { capture: true, signal })
  signal.addEventListener('abort', () => changes.disconnect())
}

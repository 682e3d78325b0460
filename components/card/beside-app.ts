/** Shows a printed page beside the app, which hides itself meanwhile: `tb-alone` reaches it by way of `from`. Closed, the page goes. */
export async function showBeside(
  from: HTMLElement,
  page: HTMLElement & { show(): Promise<void> },
): Promise<void> {
  page.addEventListener('tb-alone', event => {
    const { detail } = event as CustomEvent<boolean>
    from.dispatchEvent(new CustomEvent('tb-alone', { detail, bubbles: true, composed: true }))
    if (!detail) page.remove()
  })
  document.body.append(page)
  await page.show()
}

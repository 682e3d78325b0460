/** Where the grid of a sheet leaves for the steps of a stage, they come into view, fetched if need be. */
export function leadToMethods(sheet: ParentNode): void {
  sheet.addEventListener('tb-method', async event => {
    await import('./tb-method.js')
    await sheet.querySelector('tb-method')?.goTo((event as CustomEvent<string>).detail)
  })
}

/** What the main thread of a page works: processor time, which other programs of the machine do not lengthen as they do the clock's. */

/** @import { Page } from 'puppeteer-core' */

/**
 * @param {Page} page in Chromium
 * @returns {Promise<() => Promise<number>>} asked twice, tells by the difference what it worked in between, ms
 */
export async function mainThreadOf(page) {
  const session = await page.createCDPSession()
  await session.send('Performance.setTimeDomain', { timeDomain: 'threadTicks' })
  await session.send('Performance.enable')
  return async () => {
    const { metrics } = await session.send('Performance.getMetrics')
    const worked = metrics.find(({ name }) => name === 'TaskDuration')?.value
    if (worked === undefined) throw new Error('Chromium does not say what its main thread worked.')
    return 1000 * worked
  }
}

/** `npm start`: builds the app and serves it on this machine only. `--port=N` chooses the port. */
import { parseArgs } from 'node:util'
import { buildSite, inShort, sizeInWords } from './build.mjs'
import { serve } from './server.mjs'

const usualPort = 8123

/** @param {string | undefined} text */
function wishedPort(text) {
  if (text === undefined) return usualPort
  const port = Number(text)
  if (Number.isInteger(port) && port >= 0 && port < 65536) return port
  throw new Error(`--port takes a number from 0 to 65535, not "${text}".`)
}

async function main() {
  const { values } = parseArgs({ options: { port: { type: 'string' } } })
  const wish = wishedPort(values.port)
  const { outdir, files } = await buildSite()
  console.log(await sizeInWords(outdir, files))
  const { port } = await serve(outdir, wish)
  if (port !== wish && wish !== 0) {
    console.log(`Port ${wish} was busy. A browser keeps a workbook by address, so this one has its own.`)
  }
  console.log(`Tarebook is at http://localhost:${port}/`)
}

await main().catch(error => {
  console.error(`Tarebook did not start. ${inShort(error)}`)
  process.exit(1)
})

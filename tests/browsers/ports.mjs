import { once } from 'node:events'
import { createServer } from 'node:net'

/** @returns {Promise<number>} a port that nobody listens at */
export async function freePort() {
  const server = createServer().listen(0)
  await once(server, 'listening')
  const { port } = /** @type {import('node:net').AddressInfo} */ (server.address())
  server.close()
  await once(server, 'close')
  return port
}

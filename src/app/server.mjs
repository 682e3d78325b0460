/** Hands out a folder of files on this machine only. */
import { createReadStream } from 'node:fs'
import { stat } from 'node:fs/promises'
import { createServer } from 'node:http'
import { extname, join, normalize, resolve, sep } from 'node:path'

/** @import { IncomingMessage, Server, ServerResponse } from 'node:http' */

const portsToTry = 50

/** @type {Record<string, string>} */
const types = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webmanifest': 'application/manifest+json',
  '.json': 'application/json',
  '.csv': 'text/csv; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
}

/**
 * @param {string} folder
 * @param {string} url as the browser asked for it
 * @returns {string | undefined} a path inside the folder, or nothing
 */
export function pathInside(folder, url) {
  let path
  try {
    path = decodeURIComponent(url.replace(/[?#].*$/s, ''))
  } catch {
    return undefined
  }
  if (path.includes('\0') || path.includes('\\')) return undefined
  const root = resolve(folder)
  const full = normalize(join(root, path.endsWith('/') ? `${path}index.html` : path))
  return full.startsWith(root + sep) ? full : undefined
}

/**
 * @param {string} folder
 * @returns {(request: IncomingMessage, response: ServerResponse) => Promise<void>}
 */
export function handler(folder) {
  return async (request, response) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { allow: 'GET, HEAD' }).end('Tarebook only hands out files.\n')
      return
    }
    const path = pathInside(folder, request.url ?? '/')
    const found = path === undefined ? undefined : await stat(path).catch(() => undefined)
    if (path === undefined || !found?.isFile()) {
      response.writeHead(404, { 'content-type': 'text/plain; charset=utf-8' }).end('There is no such page.\n')
      return
    }
    const hashed = /-[A-Z0-9]{8}\.\w+$/.test(path) // the name changes whenever the content does
    response.writeHead(200, {
      'content-type': types[extname(path)] ?? 'application/octet-stream',
      'content-length': found.size,
      'cache-control': hashed ? 'public, max-age=31536000, immutable' : 'no-cache',
      'x-content-type-options': 'nosniff',
    })
    if (request.method === 'HEAD') response.end()
    else createReadStream(path).pipe(response)
  }
}

/**
 * @param {Server} server
 * @param {number} port
 * @returns {Promise<boolean>} false when something else has the port
 */
const listens = (server, port) =>
  new Promise((resolved, rejected) => {
    server.once('error', error => {
      if ('code' in error && error.code === 'EADDRINUSE') resolved(false)
      else rejected(error)
    })
    server.listen(port, '127.0.0.1', () => resolved(true))
  })

/**
 * Serves a folder on the first free port from the one that is wished for.
 * @param {string} folder
 * @param {number} wish 0 takes any free port
 * @returns {Promise<{ port: number, close: () => void }>}
 */
export async function serve(folder, wish) {
  for (let port = wish; port < Math.min(wish + portsToTry, 65536); port += 1) {
    const server = createServer(handler(folder))
    if (!(await listens(server, port))) continue
    const address = server.address()
    return {
      port: typeof address === 'object' && address !== null ? address.port : port,
      close() {
        server.close()
        server.closeAllConnections()
      },
    }
  }
  throw new Error(`No free port from ${wish} on: choose another with --port=N.`)
}

/** Hands out a folder of files on this machine only. */
import { open, realpath } from 'node:fs/promises'
import { createServer } from 'node:http'
import { extname, join, normalize, resolve, sep } from 'node:path'
import { pipeline } from 'node:stream/promises'

/**
 * @import { FileHandle } from 'node:fs/promises'
 * @import { IncomingMessage, Server, ServerResponse } from 'node:http'
 */

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

/** What a page cannot say of itself: who may show it within another page, and what a link out of it tells. */
const saidByHeaders = {
  'content-security-policy': "frame-ancestors 'none'",
  'x-frame-options': 'DENY', // the same, for older browsers
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'x-content-type-options': 'nosniff',
}

/**
 * Whether a request is for this machine by a name of its own. Any other name may be one that somebody else has given it,
 * whose pages could then read what this server hands out.
 * @param {string | undefined} host with its port
 */
const isOwnHost = host => /^(localhost|127\.0\.0\.1|\[::1\])(:\d+)?$/i.test(host ?? '')

/**
 * Opens the file that is asked for; nothing where there is none, or a link leads out of the folder.
 * @param {string} folder
 * @param {string} url
 * @returns {Promise<{ path: string, file: FileHandle, size: number } | undefined>}
 */
async function fileAt(folder, url) {
  const path = pathInside(folder, url)
  if (path === undefined) return undefined
  /** @type {FileHandle | undefined} */
  let file
  try {
    const [real, root] = await Promise.all([realpath(path), realpath(folder)])
    if (!real.startsWith(root + sep)) return undefined
    file = await open(real)
    const { size } = await found(file)
    return { path, file, size }
  } catch {
    await file?.close()
    return undefined
  }
}

/** @param {FileHandle} file */
async function found(file) {
  const stats = await file.stat()
  if (!stats.isFile()) throw new Error('It is no file.')
  return stats
}

/**
 * @param {string} folder
 * @returns {(request: IncomingMessage, response: ServerResponse) => Promise<void>}
 */
export function handler(folder) {
  return async (request, response) => {
    const says = { 'content-type': 'text/plain; charset=utf-8', ...saidByHeaders }
    if (!isOwnHost(request.headers.host)) {
      response.writeHead(421, says).end('Tarebook is at localhost, and has no other name here.\n')
      return
    }
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { ...says, allow: 'GET, HEAD' }).end('Tarebook only hands out files.\n')
      return
    }
    const asked = await fileAt(folder, request.url ?? '/')
    if (!asked) {
      response.writeHead(404, says).end('There is no such page.\n')
      return
    }
    const { path, file, size } = asked
    const hashed = /-[A-Z0-9]{8}\.\w+$/.test(path) // the name changes whenever the content does
    response.writeHead(200, {
      ...says,
      'content-type': types[extname(path)] ?? 'application/octet-stream',
      'content-length': size,
      'cache-control': hashed ? 'public, max-age=31536000, immutable' : 'no-cache',
    })
    if (request.method === 'HEAD' || size === 0) {
      response.end()
      await file.close()
    } else {
      // As long as it was said to be; whoever breaks it off has no more of it, and the file is closed all the same.
      await pipeline(file.createReadStream({ end: size - 1 }), response).catch(() => response.destroy())
    }
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

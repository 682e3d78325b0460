import assert from 'node:assert/strict'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { after, before, describe, it } from 'node:test'
import { serve } from '../../src/app/server.mjs'

/** Asks with a bare socket: fetch would tidy the path before it is sent. */
const ask = (port: number, path: string, method = 'GET') =>
  new Promise<string>((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () =>
      socket.write(`${method} ${path} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`),
    )
    let answer = ''
    socket.on('data', data => {
      answer += data
    })
    socket.on('end', () => resolve(answer))
    socket.on('error', reject)
  })

describe('Serving the app', () => {
  const folder = mkdtempSync(join(tmpdir(), 'tarebook-'))
  const site = join(folder, 'site')
  let server: Awaited<ReturnType<typeof serve>>

  before(async () => {
    mkdirSync(site)
    writeFileSync(join(folder, 'secret.txt'), 'secret')
    writeFileSync(join(site, 'index.html'), '<p>bread</p>')
    writeFileSync(join(site, 'main-ABCDEFG2.js'), 'export {}')
    writeFileSync(join(site, 'worker.js'), '')
    server = await serve(site, 0)
  })

  after(() => {
    server.close()
    rmSync(folder, { recursive: true })
  })

  it('hands out the page, which browsers ask for anew', async () => {
    const answer = await ask(server.port, '/?offline=no')
    assert.match(answer, /^HTTP\/1\.1 200 /)
    assert.match(answer, /content-type: text\/html; charset=utf-8/)
    assert.match(answer, /cache-control: no-cache/)
    assert.match(answer, /<p>bread<\/p>/)
  })

  it('lets browsers keep what has its content in its name, and nothing else', async () => {
    assert.match(
      await ask(server.port, '/main-ABCDEFG2.js'),
      /cache-control: public, max-age=31536000, immutable/,
    )
    assert.match(await ask(server.port, '/worker.js'), /cache-control: no-cache/)
  })

  const outside = ['/../secret.txt', '/%2e%2e/secret.txt', '/..%2fsecret.txt', '/..%5csecret.txt', '/%ff']
  for (const path of [...outside, '/nothing.js', '/index.html/x', '/index.html%00']) {
    it(`has no page at ${path}`, async () => {
      const answer = await ask(server.port, path)
      assert.match(answer, /^HTTP\/1\.1 404 /)
      assert.doesNotMatch(answer, /secret/)
    })
  }

  it('takes nothing in', async () => {
    assert.match(await ask(server.port, '/', 'POST'), /^HTTP\/1\.1 405 /)
  })

  it('moves to the next port when one is busy', async () => {
    const second = await serve(site, server.port)
    assert.ok(second.port > server.port)
    second.close()
  })
})

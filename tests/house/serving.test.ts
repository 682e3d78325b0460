import assert from 'node:assert/strict'
import { mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { after, before, describe, it } from 'node:test'
import { serve } from '../../src/app/server.mjs'

/** Asks with a bare socket: fetch would tidy the path before it is sent. */
const ask = (port: number, path: string, method = 'GET', host = 'localhost') =>
  new Promise<string>((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () =>
      socket.write(`${method} ${path} HTTP/1.1\r\nHost: ${host}\r\nConnection: close\r\n\r\n`),
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

  it('says what only headers can: within no other page, and nothing of it in a link', async () => {
    for (const path of ['/', '/main-ABCDEFG2.js', '/nothing.js']) {
      const answer = await ask(server.port, path)
      assert.match(answer, /^content-security-policy: frame-ancestors 'none'\r$/m)
      assert.match(answer, /^x-frame-options: DENY\r$/m)
      assert.match(answer, /^referrer-policy: no-referrer\r$/m)
      assert.match(answer, /^x-content-type-options: nosniff\r$/m)
    }
  })

  for (const host of ['localhost', 'LOCALHOST:8123', '127.0.0.1:8123', '[::1]'])
    it(`answers to ${host}`, async () => {
      assert.match(await ask(server.port, '/', 'GET', host), /^HTTP\/1\.1 200 /)
    })
  for (const host of [
    'bread.example',
    'localhost.bread.example',
    'localhost@bread.example',
    '10.0.0.7',
    'localhost:',
  ])
    it(`does not answer to ${host}, which somebody else may have named it`, async () => {
      const answer = await ask(server.port, '/', 'GET', host)
      assert.match(answer, /^HTTP\/1\.1 421 /)
      assert.doesNotMatch(answer, /bread<\/p>/)
    })

  it('follows no link out of its folder, and one within it', async () => {
    symlinkSync(join(folder, 'secret.txt'), join(site, 'out.txt'))
    symlinkSync(folder, join(site, 'up'))
    symlinkSync(join(site, 'index.html'), join(site, 'in.html'))
    for (const path of ['/out.txt', '/up/secret.txt', '/up/site/../secret.txt']) {
      const answer = await ask(server.port, path)
      assert.match(answer, /^HTTP\/1\.1 404 /)
      assert.doesNotMatch(answer, /secret/)
    }
    assert.match(await ask(server.port, '/in.html'), /<p>bread<\/p>/)
  })

  it('goes on when a download is broken off, with no file left open, and when a file vanishes', async () => {
    const large = join(site, 'large.txt')
    writeFileSync(large, 'x'.repeat(20_000_000))
    const openFiles = () => (process.platform === 'linux' ? readdirSync('/proc/self/fd').length : 0) // elsewhere nobody says
    const before = openFiles()
    for (let i = 0; i < 20; i++)
      await new Promise<void>(resolve => {
        const socket = connect(server.port, '127.0.0.1', () =>
          socket.write('GET /large.txt HTTP/1.1\r\nHost: localhost\r\n\r\n'),
        )
        socket.once('data', () => socket.destroy())
        socket.on('close', () => resolve())
      })
    const under = ask(server.port, '/large.txt')
    rmSync(large)
    await under
    assert.match(await ask(server.port, '/large.txt'), /^HTTP\/1\.1 404 /)
    assert.match(await ask(server.port, '/'), /<p>bread<\/p>/)
    for (let turns = 0; turns < 100_000 && openFiles() > before + 2; turns++) await new Promise(setImmediate)
    assert.ok(openFiles() <= before + 2)
  })

  it('moves to the next port when one is busy', async () => {
    const second = await serve(site, server.port)
    assert.ok(second.port > server.port)
    second.close()
  })
})

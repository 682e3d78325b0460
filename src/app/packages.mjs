/**
 * Runs before start, build, test and bench: puts the packages of package-lock.json in place when they are
 * missing or of other versions. Imports nothing but Node's own modules.
 */
import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'

/** @typedef {{ version?: string, optional?: boolean, resolved?: string }} Installed */

/**
 * @param {string} path of a package lock
 * @returns {Record<string, Installed>}
 */
function packagesOf(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8')).packages ?? {}
  } catch {
    return {}
  }
}

/** Optional packages are those of other operating systems. */
function inPlace() {
  const there = packagesOf('node_modules/.package-lock.json')
  return Object.entries(packagesOf('package-lock.json')).every(
    ([path, { version, optional }]) => path === '' || optional || there[path]?.version === version,
  )
}

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Tarebook needs Node 20.19 or newer; this is ${process.versions.node}.`)
  process.exit(1)
}
if (!inPlace()) {
  console.log('Putting the packages in place, once.')
  const argv = ['ci', '--include=dev', '--no-audit', '--no-fund']
  const npm = process.env.npm_execpath
  const { status } = npm
    ? spawnSync(process.execPath, [npm, ...argv], { stdio: 'inherit' })
    : spawnSync('npm', argv, { stdio: 'inherit', shell: process.platform === 'win32' })
  if (status !== 0) {
    console.error('The packages could not be put in place: npm says why above.')
    process.exit(1)
  }
}

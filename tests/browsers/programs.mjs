/** Where programs lie. */
import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

/**
 * The first of some programs that is there.
 * @param {{ linux: string[], darwin?: string[], win32?: string[] }} places by system: names on the path; whole paths; paths
 *   in the folders of programs
 * @returns {string | undefined}
 */
export function programIn({ linux, darwin = [], win32 = [] }) {
  /** @type {string[]} */
  let places
  if (process.platform === 'darwin') places = darwin
  else if (process.platform === 'win32') {
    const folders = ['ProgramFiles', 'ProgramFiles(x86)', 'LocalAppData'].map(name => process.env[name])
    places = folders.flatMap(folder => (folder ? win32.map(p => join(folder, p)) : []))
  } else {
    const folders = [...(process.env.PATH ?? '').split(delimiter), '/usr/bin', '/snap/bin']
    places = linux.flatMap(name => folders.map(folder => join(folder, name)))
  }
  return places.find(place => existsSync(place))
}

import assert from 'node:assert/strict'
import { spawn } from 'node:child_process'

/** What a program that prints said: a line of JSON each. */
export async function printedBy<Printed>(program: string): Promise<readonly Printed[]> {
  const said: string[] = []
  const wrong: string[] = []
  const running = spawn(process.execPath, [program])
  running.stdout.on('data', words => said.push(String(words)))
  running.stderr.on('data', words => wrong.push(String(words)))
  const code = await new Promise(resolve => running.on('close', resolve))
  assert.equal(code, 0, wrong.join(''))
  const lines = said.join('').split('\n')
  return lines.filter(line => line.startsWith('{')).map(line => JSON.parse(line) as Printed)
}

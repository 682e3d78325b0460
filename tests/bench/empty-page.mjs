/** The least that a Lit page can be: what the app's own times are held against. */
import { mkdir, writeFile } from 'node:fs/promises'
import { buildSite } from '../../src/app/build.mjs'

const html = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>Empty</title>
<link rel="stylesheet" href="styles.css">
<script type="module" src="main.ts"></script>
</head>
<body><bench-empty></bench-empty></body>
</html>
`

const script = `import { html, LitElement } from 'lit'

class BenchEmpty extends LitElement {
  static override properties = { entered: { state: true } }
  declare entered: number
  constructor() {
    super()
    this.entered = 0
  }
  override render() {
    return html\`<input @keydown=\${this.#key}><p>\${this.entered}</p>\`
  }
  #key = (event: KeyboardEvent) => {
    if (event.key === 'Enter') this.entered += 1
  }
}
customElements.define('bench-empty', BenchEmpty)
`

/**
 * @param {string} folder to write its source and its build into
 * @returns {Promise<string>} the folder of the built page
 */
export async function buildEmptyPage(folder) {
  const source = `${folder}/empty-source`
  await mkdir(source, { recursive: true })
  await writeFile(`${source}/index.html`, html)
  await writeFile(`${source}/main.ts`, script)
  await writeFile(`${source}/styles.css`, 'body { margin: 0 }\n')
  const { outdir } = await buildSite({ source, outdir: `${folder}/empty` })
  return outdir
}

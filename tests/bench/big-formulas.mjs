/**
 * A formula file of so many lines: a levain, soakers of ten lines, and a final dough that takes them all
 * and has the rest of the lines itself.
 * @param {string} name
 * @param {number} lines
 */
export function formulaFile(name, lines) {
  /** @type {[stage: string, ingredient: string, amount: string][]} */
  const rows = [
    ['Levain', 'Ripe starter', '20%'],
    ['Levain', 'Bread flour', '100%'],
    ['Levain', 'Water', '80%'],
  ]
  const soakers = Math.floor(lines / 50)
  for (let soaker = 1; soaker <= soakers; soaker += 1) {
    rows.push([`Soaker ${soaker}`, 'Water', '120 g'])
    for (let line = 2; line <= 10; line += 1)
      rows.push([`Soaker ${soaker}`, `Seed ${soaker}-${line}`, `${line} g`])
  }
  rows.push(['Final dough', 'Bread flour', '80%'], ['Final dough', 'Wholemeal spelt', '20%'])
  rows.push(
    ['Final dough', 'Water', '69%'],
    ['Final dough', 'Salt', '2.1%'],
    ['Final dough', 'Levain', '21%'],
  )
  for (let soaker = 1; soaker <= soakers; soaker += 1) rows.push(['Final dough', `Soaker ${soaker}`, '1%'])
  for (let line = 1; rows.length < lines; line += 1) rows.push(['Final dough', `Spice ${line}`, '0.1% + 1 g'])
  const head = 'formula,stage,ingredient,amount'
  return [head, ...rows.map(row => [name, ...row].join(','))].join('\r\n')
}

/** Comparison and rounding as mathjs's number build does them, without its formatting to text. */

const relativeTolerance = 1e-12 // mathjs's default relTol
const absoluteTolerance = 1e-15 // mathjs's default absTol

/** Equal up to rounding error, so that 0.1 + 0.2 is 0.3. */
export function nearly(a: number, b: number): boolean {
  if (a === b) return true
  if (!Number.isFinite(a) || !Number.isFinite(b)) return false
  const larger = Math.max(Math.abs(a), Math.abs(b))
  return Math.abs(a - b) <= Math.max(relativeTolerance * larger, absoluteTolerance)
}

/** Half away from zero on the decimal digits as written: 1.005 to 2 places is 1.01. Places: 0 to 15, else NaN. */
export function round(x: number, places: number): number {
  if (!Number.isInteger(places) || places < 0 || places > 15) return Number.NaN
  if (!Number.isFinite(x)) return x
  const power = 10 ** places
  const scaled = Math.abs(x) * power
  const whole = Math.floor(scaled)
  const excess = scaled - whole - 0.5
  // Close to a half the product's own rounding error could decide, so the digits have to.
  if (scaled < 2 ** 50 && Math.abs(excess) > scaled * 1e-15) {
    return (Math.sign(x) * (excess > 0 ? whole + 1 : whole)) / power
  }
  return roundDigits(x, places)
}

function roundDigits(x: number, places: number): number {
  const [mantissa, exponent] = Math.abs(x).toExponential().split('e') as [string, string]
  const digits = mantissa.replace('.', '')
  const kept = Number(exponent) + 1 + places // digits that stay
  if (kept >= digits.length) return x
  if (kept < 0) return 0
  const up = digits.charAt(kept) >= '5' ? 1n : 0n
  return Math.sign(x) * Number(`${BigInt(digits.slice(0, kept)) + up}e-${places}`)
}

export function ceil(x: number): number {
  const up = Math.ceil(x)
  const near = round(x, 0)
  return up !== near && nearly(x, near) && !nearly(x, up) ? near : up
}

export function floor(x: number): number {
  const down = Math.floor(x)
  const near = round(x, 0)
  return down !== near && nearly(x, near) && !nearly(x, down) ? near : down
}

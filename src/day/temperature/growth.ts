/*
 * How fast a sourdough yeast grows against temperature, and what follows for waits and for the ripening of builds. Only
 * ratios are used: it is growth in a laboratory medium, not gas in a dough, so every time from here is a range with
 * something to look for.
 */

const warmest = 35.99 // °C at which growth ends

/**
 * y(T), 1/h: the growth rate of a sourdough yeast at a temperature in °C; 0 from 35.99 °C up. The form is that of Gänzle,
 * Ehmann and Hammes (Applied and Environmental Microbiology 64:2616, 1998), with figures refitted to its published
 * pivots. Good from 14 to 30 °C; outside it is an extrapolation (`isExtrapolated`).
 */
export function growthRate(celsius: number): number {
  const below = warmest - celsius
  return below > 0 ? 0.01251 * below ** 2.976 * Math.exp(-0.3352 * below) : 0
}

/** Whether a temperature in °C lies outside of what the growth rate was measured for. */
export const isExtrapolated = (celsius: number): boolean => celsius < 14 || celsius > 30

/** How many times as long a wait written for `written` °C takes at `real` °C; Infinity where nothing grows. */
export const timeFactor = (written: number, real: number): number =>
  written === real ? 1 : growthRate(written) / growthRate(real)

const usualKitchen = 22 // °C of the published ripening times
const hoursOfDilution = (dilution: number): number => 5.8 * Math.log(dilution) - 1.9

/**
 * Hours until a build is ripe. `dilution` is (seed + flour + water) ÷ seed by weight; `speed` is this levain's own
 * factor, from a step's time or from bakes: 1 where nothing is known (then ± 30 %). Fitted to published ranges at 22 °C:
 * 1:1:1 3–6 h, 1:2:2 6–8 h, 1:5:5 10–14 h. 0 for hardly any dilution, Infinity where nothing grows.
 */
export const ripeningHours = (dilution: number, celsius: number, speed = 1): number =>
  speed * Math.max(0, hoursOfDilution(dilution)) * timeFactor(usualKitchen, celsius)

/** The dilution with which a build is ripe after so many hours at a temperature in °C: `ripeningHours` turned round. */
export const dilutionFor = (hours: number, celsius: number, speed = 1): number =>
  Math.exp((hours / (speed * timeFactor(usualKitchen, celsius)) + 1.9) / 5.8)

/** A levain's own speed: it was ripe after `hours` at a temperature in °C with this dilution. */
export const speedOf = (hours: number, dilution: number, celsius: number): number =>
  hours / ripeningHours(dilution, celsius)

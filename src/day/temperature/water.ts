/** Something that goes into the dough, with how warm it is and how much heat it holds. */
export interface HeatPart {
  readonly grams: number
  readonly celsius: number
  readonly heat: number // specific heat, kJ/(kg·K)
}

/** Specific heats in kJ/(kg·K): Geankoplis, Transport Processes and Unit Operations, Appendix A.4; flour there 1.80–1.88. */
export const specificHeat = {
  water: 4.185,
  flour: 1.8,
  salt: 0.84,
  milk: 3.85,
  egg: 3.18,
  butter: 2.3,
  oil: 2.01,
  ice: 1.958,
} as const

/** Heat that ice takes up in melting, kJ/kg. */
const heatOfMelting = 334

/**
 * How warm the water has to be, °C, by heat balance: Σ m·c·(mixed − T) = 0 over all parts and the water, where the dough
 * is mixed at what is wanted of it less the rise that mixing makes. `water` in grams, above 0; `wanted` and `rise` in °C.
 */
export function waterTemperature(
  parts: readonly HeatPart[],
  water: number,
  wanted: number,
  rise: number,
): number {
  const mixed = wanted - rise
  const missing = parts.reduce((sum, part) => sum + part.grams * part.heat * (mixed - part.celsius), 0)
  return mixed + missing / (water * specificHeat.water)
}

/** How warm the dough will be, °C, with water that was measured: `waterTemperature` turned round. */
export function doughTemperature(
  parts: readonly HeatPart[],
  water: number,
  waterCelsius: number,
  rise: number,
): number {
  const all = [...parts, { grams: water, celsius: waterCelsius, heat: specificHeat.water }]
  const held = all.reduce((sum, part) => sum + part.grams * part.heat, 0)
  return all.reduce((sum, part) => sum + part.grams * part.heat * part.celsius, 0) / held + rise
}

/**
 * How warm the water has to be, °C, by the bakery rule: n × wanted less the factors (room, flour, and a preferment where
 * there is one) less friction, where n counts the factors and the water. `friction` is n times the rise that mixing makes.
 */
export const waterByFactors = (wanted: number, factors: readonly number[], friction: number): number =>
  (factors.length + 1) * wanted - factors.reduce((sum, factor) => sum + factor, 0) - friction

/**
 * The part of the water to be put in as ice where tap water is too warm: W·(tap − wanted) ÷ (tap + 80), all °C, grams;
 * ice at 0 °C. No ice where the tap is cold enough. `ice + water` is the water asked for, and never more ice than that.
 */
export function iceFor(water: number, tap: number, wanted: number): { ice: number; water: number } {
  const ice = wanted < tap ? Math.min(water, (water * (tap - wanted)) / (tap + 80)) : 0
  return { ice, water: water - ice }
}

/** The same by heat balance for ice at the freezer's own temperature, °C at or below 0. */
export function iceFrom(
  freezer: number,
  water: number,
  tap: number,
  wanted: number,
): { ice: number; water: number } {
  if (wanted >= tap) return { ice: 0, water }
  const takenUp = specificHeat.ice * -freezer + heatOfMelting + specificHeat.water * wanted // by a gram of ice
  const givenUp = specificHeat.water * (tap - wanted) // by a gram of water
  const ice = Math.min(water, (water * givenUp) / (takenUp + givenUp))
  return { ice, water: water - ice }
}

import { cardinalAt } from './cardinals.js'
import { set, typedAboutWords } from './number-words.js'
import type { Lexicon } from './terms.js'
import { knownUnits, type UnitWord, wordsOf } from './unit-words.js'

/** Measures of which nobody knows what they weigh. */
const unknown =
  'recipe|recipes|recette|rezept|quartern|handful|handfuls|poignee|poignees|knob|knobs|noix de|noisette de|sachet|sachets|packet|packets|pack|packs|package|packages|pkg|pkgs|pkt|pkts|envelope|envelopes|enveloppe|enveloppes|paquet|paquets|tin|tins|can|cans|jar|jars|bag|bags|box|boxes|bottle|bottles|boite|boites|pot|pots|bouteille|bouteilles|brique|briques|cube|cubes|wurfel|packchen|paeckchen|packung|packungen|pckg|pck|beutel|tute|handvoll|becher|dose|dosen|glas|flasche|flaschen|bund|zweig|zweige|scheibe|scheiben|tropfen|schuss|spritzer|block|blocks|verre|verres|glass|glasses|glassful|carton|cartons|tub|tubs|tube|tubes|pouch|pouches|punnet|barquette|barquettes|mugful|bowlful|fistful|fistfuls|capful|capfuls|jugful|ladleful|bowl|bowls|bol|bols|mug|mugs|tablette|tablettes|bar|bars|ladle|ladles|louche|louches|dash|dashes|trait|traits|splash|splashes|filet|filets|drizzle|glug|glugs|drop|drops|goutte|gouttes|sprinkle|sprinkling|pod|pods|pointe de|pointes de|gill|gills|cake of|cakes of|teacup|teacups|tea-cup|tea-cups|teacupful|tea-cupful|coffeecup|coffee-cup|coffee-cups|coffee-cupful|wineglass|wineglassful|bunch|bunches|bouquet|bouquets|sprig|sprigs|brin|brins|branche|branches|stalk|stalks|leaf|leaves|feuille|feuilles|slice|slices|tranche|tranches|spoon|spoons|spoonful|spoonfuls|cuillere|cuilleres|scoop|scoops|smear|lump|lumps|part|parts|portion of|volume|volumes|strip|strips|zeste|soupcon|peu|peu de|few|little|grating|gratings|twist|twists|shake|shakes|squeeze|squirt|dollop|dollops|nob|nut of|thumb of|scraping|trickle|slug|spray|turn of|tour de moulin|lichette|larme|rasade|louchee'
const timesAndDegrees =
  'minute|minutes|min|mins|mn|minuten|second|seconds|sec|secs|seconde|secondes|sekunde|sekunden|hour|hours|hr|hrs|h|heure|heures|std|stunde|stunden|uhr|day|days|jour|jours|tag|tage|tagen|week|weeks|semaine|semaines|woche|wochen|month|months|mois|night|nights|nuit|nuits|nacht|degree|degrees|degre|degres|grad|deg|celsius|fahrenheit|f|degrees c|degrees f'
const notAmounts =
  'cm|mm|inch|inches|in|metre|metres|pouce|pouces|loaf|loaves|pain|pains|baguette|baguettes|bun|buns|roll|rolls|ball|balls|boule|boules|paton|patons|brot|brote|brotchen|laib|laibe|portion|portions|portionen|serving|servings|people|persons|personne|personnes|personen|convives|time|times|fois|mal|fold|folds|rabat|rabats|turn|turns|tour|tours|step|steps|etape|etapes|stage|stages|part|batch|batches|tray|trays|tins of dough|equal|kcal|kj|calories|rpm|watt|watts|x|pm|am|oclock|st|nd|rd|th|er|ere|e|eme|nde|strips of dough|more|others|autres|%hydration|ingredient|ingredients|zutaten'

/** What shops of most countries sell yeast in: a packet of dry, a cube of fresh. */
const packets = [
  [/^(?:pack|pkg|pkt|pck|sachet|envelope|paquet|beutel)/, 7, /fresh|fra[iî]che|frisch|chimique/i],
  [/^(?:wurfel|cube)/, 42, /dry|dried|s[eè]che|trocken|instant/i],
] as const

/** Grams in one of an unknown measure of something, where that is sold so; undefined of all but yeast. */
export const packetGrams = (measure: string, name: string): number | undefined =>
  /yeast|levure|hefe/i.test(name)
    ? packets.find(([word, , not]) => word.test(measure) && !not.test(name))?.[1]
    : undefined

/** Measures that need no `of` to stand without a number: `handful seeds`. */
export const loneMeasures: ReadonlySet<string> = new Set(
  'handful knob dash splash drizzle glug poignee bunch sprinkle sprinkling'.split(' '),
)

/** What words after a number can mean in a recipe or a table: units, unknown measures, and what is no amount at all. */
export const kitchenUnits: ReadonlyMap<string, UnitWord> = new Map([
  ...wordsOf(notAmounts, (): UnitWord => ({ kind: 'not an amount' })),
  ...wordsOf(timesAndDegrees, (): UnitWord => ({ kind: 'not an amount', isWhen: true })),
  ...wordsOf(unknown, (word): UnitWord => ({ kind: 'unknown', word })),
  ...knownUnits,
  ['k', { kind: 'unit', unit: 'kg' }],
])

/** Words that say how a number or a measure is meant: about, heaped, small; in a recipe they go into the note. */
export const aboutWords: ReadonlySet<string> = new Set([
  ...typedAboutWords,
  ...'c heaping levelled full bare nearly almost exactly precisely ras rase rases bombee bombees bonne bonnes bon bons grosse grosses gros petite petites petit petits grand grande grands grandes big little belle belles leger legere heavy healthy hefty fat plump packed demi-sel pleine presque maximum minimum max knapp knappe knapper gut gute guter gestrichen gestrichene gestrichener gehauft gehaufte gehaufter kleine kleiner kleines grosser grosses leicht'.split(
    ' ',
  ),
])
/** Of these, those that stand behind a measure as well: `2 cuillères à soupe bombées`. */
export const measureWords = set(
  'heaped heaping level levelled leveled rounded packed scant ras rase rases bombe bombee bombees pleine pleines comble gestrichen gehauft',
)

/** Every word of the kitchen. */
export const kitchenLexicon: Lexicon = {
  units: kitchenUnits,
  about: aboutWords,
  behind: measureWords,
  pieceParts: set(
    'yolk yolks white whites blanc jaune zest zests rind juice peel pulp seeds jus zeste zestes ecorce pulpe graines schale saft abrieb',
  ),
  wholeAt: cardinalAt,
}

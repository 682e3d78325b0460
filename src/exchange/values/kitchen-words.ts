const wordsOf = (words: string): string[] => words.split(words.includes('|') ? '|' : ' ')

/** Words parted by spaces, or phrases parted by `|`, by what they say; lower case, without accents. */
const sets = <K extends string>(
  lists: Readonly<Record<K, string>>,
): Readonly<Record<K, ReadonlySet<string>>> => {
  const made = {} as Record<K, ReadonlySet<string>>
  for (const name of Object.keys(lists) as K[]) made[name] = new Set(wordsOf(lists[name]))
  return made
}

/** Words with what each of them says. */
const table = <V>(rows: readonly (readonly [words: string, of: V])[]): ReadonlyMap<string, V> =>
  new Map(rows.flatMap(([words, of]) => wordsOf(words).map(word => [word, of] as const)))

/** What the words of recipes say, in English and French and a little German. */
export const kitchen = sets({
  // Of a temperature: always into the note.
  temperatures:
    'lukewarm tepid warm hot cold cool chilled ice-cold iced icy boiling warmed cooled lauwarm warm kalt heiss kochend zimmerwarm tiede tiedes froid froide froids froides chaud chaude chauds chaudes bouillant bouillante fraiche-froide glacee glace room-temperature',
  // What is done to an ingredient first: into the note unless the larder's name has it.
  states:
    'overnight veille zested juiced freshly fresh-milled milled sifted sieved melted softened soft cut beaten whisked chopped cubed diced sliced grated crushed cracked toasted roasted soaked drained rinsed peeled mashed cooked cooled crumbled ground minced finely coarsely roughly thinly lightly torn halved pitted stoned shelled hulled strained packed filtered dechlorinated scalded ripe active mature bubbly fed refreshed raw stale dissolved diluted pressed squeezed juiced thawed defrosted shredded slivered blanched pureed boiled steamed unpeeled puffed pulped stewed leftover runny flaked denoyaute emince pele fouette dissous dissoute dilue effile presse delaye ecrase bouilli blanchi decortique bien tres fraichement moulu moulue tamise tamisee tamisees tamises fondu fondue mou ramolli ramollie pommade battu battus battue battues hache hachee hachees haches concasse concassee concassees concasses rape rapee rapees coupe coupee coupees coupes grille grillee grillees grilles torrefie torrefiees trempe trempees egoutte egouttes egouttees epluche epluchees rince filtree filtre mur mure actif active rafraichi cuit cuite cuits cuites emiettee emiette finement grossierement weich geschmolzen zerlassen gehackt gemahlen gerostet gerieben eingeweicht reif gesiebt fraiche frais liquide',
  // What kind of it: into the note only when the rest is a name in the larder.
  kinds:
    'organic stoneground stone-ground stone-milled local good quality best fine coarse large small medium big extra extra-large free-range unbleached bleached unrefined raw pure natural flaky table cold-pressed clear runny medium-sized bio biologique biologiques locale local fin fine fins gros grosse grosses moyen moyens moyenne petit petits petite de ble froment panifiable meule ecrasee pierre naturel naturelle',
  // How large those are that are counted.
  sizes: 'large medium small big extra-large',
  // What is no name without the stuff behind it.
  kindsOfStuff:
    'vegetable canola corn peanut grapeseed coconut avocado nut dark light white brown strong plain',
  // Words before a name that say nothing about it.
  fillers: 'of the some your our my and et du des les le la l d de de’ with plus the: each de‘',
  // From one of these on, a name is followed by a remark about it.
  noteStarts:
    'oder vom von aus nach minus less moins except sauf for at to from plus in until if such like or per as about with divided optional zum zur avec pour ou si facultatif facultative facultatifs facultatives optionnel dont selon soit au aux which that where when (about preferably ideally environ held',
  // The same, but a name may open with them: `mixed seeds`.
  noteParticiples: 'straight reserve reserved taken left used mixed melange melangee melanges',
  // Verbs of instructions, as they open a sentence.
  verbs:
    'mix combine stir knead add let leave bake preheat fold shape place put heat cover divide proof prove dissolve melt whisk pour sprinkle brush turn feed refresh bring sift transfer remove work incorporate roll stretch score slash preshape beat blend cream rub set keep allow make check repeat drain soak squeeze tip scatter dust line grease oil-the wrap chill refrigerate retard ferment autolyse flour-the lift slide load steam reduce spread cut scrape continue form pat press dip coat return build prepare mash boil simmer scald drop weigh toss store serve enjoy freeze fridge warm-the cool-the reserve start finish melanger melangez ajouter ajoutez petrir petrissez laisser laissez enfourner enfournez cuire cuisez prechauffer prechauffez verser versez faconner faconnez diviser divisez couvrir couvrez incorporer incorporez faire faites mettre mettez dissoudre dissolvez delayer delayez badigeonner badigeonnez deposer deposez bouler boulez rabattre rabattez fouetter fouettez chauffer chauffez fondre placer placez former formez retourner retournez grigner grignez servir servez reserver reservez fleurer fleurez huiler huilez remuer remuez travailler travaillez etaler etalez rouler roulez conserver conservez preparer preparez peser pesez sortir sortez lever degazer degazez tamiser tamisez rafraichir rafraichissez recouvrir recouvrez arroser arrosez parsemer parsemez porter portez terminer',
  // Words that may open an instruction before its verb, or a sentence about the bread.
  sentenceStarts:
    'in on the this these it its then next now once when while after before meanwhile finally first gently carefully slowly lightly with using if after at by as from to dans sur puis ensuite enfin apres avant quand lorsque pendant le la les ce cette il elle on avec une-fois au a des your you we i every during overnight tomorrow yesterday our my here there',
  // What an order of ingredients opens with: nothing of a name, and no instruction either.
  listStarts:
    'you need|you will need|you’ll need|take|use|it takes|il faut|il vous faut|il vous faudra|prenez|prendre|prevoir|prevoyez|comptez|ingredients|ingredients are|the ingredients are',
  // Rows of facts about the whole, with numbers that are not amounts of a line.
  factStarts:
    'summe|gesamt|gesamtmenge|somme|sous-total|batch for|serves|makes|make|yield|yields|total|totals|total flour|total dough|total weight|total water|dough weight|dough total|per piece|per loaf|per roll|per bun|per unit|par piece|par pain|par paton|weight per piece|weight per loaf|hydration|true hydration|hydratation|taux d hydratation|th|ta|rendement|quantite|pour|servings|portions|prep time|prep|preparation time|cook time|cooking time|bake time|baking time|baking|total time|time|temp|oven temp|bake temp|baking temp|temps|temps de cuisson|temps de preparation|temps de repos|cuisson|repos|duree|difficulty|difficulte|dough temperature|desired dough temperature|ddt|temperature|oven|four|gas mark|gas|thermostat|poids total|total pate|poids de pate|baker s percentage|pieces|nombre de pieces|bulk|bulk fermentation|proof|final proof|pointage|appret|rest|autolyse|baked weight|date|source|page|prefermented flour|inoculation|salt percentage|recipe yields|recipe makes|enough for|tin size|loaf tin|tin sizes|moule|level|niveau|cost|cout|preparation|equipment|tin|moule|overall hydration|total hydration|final hydration|hydratation totale|hydratation finale|hydratation globale|keeps|keeps for|se conserve|se garde|division|dividing|scaling|pesage|shaping|faconnage|detaillage|subject|sujet|author|auteur|category|categorie|keywords|mots cles|published|publie le|posted on|poste le|loss|loss in oven|loss in the oven|oven loss|baking loss|bake loss|perte|perte au four|perte a la cuisson',
  // How large it is, before the weight of all its flour or dough: `Base 25 kg de farine`.
  sizeStarts:
    'base|based on|on the base of|base de|sur la base de|sur une base de|batch|batch of|batch size|per batch|basis|formula on|formula for|formule pour',
  // What such a weight is of.
  ofSize: 'of de d flour farine flours dough pate total mehl teig la le the fini finished',
  // What somebody did who tells of it: `I used 100 g of sugar`, `j’ai mis`.
  tellers: 'i we j je on nous',
  told: 'used use added made put baked tried reduced replaced swapped substituted doubled halved followed had have ai avons a fais fait mets did',
  // Headings that name no stage.
  listHeadings:
    'ingredients|ingredient|the ingredients|les ingredients|formula|formule|recipe|recette|la recette|the recipe|ingredient list|liste des ingredients|zutaten|shopping list|quantities|quantites',
  methodHeadings:
    'method|the method|directions|instructions|steps|preparation|etapes|la preparation|procede|deroulement|realisation|process|procedure|baking|bake|to bake|cuisson|la methode|methode|zubereitung|how to|how to make it|what to do|schedule|timetable|marche a suivre|recette pas a pas|progression|assembly|make it',
  noteHeadings:
    'notes|note|baker s notes|baker’s notes|recipe notes|remarks|remarques|tips|tip|astuces|astuce|storage|conservation|variations|about|story|conseils|conseil|nutrition|allergens|allergenes|comments|comment|commentaires|commentaire|reviews|review|avis|questions|kommentare',
  // Over what is needed to work with.
  toolHeadings:
    'equipment|special equipment|equipment needed|equipment list|tools|tools needed|tools and equipment|utensils|kitchen tools|materiel|le materiel|materiel necessaire|ustensiles|les ustensiles|ustensiles necessaires|utensilien|zubehor|gerate',
  // Over that, or over the ingredients.
  needHeadings:
    'you need|you will need|you ll need|you’ll need|what you need|what you will need|what you ll need|what you’ll need|il faut|il vous faut|ce qu il faut|ce qu’il faut|ce qu il vous faut|ce qu’il vous faut',
  // The heads of a table's columns.
  columnHeads:
    'ingredient ingredients weight weights amount amounts quantity g gram grams percent percentage note notes unit units poids quantite pourcentage grammes baker s in all by total',
  // What may stand before a stage's name in a heading.
  headingLeads: 'for pour fur zum zur ingredients ingredient stage step part partie',
  // What is done with it, before its name: `Make the dough`.
  makes: 'make mix prepare build feed faire preparer melanger rafraichir',
  // Sorts of ingredients, as headings by themselves.
  sorts: 'dry wet liquid liquids trocken flussig secs seche liquides',
  // When it is made, or as the how many: `Day 2`, `The night before`.
  whens:
    'day days night evening morning afternoon noon before next same overnight am pm uhr monday tuesday wednesday thursday friday saturday sunday lundi mardi mercredi jeudi vendredi samedi dimanche montag dienstag mittwoch donnerstag freitag samstag sonntag first second third jour jours veille soir matin midi lendemain meme avant premier premiere deuxieme tag abend morgen vortag vortags vorabend vorabends am stage step part partie etape phase stufe schritt teil',
  // Stages that are counted: `Stage 1`.
  countedStages: 'stage stufe phase build',
  // What may stand before a stage’s name, or a place.
  beforeNames: 'the your our my le la les l du de d des of a an un une au den das ein eine',
  // Articles of what is made.
  indefinite: 'a an une un eine ein einen',
  // What stands between a stage and what it is made of.
  madeOf: 'with of from using avec de mit aus',
  // Articles of what is there.
  definite: 'the your our my this that these those du des le la les l votre notre ce cette',
  // Words before an amount that limit it, and parts of what is counted: they go into the note.
  leads:
    'evtl ggf eventuell eventuellement perhaps maybe yolk yolks white whites blanc blancs jaune jaunes at least most up to no more less than extra another optional au moins plus de jusqu a zest zests juice from peel rind pulp je and et jus zeste zestes ecorce of d l le la the finely grated',
  // What else an ingredient without an amount may be.
  asWished:
    'taste optional facultatif facultative gout needed required kneading necessaire besoin volonte choix',
  // What a fact of the whole goes on with, where no number follows at once.
  factGoesOn: 'about environ of one two de pour',
  // What a remark on the ingredient above opens with, on a row of its own.
  asides:
    'more if|more as|plus more|plus extra|plus un peu|plus some|or as needed|or more|ou plus|as needed|see note|see notes|voir note|at room temperature|a temperature ambiante|cut into|to yield|to make about|to give about|reserved|divided|drained|coupe en|coupee en|coupes en|coupees en|reserve|reservee|egoutte|egouttes',
  // Words of a line that takes a stage, that say nothing besides.
  whole:
    'all the of your my from above below tout toute le la l du de reste remaining whole entire total quantite quantity ce qui precede',
  // What an order to soak something opens with, and what of that is French.
  soaks: 'soak tremper trempez faire faites',
  soaksInFrench: 'tremper trempez faire faites',
  soaked: 'trempes trempees trempe trempee',
  // `all but 30 g`: what is left of it.
  but: 'but except minus less sauf moins',
  all: 'all tout toute tous toutes totalite integralite',
  // What a line calls a stage that stands before it.
  above: 'above ci-dessus dessus oben earlier precede',
  // What is descriptive about a per cent: `100 % hydration`, `12 % protein`.
  ofPercent:
    'hydration hydratation hydrated protein proteins proteine proteines fat cocoa cacao matiere mg extraction whole strength alcohol rye abv',
  // What a correction of the text opens with, before a colon.
  corrections: 'edit edited update updated correction erratum errata ps nb',
  // What may be meant, before its number: `may need 7`.
  perhaps: 'may might maybe perhaps possibly',
  // What a letter opens with.
  greetings: 'hi hello dear hey bonjour bonsoir salut cher chere coucou hallo liebe lieber',
  // What another choice opens with.
  ors: 'or ou oder',
  // What stands between two measures of one amount.
  amountJoins: 'or ou soit oder',
  // What says that an amount is of each, or of all.
  each: 'each je chacun chacune piece',
  total: 'total in all the . about au',
  // What a remark behind an amount in a parenthesis opens with.
  remarkStarts: 'at à without sans when once',
  // `en morceaux`, `en plusieurs fois`: how it is cut or given; `en poudre` is of the name.
  cutInto: 'plusieurs morceaux petits des cubes lamelles tranches rondelles quartiers fines',
  // What a name does not end with.
  nameEnds: 'de of et and du d with a x',
  // What is more of the ingredient before, and names none.
  more: 'more extra some besides additional again encore davantage then up to at most least',
  // What joins an amount to the one before it.
  joins: 'and et + & with avec plus puis then',
  // What dough lies in.
  vessels:
    'tin tins pan pans dish dishes mould moulds mold molds moule moules plat tray trays sheet sheets bowl bowls banneton bannetons basket baskets pot oven casserole form kastenform',
  // Besides those of remarks, words that end what a sentence says of an ingredient.
  clauseEnds:
    'and et then puis into onto in on dans sur to until jusqu with avec over through together using is are was were has have had will would should can could must matters goes go while so but mais every each chaque slowly gradually gently well again ensemble bien au aux alors',
  // `soaked in 50 ml rum`, `trempés dans 5 cl de rhum`.
  beforeStuff: 'in with into over dans avec de a',
})

/** Is a word of a set, whatever its ending in French and German: `trempés`, `weiche`. */
export const isOneOf = (words: ReadonlySet<string>, { key, low }: { key: string; low: string }): boolean =>
  words.has(key) ||
  words.has(low) ||
  // hand-hot, fresh-milled
  (key.includes('-') && words.has(key.slice(key.lastIndexOf('-') + 1))) ||
  ['s', 'es', 'e', 'er', 'en', 'em'].some(end => key.endsWith(end) && words.has(key.slice(0, -end.length)))

/** What is done with an ingredient that may not go into the dough. */
const useRows = [
  ['glaze glazing brush brushing dorer dorure badigeonner', 'glazing'],
  ['dust dusting flouring fleurer fleurage', 'dusting'],
  ['grease greasing oiling lining graisser huiler beurrer', 'greasing'],
  ['sprinkle sprinkling topping coat coating dip dipping parsemer saupoudrer', 'the top'],
  ['finish finishing garnish decorate decorating decorer decoration garnir finition', 'the finish'],
  ['serve serving spreading servir service', 'serving'],
  ['rolling shaping boiling', 'the work on it'],
] as const
/** Where it goes instead, behind `for` or `pour`. */
const placeRows = [
  ['tin tins pan dish mould moule moules plat', 'the tin'],
  ['tray trays plaque paper papier', 'the tray'],
  ['banneton bannetons basket peel bowl saladier', 'what the dough lies in'],
  ['surface worktop bench board plan travail', 'the bench'],
  ['top crust', 'the top'],
] as const

/** What an ingredient is for, in the words of the screen. */
export type Purpose = (typeof useRows | typeof placeRows)[number][1]
export const uses = table<Purpose>(useRows)
export const places = table<Purpose>(placeRows)

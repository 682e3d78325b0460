import type { Step } from '../../dough/document/formula.js'
import type { Span } from './lengths.js'
import { levelled, type Tongue } from './sentences.js'

/** What a word of a method is about. `minor` goes with what follows it; `aside` is about the bread, and nothing is done. */
export type ActionKind = Step['kind'] | 'minor' | 'aside'

/** Something that is done, by the words that say it. */
export interface Action {
  readonly key: string
  readonly kind: ActionKind
  readonly does: Readonly<Record<Tongue, string>>
  readonly ofDough?: true // done to a dough that is made, never to what goes into it
  readonly takes?: true // names what goes in
}

type Row = readonly [
  key: string,
  kind: ActionKind,
  english: string,
  french: string,
  words: string,
  more?: string,
]

// Words are alternatives of a pattern, lower case and without accents; what is longer stands first.
const rows: readonly Row[] = [
  [
    'aside',
    'aside',
    '',
    '',
    'serve[sd]?|enjoy|store|keeps?(?=\\s+(?:well|for|up))|slice\\s+(?:only|when|and\\s+serve)|freeze|servez|servir|deguste[rz]|conserve[rz]|se\\s+conserve|tranche[rz]|congele[rz]',
  ],
  ['autolyse', 'wait', 'Autolyse', 'Autolyse', 'autoly[sz]ed?|autolyse[rz]?', 'dough'],
  ['benchRest', 'wait', 'Bench rest', 'Détente', 'bench[-\\s]rest|detente|detendre', 'dough'],
  [
    'bulk',
    'wait',
    'Bulk',
    'Pointage',
    'bulk[-\\s](?:ferment(?:ation|ing|ed)?|rise|proof|prove)|bulk|(?:first|1st)\\s+(?:rise|rising|fermentation|proof|prove)|pointage|pointer|premiere\\s+(?:fermentation|levee|pousse)',
    'dough',
  ],
  [
    'proof',
    'wait',
    'Proof',
    'Apprêt',
    '(?:final|second|last|2nd)\\s+(?:rise|rising|proof(?:ing)?|prov(?:e|ing)|fermentation)|proof(?:s|ing|ed)?|prov(?:e|es|ing)|appret|(?:deuxieme|seconde|derniere)\\s+(?:fermentation|levee|pousse)',
    'dough',
  ],
  [
    'retard',
    'wait',
    'Retard',
    'Froid',
    'retard(?:s|ing|ation)?|refrigerat(?:e|ing)|chill(?:ing)?|refrigere[rz]|blocage|cold[-\\s](?:proof|ferment(?:ation)?)',
  ],
  [
    'ripen',
    'wait',
    'Ripen',
    'Mûrir',
    'ripen(?:s|ing)?|matur(?:e(?=\\s+(?:for|\\d|over|until))|ing|er|ez|ation)|murir|fermenter\\s+le\\s+levain',
  ],
  ['soak', 'wait', 'Soak', 'Trempage', 'soak(?:ing|s)?|tremper|trempe[rz]|trempage'],
  [
    'coolDown',
    'wait',
    'Cool',
    'Refroidir',
    '(?:let|leave|allow)\\s+(?:(?:it|them|the\\s+\\w+)\\s+)?(?:to\\s+)?cool|cool(?:ing)?(?=\\s+(?:on|for|completely|down|at|fully|in|\\d|an?\\s+hour|one|two)|\\s*[,.:]|\\s*$)|refroidir|ressuage|ressuer',
  ],
  ['scald', 'hands', 'Scald', 'Ébouillanter', 'scald(?:ing)?|ebouillante[rz]'],
  [
    'feed',
    'hands',
    'Feed',
    'Rafraîchir',
    'feed(?:ing)?|refresh(?:ing)?|rafraichi(?:r|ssez|ssement)|nourri(?:r|ssez)',
  ],
  [
    'dissolve',
    'hands',
    'Dissolve',
    'Délayer',
    'dissolv(?:e|ing)|delaye[rz]|dissou(?:dre|s)|dissolvez',
    'takes',
  ],
  [
    'add',
    'hands',
    'Add',
    'Ajouter',
    '(?:mix|work|knead|fold|stir|squeeze|pour|rub|beat)(?:ing)?\\s+(?:it\\s+)?in(?!to\\b|\\s+(?:an?|half|three|four|two|one|thirds|(?:the|your)\\s+(?:bowl|mixer|machine|fridge|stand|oven|pan|tin))\\b)|add(?:ing)?|incorporat(?:e|ing)|ajoute[rz]|incorpore[rz]|additionne[rz]',
    'takes',
  ],
  [
    'pour',
    'hands',
    'Pour',
    'Verser',
    'pour(?:ing|(?=\\s+(?:the|in|over|your|hot|boiling|it|into|half|most|all|on|\\d)))|verse[rz]',
    'takes',
  ],
  ['firstMix', 'hands', 'Mix', 'Fraser', 'fras(?:e[rz]|age)', 'takes'],
  [
    'mix',
    'hands',
    'Mix',
    'Mélanger',
    'mix(?:ing)?|combin(?:e|ing)|stir(?:ring)?|whisk(?:ing)?|blend(?:ing)?|beat(?:ing)?|cream(?=\\s+(?:the|butter|together))|melange[rz]|(?:melange)(?=\\s+de)|remue[rz]|fouette[rz]|battre|battez',
    'takes',
  ],
  [
    'knead',
    'hands',
    'Knead',
    'Pétrir',
    'knead(?:ing)?|slap\\s+and\\s+fold|petri(?:r|ssez|ssage|n)|travaille[rz]',
    'dough',
  ],
  [
    'divide',
    'hands',
    'Divide',
    'Diviser',
    'divid(?:e|ing)|scal(?:e(?=\\s+(?:at|to|the|into|off)|d?\\s*\\d)|ing)|cut\\s+(?:the\\s+dough|it|off|out|into)|portion|divise[rz]|division|detaille[rz]|pese[rz](?=\\s+(?:des|les|\\d))',
    'dough',
  ],
  [
    'preshape',
    'hands',
    'Preshape',
    'Bouler',
    'pre-?\\s?shap(?:e|ing)|round(?=\\s+(?:up|the|them|each))|boule[rz]|boulage|prefaconn(?:er|ez|age)|preforme[rz]?',
    'dough',
  ],
  [
    'shape',
    'hands',
    'Shape',
    'Façonner',
    'shap(?:e|ing)|form(?=\\s+(?:into|a|the|it|them|\\d|each|round|loaves|balls))|roll(?:\\s+out|\\s+up|\\s+into)|mould(?=\\s+(?:into|the|it))|faconn(?:er|ez|age)|etale[rz]|abaisse[rz]|forme[rz](?=\\s+(?:une|des|les|la|le|\\d))|roule[rz]',
    'dough',
  ],
  [
    'score',
    'hands',
    'Score',
    'Grigner',
    'scor(?:e|ing)|slash(?:ing)?|grigne[rz]?|lame[rz]|incise[rz]|scarifie[rz]|entaille[rz]',
    'dough',
  ],
  [
    'knockBack',
    'hands',
    'Knock back',
    'Dégazer',
    '(?:knock|punch)(?:ing)?\\s+(?:it\\s+|the\\s+dough\\s+)?(?:back|down)|degas|degaze[rz]',
    'dough',
  ],
  [
    'fold',
    'hands',
    'Fold',
    'Rabats',
    '(?:stretch(?:es)?|coil)[-\\s]+(?:(?:and|&)[-\\s]+)?folds?(?:ing)?|stretch(?:es)?\\s+and\\s+folds?|fold(?:s|ing)?|laminat(?:e|ing|ion)|rabat(?:s|tre|tez)?|replie[rz]|plie[rz]|plis|tours(?=\\s+(?:toutes|tous|espaces))|repeat|repete[rz]?',
    'dough',
  ],
  ['dimple', 'hands', 'Dimple', 'Presser', 'dimpl(?:e|ing)', 'dough'],
  ['boil', 'hands', 'Boil', 'Pocher', 'boil(?=\\s+(?:the|them|each|for|\\d))|poach|poche[rz]'],
  [
    'toast',
    'hands',
    'Toast',
    'Torréfier',
    'toast(?=\\s+(?:the|all|them|seeds))|torrefie[rz]|grille[rz](?=\\s+(?:les|des))',
  ],
  [
    'preheat',
    'hands',
    'Preheat',
    'Préchauffer',
    'pre-?\\s?heat(?:ing)?|heat(?:ing)?\\s+(?:up\\s+)?(?:the|an|your)\\s+oven|(?:set|turn\\s+on|switch\\s+on)\\s+the\\s+oven|prechauff(?:er|ez|age)|chauffe[rz]\\s+(?:le|votre)\\s+four|allume[rz]\\s+le\\s+four',
    'dough',
  ],
  [
    'bake',
    'bake',
    'Bake',
    'Cuire',
    'bak(?:e|ing)(?!\\s+(?:sheets?|trays?|stones?|steels?|paper|parchment|powder|soda|tins?|day|dish|pan)\\b)|cook(?:ing)?(?=\\s+(?:for|at|in|\\d|the\\s+bread))|(?:faites?|faire|laisse[rz])\\s+cuire|cuire|cuisez|cuisson|poursui(?:vre|vez)\\s+(?:la\\s+cuisson)?',
    'dough',
  ],
  [
    'load',
    'hands',
    'Load',
    'Enfourner',
    'load(?:ing)?(?=\\s+(?:the|it|them|onto|into))|slide(?=\\s+(?:the|it|them|onto|into))|enfourn(?:er|ez|ement)',
    'dough',
  ],
  [
    'rise',
    'wait',
    'Rise',
    'Levée',
    'ris(?:e|es|ing)(?!\\s+oven)|leve[er](?=\\s|[.,;:]|$)|lever|pousse[rz]?(?=\\s|[.,;:]|$)|double(?=\\s+in)|doubler',
  ],
  ['ferment', 'wait', 'Ferment', 'Fermenter', 'ferment(?:s|ing|ation|e[rz])?'],
  [
    'rest',
    'wait',
    'Rest',
    'Repos',
    'rest(?:s|ing)?(?!\\s+of\\b)|relax|stand(?:ing)?|sit(?=\\s|[.,;:]|$)|wait|repos(?:er|ez)?|patiente[rz]|attend(?:re|ez)|(?:let|leave)\\s+(?:it|them|the\\s+(?:dough|mixture|loaf|loaves|levain|poolish|sponge|biga|starter|soaker|bread))(?=\\s+(?:for|covered|overnight|at|on|in|to\\s+(?:itself|double)|\\d|about|alone))|leave(?=\\s+(?:overnight|covered|for|at|in|\\d|an?\\s|one|two|three|half))',
  ],
  ['cover', 'minor', 'Cover', 'Couvrir', 'cover|recouvr(?:ir|ez)|couvr(?:ir|ez)|filme[rz]'],
  [
    'uncover',
    'minor',
    'Uncover',
    'Découvrir',
    'uncover|(?:remove|take\\s+off|lift(?:\\s+off)?)\\s+(?:the\\s+)?(?:lid|cover|foil)|(?:retire[rz]|enleve[rz]|ote[rz])\\s+le\\s+couvercle|decouvr(?:ir|ez)',
  ],
  [
    'lower',
    'minor',
    'Lower the heat',
    'Baisser le four',
    'reduc(?:e|ing)|lower(?:ing)?(?=\\s+(?:the|to|heat|it|temp))|(?:turn|bring)(?:ing)?\\s+(?:the\\s+(?:oven|heat|temperature)\\s+|it\\s+)?down|drop(?=\\s+(?:the|to))|baisse[rz]|redui(?:re|sez)|diminue[rz]',
  ],
  [
    'place',
    'minor',
    'Place',
    'Placer',
    'place(?!\\s*(?:[,.;(]|$|for\\b|at\\b|until\\b))|put|transfer|set(?!\\s+of\\b|\\s+the\\s+oven)|turn\\s+(?:out|on\\s*to)|tip|move|lift|bring|return|take|remove|place[rz]|mettre|mettez|depose[rz]|dispose[rz]|transfere[rz]|transvase[rz]|renverse[rz]|retire[rz]|sort(?:ir|ez)',
  ],
  [
    'prepare',
    'minor',
    'Prepare',
    'Préparer',
    'line|warm(?=\\s+(?:the|up))|heat(?=\\s+(?:the|up))|chauffe[rz]|grease|dust|oil(?=\\s+(?:the|a|your))|butter(?=\\s+(?:the|a|your|two|\\d))|flour(?=\\s+(?:the|a|your|lightly))|sprinkle|brush|spray|steam|mist|flip|flatten|gather|scrape|press|pat|cut|drain|rinse|melt|squeeze|prepare|make|build|start|fill|arrange|weigh|give|do|perform|let|leave|allow|continue|fleure[rz]|huile[rz]|beurre[rz]|graisse[rz]|badigeonne[rz]|parseme[rz]|saupoudre[rz]|dore[rz]|retourne[rz]|aplati(?:r|ssez)|prepare[rz]|egoutte[rz]|rince[rz]|fai(?:re|tes)|donne[rz]|laisse[rz]|realise[rz]|coupe[rz]|garni(?:r|ssez)|arrose[rz]|humidifie[rz]|formez?|continue[rz]|prolonge[rz]|monte[rz]|reserve[rz]',
  ],
]

const actions: readonly Action[] = rows.map(([key, kind, english, french, , more]) => ({
  key,
  kind,
  does: { english, french },
  ...(more === 'dough' && { ofDough: true as const }),
  ...(more === 'takes' && { takes: true as const }),
}))
const pattern = new RegExp(
  rows.map(([key, , , , words]) => String.raw`(?<${key}>(?<![\p{L}-])(?:${words})(?!\p{L}))`).join('|'),
  'gu',
)

/** An action where a sentence says it. `isOrder`: as something to do, and not only spoken of (`before baking`). */
export interface SaidAction extends Span {
  readonly action: Action
  readonly word: string
  readonly isOrder: boolean
}

const ofThing =
  /(?:^|[\s(])(?:before|after|until|till|when|while|whilst|during|for|of|the|a|an|your|this|its|each|as|is|are|has|have|be|been|ready\s+to|time\s+to|order\s+to|avant(?:\s+(?:de|d'))?|apres|pendant|pour|sans|durant|jusqu'a|la|le|les|l'|du|de|d'|des|au|un|une|ce|cette|chaque)\s*(?:(?:second|first|final|last|deuxieme|seconde|premiere|derniere)\s*)?$/
const orders =
  /(?:^|[\s,;:(])(?:for\s+a|give\s+(?:it\s+|them\s+|the\s+dough\s+)?(?:a|an|another|two|three|four|\d))\s*$/

/** The actions that a sentence names, in their order. */
export function actionsIn(plain: string): SaidAction[] {
  return [...plain.matchAll(pattern)].map(match => {
    const key = Object.keys(match.groups!).find(name => match.groups![name] !== undefined)
    const action = actions.find(one => one.key === key)!
    const before = plain.slice(Math.max(0, match.index - 24), match.index)
    return {
      action,
      word: match[0],
      from: match.index,
      to: match.index + match[0].length,
      isOrder: !ofThing.test(before) || orders.test(before),
    }
  })
}

/** How what is called so usually passes: `Bulk` is waited for. By hand where its name says nothing. */
export const kindByName = (does: string): Step['kind'] => {
  const kind = actionsIn(levelled(does)).find(
    ({ action }) => action.kind !== 'minor' && action.kind !== 'aside',
  )?.action.kind
  return kind === 'wait' || kind === 'bake' ? kind : 'hands'
}

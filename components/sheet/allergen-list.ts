import { html } from 'lit'
import { allergenLists, type ListName } from '../../src/dough/larder/allergen-lists.js'
import { keepOwnChoice, ownChoice } from '../base/own-choices.js'
import { cautionsWords } from './cautions-words.js'

const key = 'allergen list'
const none = ''

// Names of places in the time zone database, which say where a clock stands; a language says that less often than not.
const european = /^Europe\/|^Atlantic\/(?:Azores|Canary|Madeira)$/
const canadian =
  /^Canada\/|^America\/(?:Toronto|Montreal|Vancouver|Edmonton|Winnipeg|Halifax|St_Johns|Regina|Moncton|Glace_Bay|Goose_Bay|Whitehorse|Yellowknife|Inuvik|Iqaluit|Rankin_Inlet|Resolute|Cambridge_Bay|Swift_Current|Thunder_Bay|Dawson|Creston|Fort_Nelson)/
const american =
  /^US\/|^Pacific\/Honolulu$|^America\/(?:New_York|Chicago|Denver|Phoenix|Los_Angeles|Anchorage|Detroit|Boise|Juneau|Sitka|Nome|Adak|Menominee|Indiana|Kentucky|North_Dakota|Puerto_Rico)/

/** The public list of the place a clock is set to, or else of the country that a language names. */
export function listOfPlace(timeZone: string, language: string): ListName {
  if (european.test(timeZone)) return 'eu'
  if (canadian.test(timeZone)) return 'canada'
  if (american.test(timeZone)) return 'us'
  const region = /-([a-z]{2})$/i.exec(language)?.[1]?.toLowerCase()
  return region === 'us' ? 'us' : region === 'ca' ? 'canada' : 'eu'
}

function chosen(): ListName | undefined {
  const choice = ownChoice(key, [none, ...allergenLists.map(({ list }) => list)], none)
  return choice === none ? undefined : choice
}

/** Whether a public list was ever chosen in this browser. */
export const isListChosen = (): boolean => chosen() !== undefined

/** The public list last chosen in this browser, or that of the place it is in. */
export const ownList = (language: string): ListName =>
  chosen() ?? listOfPlace(new Intl.DateTimeFormat().resolvedOptions().timeZone ?? '', language)

/** Heard by the window when another list was chosen, wherever that was. */
export const listChosen = 'tb-list-chosen'

/** The public lists to choose from; the browser keeps which, and everybody hears of it. */
export const listSelect = (list: ListName) => html`<select
  aria-label=${cautionsWords.publicLists}
  @change=${(event: Event) => {
    keepOwnChoice(key, (event.target as HTMLSelectElement).value)
    dispatchEvent(new Event(listChosen))
  }}
>
  ${allergenLists.map(l => html`<option value=${l.list} .selected=${l.list === list}>${l.name}</option>`)}
</select>`

import { BeingTyped } from '../../components/desk/being-typed.js'
import type { TypedText } from '../../src/storage/index.js'
import { deepEqual, equal, ok, waitUntil } from '../assert.js'
import { press, type } from '../keys.js'
import { itCase, itOnce } from '../once.js'
import { OpenApp } from './app.js'

/** What stands in a field and is not entered when the page goes away, in each kind of field. */

type Typed = HTMLInputElement | HTMLTextAreaElement
const final = 'Final dough'

describe('What was typed and not entered', () => {
  let app: OpenApp

  before(async () => {
    app = await OpenApp.open(`typed-and-left-${Date.now()}`)
  })
  after(() => app.close())

  const saved = () => waitUntil(() => app.maybe('.kept', /^Saved/), 'all is saved')
  const field = (name: string) => app.find(`[data-typed="${name}"]`) as Promise<Typed>

  /** How one gets into each field, and under what name its text is kept. */
  const fields: Readonly<Record<string, () => Promise<void>>> = {
    'a cell': async () => {
      await app.goTo(final, 'Water', /% of flour/)
      await press('Enter', 'Control+a')
    },
    'the note': async () => {
      await app.click('[data-typed=note]')
      await press('Control+a')
    },
    'the name': async () => {
      await app.click('[data-typed=name]')
      await press('Control+a')
    },
    'the name of the workbook': async () => {
      await app.click('[data-typed=workbook]')
      await press('Control+a')
    },
    'the weight of the flour': async () => {
      await app.click('[data-typed=flour]')
      await press('Control+a')
    },
    'the hold of a reading': async () => {
      await app.click('button[data-hold=salt]')
      await field('hold salt')
      await press('Control+a')
    },
    'the batch': async () => {
      await app.click('[data-opens=batch]')
      ;(await app.find('#make')).focus()
      await type('pieces')
      await app.click('[data-typed="batch count-0 pieces"]')
      await press('Control+a')
    },
    'a new step': async () => {
      ;(await app.find('tb-method')).scrollIntoView()
      await app.click('[data-typed^="step "][data-field=does][data-typed$="  does"]')
    },
    'a new jotting': async () => {
      ;(await app.find('tb-jottings')).scrollIntoView()
      await app.click('[data-typed="jotting  name"]')
    },
    'the name of a state to keep': async () => {
      await app.click('button', /^Kept states/)
      await app.click('[data-typed=state]')
      await press('Control+a')
    },
    'an own ingredient': async () => {
      await app.click('button', 'Larder')
      await app.click('button', 'New ingredient')
      await app.click('[data-typed^="ingredient note"]')
    },
    'a pasted text': async () => {
      await app.click('button', 'Bring in')
      await app.click('[data-typed=pasted]')
    },
  }

  for (const [at, [kind, goThere]] of Object.entries(fields).entries()) {
    itCase(at)(`stands in its field again: ${kind}`, async () => {
      await goThere()
      await waitUntil(() => (app.focused as Typed | null)?.dataset.typed, 'a field has the focus')
      const text = kind === 'the batch' || kind === 'a cell' ? '123' : 'half typed'
      await type(text)
      await waitUntil(() => (app.focused as Typed | null)?.value === text, `${text} is typed`)
      const name = app.focused!.dataset.typed!
      ok(name, 'the field has a name')
      await saved()
      await app.reload()
      const again = await field(name)
      await waitUntil(() => again.value === text, `${kind} has ${text} again, not ${again.value}`)
      const label = await app.find('p', /is back in its field/)
      equal(label.textContent!.split(';').length, 1, 'nothing is left of the field before')
      await waitUntil(() => app.focused === again, 'it has the focus')
      await press('Escape')
      if (app.maybe('button', 'Leave without it')) await app.click('button', 'Leave without it')
      await waitUntil(() => !again.isConnected || again.value !== text, 'it is let go')
    })
  }

  it('is entered like anything typed when its field is left', async () => {
    await app.click('[data-typed=note]')
    await press('Control+a')
    await type('A note of six words here')
    await app.reload()
    const note = await field('note')
    await waitUntil(() => app.focused === note, 'it has the focus')
    await app.goTo(final, 'Water', /% of flour/)
    await waitUntil(() => note.defaultValue === 'A note of six words here', 'it is the note')
    await app.find('button[aria-label^="Undo"]', /note/i)
    await app.reload()
    equal((await field('note')).value, 'A note of six words here')
  })
})

describe('What was typed and not entered in a day', () => {
  let app: OpenApp

  before(async () => {
    app = await OpenApp.open(`typed-in-a-day-${Date.now()}`)
  })
  after(() => app.close())

  const saved = () => waitUntil(() => app.maybe('.kept', /^Saved/), 'all is saved')
  const field = (label: RegExp) => app.find('input, textarea', label) as Promise<Typed>

  /** Types what cannot be taken, so that it stays in its field when the next one is gone to. */
  async function refused(label: RegExp, text: string): Promise<void> {
    await app.click('input', label)
    await press('Control+a')
    await type(text)
    await press('Enter')
    await waitUntil(() => app.focused?.getAttribute('aria-invalid') === 'true', `${text} is not taken`)
  }

  const typed: readonly (readonly [label: RegExp, text: string])[] = [
    [/^Temperature of the kitchen/, 'warm'],
    [/^Weight of a piece of Mill wheat/, 'heavy'],
    [/^Minutes Oven takes to heat up/, 'long'],
    [/^Bread flour in Final dough of Mill wheat/, 'cold'],
    [/^ripe at, time on the clock/, 'soon'],
    [/^Time of Bulk/, 'noon'],
  ]

  itOnce('stands in its fields again when the page is loaded anew, whatever they lie in', async () => {
    await app.click('nav button', 'Days')
    await app.click('button', 'New day')
    await app.click('button', 'Add a bread')
    await app.click('[role=menuitem]', /^Mill wheat/)
    await app.click('h3 button', /^Final dough of Mill wheat/)
    await app.click('h3 button', /^Levain of Mill wheat fed/)
    for (const [label, text] of typed.slice(0, -1)) await refused(label, text)
    await app.click('button.time', /^Bulk: /)
    await refused(...typed.at(-1)!)
    await saved()
    await app.reload()
    for (const [label, text] of typed) {
      const again = await field(label)
      await waitUntil(() => again.value === text, `${label} has ${text} again, not ${again.value}`)
    }
    await app.find('p', /is back in its field: /)
  })

  itOnce('is told on the sheet, with the way to it', async () => {
    await saved()
    app.close()
    app = await OpenApp.open(app.database)
    await app.find('p', /^Something you typed in \w+ oven is not entered yet/)
    await app.click('button', 'Go there')
    const kitchen = await field(typed[0]![0])
    await waitUntil(() => kitchen.value === 'warm', 'it is in its field')
    await waitUntil(() => app.maybe('input', /^Time of Bulk/), 'and the last of them as well')
  })
})

describe('What was left in a field that is typed in again before it is put back', () => {
  let page: HTMLElement
  let told: readonly TypedText[] = []

  beforeEach(() => {
    page = document.body.appendChild(document.createElement('main'))
    page.innerHTML = '<input data-typed="note" aria-label="Note"><input data-typed="name" aria-label="Name">'
  })
  afterEach(() => page.remove())

  const fields = () => [...page.querySelectorAll('input')]
  const values = () => fields().map(({ value }) => value)

  function begin(early: Iterable<EventTarget> = []): BeingTyped {
    const left = ['note', 'name'].map(field => ({ formula: 'f', field, text: `older ${field}` }))
    const of = { page, open: () => 'f', told: (texts: readonly TypedText[]) => (told = texts) }
    return new BeingTyped(of, left, early, new AbortController().signal)
  }

  /** What is typed in the note, and entered: what it is from then on. */
  async function enter(text: string): Promise<void> {
    const [note] = fields()
    note!.focus()
    await type(text)
    note!.defaultValue = text
  }

  it('is told once, and the field stays as it was typed', async () => {
    fields()[0]!.focus()
    await type('newer')
    const restored = await begin().restore()
    deepEqual(values(), ['newer', 'older name'])
    equal(restored.find(({ text }) => text.field === 'note')?.label, undefined)
    equal(restored.find(({ text }) => text.field === 'name')?.label, 'Name')
    deepEqual(told.map(({ text }) => text).toSorted(), ['newer', 'older name'])
  })

  it('does not come back over what was entered before anything heard of typing', async () => {
    await enter('newer')
    const restored = await begin(fields().slice(0, 1)).restore()
    deepEqual(values(), ['newer', 'older name'])
    equal(restored.find(({ text }) => text.field === 'note')?.label, undefined)
    deepEqual(
      told.map(({ text }) => text),
      ['older name'],
    )
  })

  it('does not come back over what was entered before it is put back', async () => {
    const typing = begin()
    await enter('newer')
    await typing.restore()
    deepEqual(values(), ['newer', 'older name'])
    deepEqual(
      told.map(({ text }) => text),
      ['older name'],
    )
  })
})

import assert from 'node:assert/strict'
import { describe, test } from 'node:test'
import Papa from 'papaparse'
import { numberStyleOf } from '../../components/base/numbers.js'
import { copied } from '../../components/grid/blocks/clipboard.js'
import { emptyTable } from '../../components/grid/table/table.js'
import { tableOf } from '../../components/grid/table/table-of.js'
import { fileName, forms } from '../../components/send-out/send-out-forms.js'
import { breadNames } from '../../src/day/out/bread-names.js'
import { writeCalendar } from '../../src/day/out/calendar.js'
import { openDay } from '../../src/day/plan/open-day.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { emptyWorkbook } from '../../src/dough/document/workbook.js'
import { larderWith } from '../../src/dough/larder/usual-larder.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { arrive } from '../../src/exchange/arriving/arrive.js'
import {
  formulaFromLink,
  linkOf,
  readFormulas,
  readWorkbookFile,
  recipeMarkup,
  recipeScript,
  sheetFigures,
  writeFormulas,
  writeHtml,
  writeMarkdown,
  writePlainText,
  writeWorkbookFile,
} from '../../src/exchange/index.js'
import { saturday } from '../day/notation.js'
import { readCalendar } from '../day/rfc5545.js'
import { hostileValues } from './hostile-values.js'

const calm = 'Rye meal'
const larder = larderWith([])

/** A formula with a text wherever there is one. */
const formulaWith = (text: string): Formula => ({
  id: 'formula',
  name: text,
  note: text,
  flourWeight: 1000,
  stages: [
    {
      id: 'levain',
      name: `${text} levain`,
      lines: [
        { id: 'l1', ingredient: text, amount: '100 g', note: text },
        { id: 'l2', ingredient: 'Bread flour', amount: '100 g', note: '' },
      ],
      method: [{ id: 'm1', does: text, kind: 'hands', text, note: text }],
    },
    {
      id: 'dough',
      name: 'Final dough',
      lines: [
        { id: 'l3', ingredient: 'Bread flour', amount: '1000 g', note: text },
        { id: 'l4', ingredient: text, amount: text, note: text },
        { id: 'l5', ingredient: `${text} levain`, amount: '100 g', note: '' },
      ],
      method: [
        { id: 'm2', does: 'Mix', kind: 'hands', text: '10 min', note: text },
        { id: 'm3', does: text, kind: 'bake', text: '40 min', note: text },
      ],
    },
  ],
  meanings: [{ ingredient: text, countsAs: { kind: 'flour' } }],
  keptSettings: [{ stage: text, setting: text, amount: text, note: text }],
  jottings: [{ id: 'j', name: text, text }],
})

/** Nothing changes a sheet here: those of a formula are one. */
const sheets = new WeakMap<Formula, FigureSheet>()
function sheetOf(formula: Formula): FigureSheet {
  const sheet = sheets.get(formula) ?? openSheet(formula, larder)
  sheets.set(formula, sheet)
  return sheet
}

/** The tags of a page, each as written; fails where a `<` begins none. */
function tagsOf(html: string): Set<string> {
  const tags = html.match(/<[^<>]*>/g) ?? []
  assert.doesNotMatch(html.replace(/<[^<>]*>/g, ''), /[<>]/)
  return new Set(tags)
}

/** Every cell of a text of cells, in whichever way an office program cuts it. */
const cellsOf = (text: string, delimiter: string): string[] =>
  Papa.parse<string[]>(text, { delimiter }).data.flatMap(cells =>
    cells.flatMap(cell => [cell, ...cell.split(/[;\t\r\n]/)]),
  )
const startsFormula = /^\s*[=+\-@＝＋－＠](?![\d.,]*$)/

/** The formula with a text that means nothing, as it leaves. */
const quiet = formulaWith(calm)
const calmTags = tagsOf(writeHtml(sheetOf(quiet)))
const outlineOf = (text: string) =>
  readCalendar(text).inside.map(({ name, properties }) => `${name} ${[...properties.keys()]}`)
function calendarOf(formula: Formula): readonly string[] {
  const day = saturday([[formula, 6]], { name: formula.name })
  const { plan } = openDay(day, [formula])
  return plan ? outlineOf(writeCalendar(plan, breadNames(day, [formula]), { now: new Date(0) })) : []
}
const calmEvents = new Set(calendarOf(quiet))

type Judge = (formula: Formula) => unknown

/** Each way out, with who judges what leaves by it. */
const waysOut: Readonly<Record<string, Judge>> = {
  'formula file': formula => {
    for (const cell of cellsOf(writeFormulas([formula], { larder, figures: sheetFigures(larder) }), ','))
      assert.doesNotMatch(cell, startsFormula)
  },
  'HTML page': formula => {
    for (const tag of tagsOf(writeHtml(sheetOf(formula)))) assert.ok(calmTags.has(tag), tag)
  },
  Markdown: formula => {
    const text = writeMarkdown(sheetOf(formula))
    const bare = text.replace(/\\[!-/:-@[-`{-~]/g, '')
    assert.doesNotMatch(bare, /[<>`[\]]|:\/\//)
    const heads = text.split('\n').filter(line => /^\s*#/.test(line))
    const own = heads.filter(head => !/^## (?:Readings|Settings|Allergens.*|Cautions.*)$/.test(head))
    assert.equal(own.length, 1 + formula.stages.length, own.join('\n'))
    assert.doesNotMatch(text, /^\s*(?:[-+]\s|---+\s*$|~~~|===)/m)
    for (const line of bare.split('\n').filter(l => l.startsWith('|'))) assert.match(line, / \|$/)
  },
  'recipe markup': formula => {
    const script = recipeScript(sheetOf(formula))
    const [, inside] = /^<script type="application\/ld\+json">([\s\S]*)<\/script>\s*$/.exec(script) ?? []
    assert.ok(inside)
    assert.doesNotMatch(inside, /[<>\u2028\u2029]/)
    assert.deepEqual(JSON.parse(inside), JSON.parse(JSON.stringify(recipeMarkup(sheetOf(formula)))))
  },
  calendar: formula => {
    assert.ok(calmEvents.size > 0)
    for (const event of calendarOf(formula)) assert.ok(calmEvents.has(event), event)
  },
  link: async formula => {
    const link = await linkOf(formula, 'http://localhost/', larder)
    if (typeof link !== 'string') return assert.equal(link.problem.code, 'linkTooLong')
    const [, fragment] = /^http:\/\/localhost\/(#formula=[\w-]+)$/.exec(link) ?? []
    const came = await formulaFromLink(fragment!)
    assert.ok('formula' in came)
    assert.equal(came.formula.stages[0]!.lines[0]!.note, formula.stages[0]!.lines[0]!.note)
  },
  'workbook file': formula => {
    const { workbook, problems } = readWorkbookFile(
      writeWorkbookFile({ ...emptyWorkbook, name: formula.name, formulas: [formula] }),
    )
    assert.deepEqual(problems, [])
    assert.deepEqual(workbook?.formulas, [formula])
    assert.equal(({} as { ran?: unknown }).ran, undefined)
  },
  'block of cells': formula => {
    const { rows } = tableOf(sheetOf(formula), numberStyleOf('en'), false, emptyTable)
    const { plain, html } = copied(
      { rows, columns: ['ingredient', 'percent', 'weight', 'note'] },
      numberStyleOf('en'),
    )
    for (const cell of cellsOf(plain, '\t')) assert.doesNotMatch(cell, startsFormula)
    const [, own = ''] = /data-tarebook-lines="([^"]*)"/.exec(html) ?? []
    for (const tag of tagsOf(html.replace(own, '')))
      assert.match(tag, /^<\/?(?:table|tr|td)>$|^<br>$|^<\/?tbody( data-tarebook-lines="")?>$/)
  },
  'name of a file': formula => {
    const name = fileName(formula.name, forms.csv, false)
    assert.match(name, /\.csv$/)
    assert.doesNotMatch(name, /[\p{Cc}\\/:*?"<>|\u200e\u200f\u202a-\u202e\u2066-\u2069]|^[. ]/u)
  },
}

function pageRead(text: string): readonly Formula[] {
  const { arrived } = arrive(text, { larder })
  return 'formulas' in arrived ? arrived.formulas : []
}

/** Each way in by which a text can bring such a value: what came of it leaves again. */
const waysIn: Readonly<Record<string, (value: string) => Promise<readonly Formula[]> | readonly Formula[]>> =
  {
    typing: value => [formulaWith(value)],
    'a formula file': value =>
      readFormulas(
        Papa.unparse([
          ['formula', 'stage', 'ingredient', 'amount', 'note', 'setting'],
          [value, value, value, '10 g', value, ''],
          [value, 'Final dough', 'Bread flour', '100%', value, ''],
          [value, 'Final dough', value, '3%', value, ''],
          [value, '', '', value, value, value],
        ]),
      ).formulas,
    'a table from elsewhere': value => {
      const { arrived } = arrive(
        Papa.unparse([
          ['Zutat', 'Gramm', 'Notiz'],
          ['Mehl', '1000', value],
          [value, '20', value],
          ['Wasser', '700', ''],
        ]),
        { larder },
      )
      return 'formulas' in arrived ? arrived.formulas : []
    },
    'a recipe in words': value => {
      const { arrived } = arrive(
        `${value}\n\n1000 g flour, ${value}\n20 g ${value}\n700 g water\n\nMix ${value}.`,
        {
          larder,
          as: 'recipe',
        },
      )
      return 'formulas' in arrived ? arrived.formulas : []
    },
    'an HTML page': value => pageRead(writeHtml(sheetOf(formulaWith(value)))),
    'a Markdown page': value => pageRead(writeMarkdown(sheetOf(formulaWith(value)))),
    'a plain text': value => pageRead(writePlainText(sheetOf(formulaWith(value)))),
    'a workbook file': value => {
      const file = { ...emptyWorkbook, name: value, formulas: [formulaWith(value)] }
      return readWorkbookFile(writeWorkbookFile(file)).workbook?.formulas ?? []
    },
    'a link': async value => {
      const link = await linkOf(formulaWith(value), 'http://localhost/', larder)
      if (typeof link !== 'string') return []
      const came = await formulaFromLink(new URL(link).hash)
      return 'formula' in came ? [came.formula] : []
    },
  }

/** The first formula like it but for its ids: several ways bring the same, which leaves as the first did. */
const firstLike = new Map<string, Formula>()
function likeFirst(formula: Formula): Formula {
  const text = JSON.stringify(formula, (key, value) => (key === 'id' ? '' : value))
  const first = firstLike.get(text) ?? formula
  firstLike.set(text, first)
  return first
}

describe('a text that means something elsewhere', () => {
  const judged = new Map(Object.keys(waysOut).map(wayOut => [wayOut, new Set<Formula>()]))
  for (const [wayIn, bring] of Object.entries(waysIn)) {
    let coming: Promise<(readonly [value: string, formula: Formula])[]> | undefined
    const broughtIn = async () => {
      const each = await Promise.all(
        hostileValues.map(async value =>
          (await bring(value)).map(formula => [value, likeFirst(formula)] as const),
        ),
      )
      return each.flat()
    }
    for (const [wayOut, judge] of Object.entries(waysOut))
      test(`brought by ${wayIn} leaves by ${wayOut} as a text and no more`, async () => {
        coming ??= broughtIn()
        const brought = await coming
        const before = judged.get(wayOut)!
        for (const [value, formula] of brought) {
          if (before.has(formula)) continue
          await assert.doesNotReject(async () => judge(formula), JSON.stringify(value).slice(0, 80))
          before.add(formula)
        }
        assert.ok(brought.length > hostileValues.length / 2, `${brought.length} came in`)
      })
  }
})

const block = /<(?:table|tr|ul|ol|li|p|br|div|section|article|h[1-6])\b[^<>]*>/i
const inline = /<\/?(?:a|b|i|u|em|strong|small|sup|sub|mark|abbr|font)\b[^<>]*>/gi
const rowTags = /<\/?(?:table|thead|tbody|tr|ul|ol|p|br|div|section|article)\b[^<>]*>|<\/(?:h[1-6]|li)>/gi

const named: Readonly<Record<string, string>> = Object.fromEntries(
  'nbsp: |amp:&|lt:<|gt:>|quot:"|apos:’|rsquo:’|lsquo:‘|ldquo:“|rdquo:”|ndash:–|mdash:—|hellip:…|bull:•|middot:·|times:×|deg:°|frac12:½|frac14:¼|frac34:¾|frac13:⅓|frac23:⅔|eacute:é|egrave:è|ecirc:ê|agrave:à|acirc:â|icirc:î|ocirc:ô|ucirc:û|ccedil:ç|oelig:œ|OElig:Œ|Eacute:É|auml:ä|ouml:ö|uuml:ü|Auml:Ä|Ouml:Ö|Uuml:Ü|szlig:ß'
    .split('|')
    .map(one => one.split(':')),
)

const entity = (whole: string, name: string): string => {
  const code = /^#x/i.test(name) ? Number.parseInt(name.slice(2), 16) : Number(name.slice(1))
  if (name.startsWith('#')) return code > 31 && code < 0x110000 ? String.fromCodePoint(code) : ' '
  return Object.hasOwn(named, name) ? named[name]! : whole
}

/** Without what of a source is no text. */
function withoutScripts(source: string): string {
  const parts: string[] = []
  let at = 0
  for (const { 1: tag, index } of source.matchAll(/<(script|style|head|svg)\b/gi)) {
    if (index < at) continue
    const close = source.indexOf(`</${tag}`, index)
    if (close < 0) break
    parts.push(source.slice(at, index))
    at = close
  }
  return [...parts, source.slice(at)].join('')
}

/**
 * The text of a page's source as it is seen: rows, items and paragraphs on rows of their own, cells parted by tabs, headings
 * marked. A text that holds no such tags stays as it is.
 */
export function textOfHtml(text: string): string {
  if (!block.test(text)) return text
  const isSource = /^\s*</.test(text)
  // between the tags of a source the ends of lines are blanks
  const plain = isSource ? withoutScripts(text).replace(/\s+/g, ' ') : text.replace(/[^\S\n\t]+/g, ' ')
  const seen = plain
    .replace(inline, '')
    .replace(/<t[dh]\b[^<>]*>/gi, '\t')
    .replace(/<h[1-6]\b[^<>]*>/gi, '\n\n## ')
    .replace(/<li\b[^<>]*>/gi, '\n- ')
    .replace(rowTags, '\n')
    .replace(/<\/?\p{L}[^<>]*>/gu, ' ')
    .replace(/&(#?\w{1,8});/g, entity)
    .replace(/ ?([\t\n]) ?/g, '$1')
    .replace(/\n\t/g, '\n')
  return isSource ? seen.replace(/\n{2,}(?!## )/g, '\n').replace(/^\n+/, '') : seen
}

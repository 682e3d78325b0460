// The characters from U+00A0 to U+00FF, in their order.
const latin =
  'nbsp iexcl cent pound curren yen brvbar sect uml copy ordf laquo not shy reg macr deg plusmn sup2 sup3 acute micro para middot cedil sup1 ordm raquo frac14 frac12 frac34 iquest Agrave Aacute Acirc Atilde Auml Aring AElig Ccedil Egrave Eacute Ecirc Euml Igrave Iacute Icirc Iuml ETH Ntilde Ograve Oacute Ocirc Otilde Ouml times Oslash Ugrave Uacute Ucirc Uuml Yacute THORN szlig agrave aacute acirc atilde auml aring aelig ccedil egrave eacute ecirc euml igrave iacute icirc iuml eth ntilde ograve oacute ocirc otilde ouml divide oslash ugrave uacute ucirc uuml yacute thorn yuml'
const others =
  'amp& lt< gt> quot" apos\' ndash– mdash— lsquo‘ rsquo’ sbquo‚ ldquo“ rdquo” bdquo„ hellip… bull• prime′ Prime″ minus− rarr→ larr← frac13⅓ frac23⅔ frac15⅕ frac18⅛ frac38⅜ frac58⅝ frac78⅞ half½ frasl⁄ oelig\u0153 OElig\u0152 euro€ trade™ asymp≈ le≤ ge≥ ensp\u2002 emsp\u2003 thinsp\u2009 check✓ Tab\t NewLine\n'

const signs: ReadonlyMap<string, string> = new Map([
  ...latin.split(' ').map((name, at) => [name, String.fromCharCode(0xa0 + at)] as const),
  ...others.split(' ').map(one => [one.slice(0, -1), one.slice(-1)] as const),
])

/** A text of HTML with its entities as the signs that they are; one that is not known stays as it is written. */
export const withSigns = (written: string): string =>
  written.replace(
    /&(?:([a-z][a-z\d]{1,11})|#(\d{1,7})|#x([\da-f]{1,6}));/gi,
    (whole, name?: string, code?: string, hex?: string) => {
      if (name !== undefined) return signs.get(name) ?? whole
      const point = code === undefined ? Number.parseInt(hex!, 16) : Number(code)
      return point > 0 && point <= 0x10ffff && !(point >= 0xd800 && point < 0xe000)
        ? String.fromCodePoint(point)
        : whole
    },
  )

/** Texts of 512 characters that are hard on parsers, and random ones made of what an expression is made of. */
export function hostileTexts(): string[] {
  const fill = (part: string) => part.repeat(Math.ceil(512 / part.length)).slice(0, 512)
  const nest = (open: string, inner: string, close: string, depth: number) =>
    (open.repeat(depth) + inner + close.repeat(depth)).slice(0, 512)
  const parts =
    '( ) ) 1 2.5 % , ; + - * / ^ ? : < == and or not min( max( round( a b flour ½ 1/2 cup g tbsp é Ж [ ] { } " `'
  const words = parts.split(' ')
  const texts = [
    ...[
      '-',
      '+',
      '(',
      ')',
      '%',
      '%(',
      '1%(',
      '8%*(',
      '2^',
      '1/',
      'a ',
      '1 ',
      '1 1/2 ',
      '½',
      '²',
      '−',
      '^-',
      '!',
    ],
    ...[
      'min(',
      'min(1,',
      'round(a,',
      'not ',
      'a?',
      'a?b:',
      'a<',
      'a==',
      'a and ',
      '1e',
      '1e9',
      '.',
      ',',
      ';',
      "'",
    ],
    ...[
      'a.',
      '"',
      '`',
      '[',
      '{',
      'a=',
      'a\n',
      '\t',
      '\u0000',
      '\u0301',
      'e\u0301',
      '\u{1F35E}',
      '\ud800',
      '日本 ',
    ],
    ...['1+', 'flour+', 'min(1,2)+', '(1+2)*', '1.5cup+', '99999999999'],
  ].map(fill)
  for (const depth of [10, 40, 47, 48, 49, 100, 250]) {
    texts.push(nest('(', '1', ')', depth), nest('%(', '1', ')', depth), nest('5%(', 'a', ')', depth))
    texts.push(nest('min(', '1', ')', depth), nest('a?(', '1', '):2', depth), nest('-(', '1', ')%', depth))
    texts.push(nest('2^(', '2', ')', depth), nest('not(', 'a', ')', depth), nest('(1+', '1', ')*2', depth))
  }
  let state = 1
  const upTo = (limit: number) => {
    state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff
    return Math.floor((state / 0x80000000) * limit)
  }
  for (let i = 0; i < 400; i++) {
    let text = ''
    while (text.length < 512) text += words[upTo(words.length)]! + (upTo(3) === 0 ? ' ' : '')
    texts.push(text.slice(0, 512))
  }
  return texts
}

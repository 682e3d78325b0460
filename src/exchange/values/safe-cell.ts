/**
 * Office programs run a cell as a formula when it starts with = + - @ or their full-width twins, and some
 * look past leading blanks, tabs and line breaks (OWASP, "CSV Injection"). Where the semicolon is their
 * delimiter, they also cut a comma file at semicolons, tabs and line breaks within cells. So no text that
 * leaves may start such, nor go on such after one of these.
 *
 * The escape is an apostrophe in front of it, and can be taken back exactly: a place needs it when it holds
 * any number of apostrophes and then what starts a formula; reading takes one apostrophe from such a place.
 * `=1+1` leaves as `'=1+1`, `'=1+1` as `''=1+1`, `soft;-)` as `soft;'-)`, and `'s Avonds` as it is.
 */
const start = /^(?='*[=+\-@＝＋－＠\s])/
const within = /([;\t\r\n])(?='*[^\S\t\r\n]*[=+\-@＝＋－＠])/g
const escapedStart = /^'(?='*[=+\-@＝＋－＠\s])/
const escapedWithin = /([;\t\r\n])'(?='*[^\S\t\r\n]*[=+\-@＝＋－＠])/g

export const safeCell = (text: string): string => text.replace(within, "$1'").replace(start, "'")

export const plainCell = (cell: string): string => cell.replace(escapedStart, '').replace(escapedWithin, '$1')

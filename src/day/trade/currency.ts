/** Where which currency (ISO 4217) is paid with, by regions (ISO 3166-1). */
const regions: Readonly<Record<string, string>> = {
  EUR: 'AD AT AX BE BG BL CY DE EE ES FI FR GF GP GR HR IE IT LT LU LV MC ME MF MQ MT NL PM PT RE SI SK SM VA XK YT',
  USD: 'US AS EC GU MP PR SV TL VI',
  GBP: 'GB GG IM JE',
  CAD: 'CA',
  AUD: 'AU KI NR TV',
  NZD: 'NZ CK NU TK',
  CHF: 'CH LI',
  DKK: 'DK FO GL',
  NOK: 'NO SJ',
  SEK: 'SE',
  ISK: 'IS',
  CZK: 'CZ',
  PLN: 'PL',
  HUF: 'HU',
  RON: 'RO',
  RSD: 'RS',
  BAM: 'BA',
  MKD: 'MK',
  ALL: 'AL',
  MDL: 'MD',
  UAH: 'UA',
  TRY: 'TR',
  GEL: 'GE',
  AMD: 'AM',
  KZT: 'KZ',
  ILS: 'IL PS',
  JPY: 'JP',
  KRW: 'KR',
  CNY: 'CN',
  TWD: 'TW',
  HKD: 'HK',
  SGD: 'SG',
  MYR: 'MY',
  THB: 'TH',
  VND: 'VN',
  IDR: 'ID',
  PHP: 'PH',
  INR: 'IN',
  PKR: 'PK',
  BDT: 'BD',
  LKR: 'LK',
  NPR: 'NP',
  AED: 'AE',
  SAR: 'SA',
  QAR: 'QA',
  EGP: 'EG',
  MAD: 'MA EH',
  TND: 'TN',
  DZD: 'DZ',
  ZAR: 'ZA',
  KES: 'KE',
  NGN: 'NG',
  GHS: 'GH',
  XOF: 'BF BJ CI GW ML NE SN TG',
  XAF: 'CF CG CM GA GQ TD',
  XPF: 'NC PF WF',
  MXN: 'MX',
  BRL: 'BR',
  ARS: 'AR',
  CLP: 'CL',
  COP: 'CO',
  PEN: 'PE',
  UYU: 'UY',
  CRC: 'CR',
}

const byRegion = new Map(
  Object.entries(regions).flatMap(([currency, all]) =>
    all.split(' ').map(region => [region, currency] as const),
  ),
)

/** The currency that is paid with where a language is most likely spoken: `EUR` for `fr`, `CAD` for `fr-CA`. A guess, to be chosen otherwise. */
export function guessCurrency(language: string): string {
  try {
    const { region } = new Intl.Locale(language).maximize()
    return byRegion.get(region ?? '') ?? 'USD'
  } catch {
    return 'USD'
  }
}

/** The currencies there are to choose from, by their codes: those this browser knows. */
export function currencies(): readonly string[] {
  const { supportedValuesOf } = Intl as { supportedValuesOf?: (key: string) => string[] }
  return supportedValuesOf?.call(Intl, 'currency') ?? Object.keys(regions).sort()
}

/** What a currency is called in a language: `euro`; its code where that is not known. */
export function currencyName(currency: string, language: string): string {
  try {
    return new Intl.DisplayNames(language, { type: 'currency' }).of(currency) ?? currency
  } catch {
    return currency
  }
}

const formats = new Map<string, Intl.NumberFormat>()

/** An amount of money as it is written in a language, to the currency's own decimals: `€18.50`. */
export function moneyText(amount: number, currency: string, language: string): string {
  const key = `${language} ${currency}`
  let known = formats.get(key)
  if (!known) {
    known = new Intl.NumberFormat(language, { style: 'currency', currency })
    formats.set(key, known)
  }
  return known.format(amount)
}

/** Decimals that amounts of a currency are written with: 2 of euros, none of yen. */
export const moneyDigits = (currency: string): number =>
  new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2

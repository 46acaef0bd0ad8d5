/**
 * Currencies whose smallest unit is no hundredth, by how many decimals it has. ISO 4217, list one, minor units: quoted
 * from memory.
 */
const otherDecimals: Readonly<Record<number, readonly string[]>> = {
  0: [
    'BIF',
    'CLP',
    'DJF',
    'GNF',
    'ISK',
    'JPY',
    'KMF',
    'KRW',
    'PYG',
    'RWF',
    'UGX',
    'UYI',
    'VND',
    'VUV',
    'XAF',
    'XOF',
    'XPF',
  ],
  3: ['BHD', 'IQD', 'JOD', 'KWD', 'LYD', 'OMR', 'TND'],
  4: ['CLF', 'UYW'],
};

/** How many decimals the smallest unit of a currency has (ISO 4217): two, but for those that are listed. */
export function decimalsOf(currency: string): number {
  const [decimals] = Object.entries(otherDecimals).find(([, own]) => own.includes(currency)) ?? ['2'];
  return Number(decimals);
}

/** A price or a rate as it is told: with the decimals of its currency, and with as many more as it is written with. */
export function writtenAmount(amount: number, decimals: number): string {
  const written = String(amount).split('.')[1]?.length ?? 0;
  return amount.toFixed(Math.max(decimals, written));
}

/**
 * An amount in whole smallest units (ISO 4217: minor units) as a sum of money, without its currency: `12.50`, and `1250`
 * of a currency that has no decimals.
 */
export function moneyText(minor: number, decimals: number): string {
  const digits = String(minor).padStart(decimals + 1, '0');
  return decimals === 0 ? digits : `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}

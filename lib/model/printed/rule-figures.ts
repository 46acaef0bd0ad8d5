import { type HouseRuleName, houseRuleDefinition, houseRuleNames, isHouseRuleName } from '../house-rules.ts';
import { dimensions } from '../quantity/dimensions.ts';
import { formatLength, type LengthStyle } from '../quantity/length-text.ts';
import { plainDigits } from '../quantity/plain-digits.ts';

const plain = plainDigits(6);

/** The value of each house rule, in SI. */
export type RuleValues = Readonly<Record<HouseRuleName, number>>;

/** The values that a shop works by: its own, and the defaults of those that it leaves alone. */
export function ruleValues(given: Readonly<Partial<Record<string, number>>>): RuleValues {
  const values: Partial<Record<HouseRuleName, number>> = {};
  for (const name of houseRuleNames) values[name] = given[name] ?? houseRuleDefinition(name).value;
  if (!isComplete(values)) throw new Error('A house rule has no value.');
  return values;
}

function isComplete(values: Partial<Record<HouseRuleName, number>>): values is RuleValues {
  return houseRuleNames.every((name) => values[name] !== undefined);
}

/** What stands for the value of a house rule in a text: `{ground-lead}`. */
const token = /\{([a-z][a-z0-9-]*)\}/g;

/** Names in a text that stand for house rules, with where each begins; also such as no house rule has. */
export function rulesNamed(text: string): readonly { readonly name: string; readonly at: number }[] {
  return [...text.matchAll(token)].map(({ index, 1: name = '' }) => ({ name, at: index }));
}

/** A text with the figures of the shop where it names a house rule: `at most {ground-lead}` is `at most 18 in`. */
export function withRules(text: string, values: RuleValues, style: LengthStyle): string {
  return text.replace(token, (whole, name: string) =>
    isHouseRuleName(name) ? ruleFigure(name, values[name], style) : whole,
  );
}

/** Puts the figures that a shop works by into texts that name house rules, by what the shop sets itself. */
export function rulesTold(
  given: Readonly<Partial<Record<string, number>>>,
  style: LengthStyle,
): (text: string) => string {
  const values = ruleValues(given);
  return (text) => withRules(text, values, style);
}

/** The value of a house rule as it was set, in the shop's units: never rounded to another value than the one that counts. */
export function ruleFigure(name: HouseRuleName, value: number, style: LengthStyle): string {
  const { dimension } = houseRuleDefinition(name);
  if (dimension === 'length') return lengthFigure(value, style);
  if (dimension === 'count') return plain(value);
  if (dimension === 'ratio') return value <= 1 ? `${plain(100 * value)} %` : plain(value);
  if (dimension === 'time') return timeFigure(value);
  const { si } = dimensions[dimension];
  const small = Math.abs(value) < 0.1 && value !== 0;
  if (dimension === 'voltage' || dimension === 'current')
    return small ? `${plain(1000 * value)} m${si}` : `${plain(value)} ${si}`;
  if (dimension === 'frequency' && value >= 1000) return `${plain(value / 1000)} kHz`;
  return `${plain(value)} ${si}`;
}

/** In the system in which it is a whole number or a part of the shop's tape; where it is in neither, in both. */
function lengthFigure(lengthM: number, style: LengthStyle): string {
  const { fraction, mm } = formatLength(lengthM, { ...style, mmDecimals: 1 });
  const written = { inch: fraction, mm: mm.replace('.0 mm', ' mm') };
  const order = style.system === 'inch' ? (['inch', 'mm'] as const) : (['mm', 'inch'] as const);
  const exact = order.find(
    (system) => Math.abs(formatLength(lengthM, { ...style, system, mmDecimals: 1 }).roundedByM) < 1e-7,
  );
  const [first, second] = order;
  return exact === undefined ? `${written[first]} (${written[second]})` : written[exact];
}

function timeFigure(seconds: number): string {
  if (seconds >= 60 && Number.isInteger(seconds / 60)) return `${plain(seconds / 60)} min`;
  return seconds < 0.1 ? `${plain(1000 * seconds)} ms` : `${plain(seconds)} s`;
}

import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { formatLength, type LengthStyle } from '../../../lib/model/quantity/length-text.ts';

/** One part of a summary: its heading, and a line for each thing, so that a change shows as the line of that thing. */
export interface Section {
  readonly heading: string;
  readonly lines: readonly string[];
}

/** A figure to so many decimals and no trailing noughts, without -0; `-` where there is none. */
export function figure(value: number | null | undefined, decimals: number): string {
  if (value === null || value === undefined) return '-';
  return String(Number(value.toFixed(decimals)) + 0);
}

/** A voltage to 0.01 V, as a meter would show it. */
export function volts(value: number | null | undefined): string {
  return value === null || value === undefined ? '- V' : `${(Number(value.toFixed(2)) + 0).toFixed(2)} V`;
}

/** A current to 0.1 A. */
export function amperes(value: number | null | undefined): string {
  return value === null || value === undefined ? '- A' : `${(Number(value.toFixed(1)) + 0).toFixed(1)} A`;
}

/** A length of wire to a millimetre. */
export function metres(value: number): string {
  return `${value.toFixed(3)} m`;
}

/** How a length on a board is written: to the step of the shop's tape. */
export function tapeOf({ shop }: Pick<BuildPlan, 'shop'>): (lengthM: number) => string {
  const style: LengthStyle = { system: shop.units === 'inch' ? 'inch' : 'mm', fraction: shop.fraction };
  return (lengthM) => formatLength(lengthM, style).primary;
}

/** What there is to say, one after the other; what is empty or missing is left out. */
export function listed(...parts: readonly (string | null | undefined | false)[]): string {
  return parts.filter((part) => typeof part === 'string' && part !== '').join(', ');
}

/** A reason up to its first semicolon: what decided, without what else was weighed. */
export function inShort(reason: string): string {
  return reason.split(';', 1)[0] ?? '';
}

/** `1 wire`, `2 wires`. */
export function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

/** A reading to four digits and no further than four decimals, as a meter would show it; `-` where there is none. */
export function reading(value: number | null): string {
  return value === null ? '-' : figure(Number(value.toPrecision(4)), 4);
}

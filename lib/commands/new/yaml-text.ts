import { coreScalar } from '../../read/yaml/core-scalar.ts';

/** What is written into a new file. What is undefined is left out. */
export type Written =
  | string
  | number
  | boolean
  | readonly Written[]
  | { readonly [name: string]: Written | undefined };

/** Texts that stay what they are without quotes, within braces too. */
const plain = /^[\p{L}\d][\p{L}\d _./+*()%-]*$/u;

/** A text, a number or a name as YAML has it: in quotes where it would be read as something else. */
export function scalarText(value: string | number | boolean): string {
  if (typeof value !== 'string') return String(value);
  return plain.test(value) && value === value.trim() && coreScalar(value) === value
    ? value
    : JSON.stringify(value);
}

/** A value on one line. */
export function flowText(value: Written): string {
  if (typeof value !== 'object') return scalarText(value);
  if (isList(value)) return `[${value.map(flowText).join(', ')}]`;
  const pairs = namesIn(value).map(([name, one]) => `${scalarText(name)}: ${flowText(one)}`);
  return pairs.length === 0 ? '{}' : `{ ${pairs.join(', ')} }`;
}

/** Names with their values, one a line; of the values those that hold more than plain ones are opened out to a depth. */
export function blockText(
  value: { readonly [name: string]: Written | undefined },
  depth = 1,
  indent = '',
): string {
  return namesIn(value)
    .map(([name, one]) => {
      if (depth > 1 && typeof one === 'object' && !isList(one) && isDeep(one))
        return `${indent}${scalarText(name)}:\n${blockText(one, depth - 1, `${indent}  `)}`;
      return `${indent}${scalarText(name)}: ${flowText(one)}\n`;
    })
    .join('');
}

function isDeep(value: { readonly [name: string]: Written | undefined }): boolean {
  return namesIn(value).some(([, one]) => typeof one === 'object' && !isList(one));
}

function isList(value: Written): value is readonly Written[] {
  return Array.isArray(value);
}

function namesIn(value: { readonly [name: string]: Written | undefined }): (readonly [string, Written])[] {
  return Object.entries(value).flatMap(([name, one]) => (one === undefined ? [] : [[name, one] as const]));
}

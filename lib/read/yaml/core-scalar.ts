import type { Unreadable } from '../../model/problem.ts';
export type Scalar = string | number | boolean | null;

/**
 * Resolves a plain scalar after the core schema of YAML 1.2.2, section 10.3.2: null, boolean, whole number,
 * number, else text. Infinity, not-a-number and whole numbers that would lose digits are faults.
 */
export function coreScalar(text: string): Scalar | Unreadable {
  if (/^(?:|~|null|Null|NULL)$/.test(text)) return null;
  if (/^(?:true|True|TRUE)$/.test(text)) return true;
  if (/^(?:false|False|FALSE)$/.test(text)) return false;
  if (/^(?:[-+]?[0-9]+|0o[0-7]+|0x[0-9a-fA-F]+)$/.test(text)) return wholeNumber(text);
  if (/^[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?$/.test(text)) {
    const value = Number(text);
    return Number.isFinite(value) ? value : { unreadable: 'is too large a number' };
  }
  if (/^(?:[-+]?\.(?:inf|Inf|INF)|\.(?:nan|NaN|NAN))$/.test(text))
    return { unreadable: 'is not a number that can be computed with' };
  return text;
}

function wholeNumber(text: string): number | Unreadable {
  // Number() knows 0o and 0x, and a sign only before decimal digits: just what the core schema allows.
  const value = Number(text);
  if (Number.isSafeInteger(value)) return value === 0 ? 0 : value;
  return { unreadable: 'has more digits than a number can hold: put quotes round it to keep it as a text' };
}

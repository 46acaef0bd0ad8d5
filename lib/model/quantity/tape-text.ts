import type { Shop } from '../content/shop.ts';
import { inchText } from './length-text.ts';

const inchM = 0.0254;
/** What a text may be off the length that it writes: far below what is ever cut, and what no check tells apart. */
const sameM = 1e-9;

/**
 * A length (metres) as a job file writes it, so that it is read back as the same length: in the shop's system where a tape
 * of that system has it exactly, else in the other one, else in millimetres with as many decimals as it takes.
 */
export function tapeText(lengthM: number, units: Shop['units']): string {
  const inches = [1, 2, 4, 8, 16, 32].flatMap((steps) => {
    const count = Math.round((Math.abs(lengthM) / inchM) * steps);
    const sign = lengthM < 0 && count > 0 ? '-' : '';
    const isExact = Math.abs((count / steps) * inchM - Math.abs(lengthM)) <= sameM;
    return isExact ? [`${sign}${inchText(count, steps)} in`] : [];
  });
  const decimals = [0, 1].find((one) => Math.abs(Number(inMm(lengthM, one)) / 1000 - lengthM) <= sameM);
  const mm = decimals === undefined ? [] : [`${inMm(lengthM, decimals)} mm`];
  const [text] = units === 'inch' ? [...inches, ...mm] : [...mm, ...inches];
  return text ?? `${Number(inMm(lengthM, 6))} mm`;
}

function inMm(lengthM: number, decimals: number): string {
  const text = (lengthM * 1000).toFixed(decimals);
  return Number(text) === 0 ? '0' : text;
}

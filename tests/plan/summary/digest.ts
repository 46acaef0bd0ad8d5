import { createHash } from 'node:crypto';

/**
 * Digits that a digest keeps of a number. A solution of the network is good to some 1e-11 V, and a change of the
 * solver that changes no result moved one number of 9,000 in its ninth digit; at six digits such a change goes by in
 * all but one case of a thousand, while a tenth of a millimetre of a board and 0.1 mV of a battery still show.
 */
const digits = 6;

/** Less than this is what rounding left of nought, such as the residual of the network. */
const nought = 1e-8;

/** Digest of a part of a plan, its numbers rounded so that the last digits of the solver are not in it. */
export function roundedDigest(value: unknown): string {
  const rounded = (_key: string, one: unknown): unknown =>
    typeof one === 'number' ? roundedNumber(one) : one;
  return createHash('sha256').update(JSON.stringify(value, rounded)).digest('hex').slice(0, 16);
}

function roundedNumber(value: number): number {
  return Math.abs(value) < nought ? 0 : Number(value.toPrecision(digits));
}

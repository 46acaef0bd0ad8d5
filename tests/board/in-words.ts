import { type Phrase, worded } from '../../lib/model/phrase.ts';
import { printedLength } from '../../lib/model/printed/lengths.ts';

/** A phrase with its lengths in millimetres and inches to 1/32, each rounded as its kind asks. */
export const inWords = (told: Phrase | undefined): string =>
  worded(told ?? 'nothing', (kind, lengthM) => {
    const { mm, fraction } = printedLength(kind, lengthM, { system: 'mm', fraction: 32, mmDecimals: 1 });
    return `${mm} (${fraction})`;
  });

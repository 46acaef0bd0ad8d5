import { about, partIn } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

/** An amplifier that draws so much at rated power, with so many fuses in itself. */
const drawing = (ratedA: number, fusesFitted: number) =>
  about({
    content: (content) => {
      partIn(content, 'two-channel', 'amplifier').supply['fuses-fitted'] = fusesFitted;
    },
    plan: (plan) => {
      plan.power.loads = [{ item: 'amp', fuseA: 60, ratedA, musicA: 10, idleA: 1, powerW: 400 }];
    },
  });

export const ownFusesCases = {
  // The parts' data: an amplifier with fuses of 60 A in it.
  'own-fuse-under-draw': {
    fires: [
      {
        name: 'just above what its fuses carry',
        about: () => drawing(60.1, 2),
        level: 'caution',
        subject: 'amp',
        file: 'parts.yaml',
        says: /reckoned to draw 60\.1 A at rated power, and the fuses in it carry 60 A/,
      },
    ],
    quiet: [
      { name: 'just what they carry', about: () => drawing(60, 2) },
      { name: 'no fuse in it: the ceiling is judged at the fuse before it', about: () => drawing(60.1, 0) },
    ],
  },
} satisfies RuleCases;

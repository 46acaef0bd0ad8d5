import { audio } from './equivalents/audio.ts';
import { boards } from './equivalents/boards.ts';
import type { Equivalent } from './equivalents/equivalent.ts';
import { plannedPower } from './equivalents/planned-power.ts';
import { power } from './equivalents/power.ts';
import { rules } from './equivalents/rules.ts';
import { shorts } from './equivalents/shorts.ts';
import { sizing } from './equivalents/sizing.ts';

/** Every change that no test can tell, with the reason: none of them counts. */
export const equivalents: readonly Equivalent[] = [
  ...power,
  ...shorts,
  ...sizing,
  ...plannedPower,
  ...audio,
  ...boards,
  ...rules,
];

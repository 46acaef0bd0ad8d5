import type { Calculator } from './calculator.ts';
import { coilCalculator } from './coil-loads.ts';
import { conductorCalculator } from './conductor.ts';
import { delayCalculator } from './delay.ts';
import { filterCalculator } from './filter.ts';
import { fractionCalculator } from './fraction.ts';
import { fuseCalculator } from './fuse.ts';
import { gainCalculator } from './gain.ts';

/** Every calculator of the bench, in the order of the work. */
export const calculators: readonly Calculator[] = [
  conductorCalculator,
  fuseCalculator,
  coilCalculator,
  gainCalculator,
  delayCalculator,
  filterCalculator,
  fractionCalculator,
];

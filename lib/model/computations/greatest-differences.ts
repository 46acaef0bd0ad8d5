import type { OutsideCheckId } from './outside-checks.ts';

/**
 * The greatest difference that each check outside the project has found, in the unit of the check and rounded up to two
 * digits. Written by the tests: `RENEW_CHECKS=1 npm test -- --maxWorkers=1`.
 */
export const greatestDifferences: Readonly<Record<OutsideCheckId, number>> = {
  'networks-in-ngspice': 1.1e-8,
  'jobs-in-ngspice': 4.7e-9,
  'balance-of-currents': 0.01,
  'short-in-ngspice': 0.000018,
  'copper-wire-table': 0.085,
  'copper-warm': 0,
  'drop-in-handbooks': 0.35,
  'ampacity-chart': 0,
  'peukert-table': 6.7,
  'batteries-by-hand': 0.17,
  'loads-by-hand': 1e-9,
  'packed-circles': 13,
  'wire-outside': 15,
  'let-through-by-trial': 0,
  'made-ratings': 0,
  'redone-by-hand': 1e-9,
  'coils-in-ngspice': 1e-9,
  'ladders-in-ngspice': 1e-9,
  'bessel-in-scipy': 4.4e-7,
  'paths-in-ngspice': 4.2e-7,
  'sound-textbook': 0.0043,
  arrivals: 1e-9,
  'speaker-wire-in-ngspice': 1e-9,
  'audio-by-hand': 1e-9,
  'areas-in-flatten': 1e-9,
  'webs-by-trial': 0.0099,
  'beams-and-plates': 0.35,
  'fasteners-by-statics': 1e-9,
  'joints-by-hand': 1e-9,
  'ways-in-ngraph': 1e-9,
  'ports-by-trial': 0,
  'sections-by-roark': 0.045,
  'enclosure-example': 0.78,
  'rooms-by-hand': 1e-9,
  'picks-added-up': 0.0005,
  'layouts-by-trial': 0,
};

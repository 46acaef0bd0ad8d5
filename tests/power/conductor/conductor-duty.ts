import { awgSize } from '../../../lib/model/quantity/wire-size.ts';
import type { CableCandidate, ConductorDuty } from '../../../lib/power/conductor/conductor-choice.ts';

export const cable = (awg: string, more: Partial<CableCandidate> = {}): CableCandidate => ({
  part: `cable-${awg}`,
  size: awgSize(awg),
  material: 'copper',
  insulationC: 105,
  ...more,
});

export const bench = { zone: 'bench', ambientC: 30, engineSpace: false, covered: false, bundleCount: 1 };

/** 100 A of fuse: Table 5 of ABYC E-11, 105 C, gives 8 AWG 80 A, 6 AWG 120 A, 4 AWG 160 A. */
export const duty = (more: Partial<ConductorDuty> = {}): ConductorDuty => ({
  fuseA: 100,
  currentA: 80,
  lengthM: 1,
  otherOhm: 0,
  mostDropV: 0.4,
  zones: [bench],
  ...more,
});

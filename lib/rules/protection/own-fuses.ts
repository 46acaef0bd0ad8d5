import { supplyOf } from '../../plan/power/device-loads.ts';
import { deviceOf, partSpot } from '../look-up.ts';
import type { RuleOf, Verdict } from '../rule.ts';
import { amps, ampsDrawn } from '../words.ts';

/**
 * A device that is reckoned to draw more at rated power than the fuses in itself carry: they would open, so that a figure
 * of its leaflet is doubtful. The fuse at the source protects its cable and tells nothing of it.
 */
export const ownFusesRule: RuleOf<'own-fuse-under-draw'> = {
  id: 'own-fuse-under-draw',
  judge: ({ job, plan }) =>
    plan.power.loads.flatMap(({ item, ratedA }): Verdict<'own-fuse-under-draw'>[] => {
      const device = deviceOf(job, item);
      const supply = supplyOf(device?.spec ?? null);
      if (device?.origin !== 'job' || !supply || supply['fuses-fitted'] === 0) return [];
      if (ratedA <= supply.fuse + 1e-9) return [];
      return [
        {
          level: 'caution',
          of: [item],
          message: `${item} is reckoned to draw ${ampsDrawn(ratedA)} at rated power, and the fuses in it carry ${amps(supply.fuse)}: they would open before it gives its power for long`,
          value: ratedA,
          limit: supply.fuse,
          unit: 'A',
          remedy: `compare fuse:, powers: and efficiency: of its part with the leaflet: one of them is doubtful, or the powers are for music alone; never fit a larger fuse into ${item}`,
          ...partSpot(job, item, 'supply', 'fuse'),
        },
      ];
    }),
};

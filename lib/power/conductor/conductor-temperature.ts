import { commonPractice, type Traced, traced } from '../../model/trace.ts';
import type { PowerRules } from '../power-rules.ts';
import type { RunZone } from './ampacity.ts';

/**
 * Temperature (C) of a conductor for its hot resistance: the one that the house assumes, in a hotter zone that zone's
 * ambient, since no conductor is cooler than what it lies in; the mean over its length, for resistance is linear in
 * temperature. Zones that tell no length count alike. The assumption: common practice, no source.
 */
export function conductorTemperatureC(zones: readonly RunZone[], { conductorC }: PowerRules): Traced<number> {
  const told = zones.some(({ lengthM = 0 }) => lengthM > 0);
  const stretches = zones
    .map(({ zone, ambientC, lengthM = 0 }) => ({
      zone,
      lengthM: told ? lengthM : 1,
      warmC: Math.max(conductorC, ambientC),
    }))
    .filter(({ lengthM }) => lengthM > 0);
  const wayM = stretches.reduce((sum, { lengthM }) => sum + lengthM, 0);
  const aboveCm = stretches.reduce((sum, { lengthM, warmC }) => sum + lengthM * (warmC - conductorC), 0);
  const products = stretches.map((_, k) => `L${k + 1} * T${k + 1}`).join(' + ');
  const lengths = stretches.map((_, k) => `L${k + 1}`).join(' + ');
  return traced(wayM > 0 ? conductorC + aboveCm / wayM : conductorC, 'C', {
    rule: 'conductor-temperature',
    formula: `${wayM > 0 ? `(${products}) / (${lengths})` : 'Tc'}; of each zone the assumed Tc, or its ambient where that is hotter`,
    citation: commonPractice,
    mark: 'cp',
    inputs: [
      ['Tc', conductorC, 'C'],
      ...stretches.flatMap(({ zone, lengthM, warmC }, k) => [
        [`zone ${k + 1}`, zone, ''] as const,
        [`L${k + 1}`, lengthM, 'm'] as const,
        [`T${k + 1}`, warmC, 'C'] as const,
      ]),
    ],
  });
}

import type { Device } from '../model/resolved-job.ts';
import type { Rule, Verdict } from './rule.ts';
import { figure, listed, watts } from './words.ts';

/** Heat of a device at rated power (W), by its part; null where the part is silent. */
function heatOf({ spec }: Device): number | null {
  return spec !== null && 'heat' in spec ? (spec.heat ?? null) : null;
}

function hasFan({ facts }: Device): boolean {
  return Object.values(facts.footprint?.cooling ?? {}).includes('fan');
}

const cavityHeat: Rule = {
  id: 'cavity-heat',
  judge({ job }) {
    return job.boards.flatMap(({ id, path, space, spaceId }): Verdict<'cavity-heat'>[] => {
      const hot = job.devices.filter((device) => device.board === id && device.spec?.kind === 'amplifier');
      if (hot.length === 0 || hot.some(hasFan)) return [];
      const silent = hot.filter((device) => heatOf(device) === null).map((device) => device.id);
      const sumW = hot.reduce((sum, device) => sum + (heatOf(device) ?? 0), 0);
      const air =
        space.air === undefined
          ? `${spaceId} has an air volume that is not known`
          : `${spaceId} has ${figure(space.air * 1000)} L of air`;
      const heat =
        silent.length === 0
          ? `${watts(sumW)} of heat at rated power`
          : `an amount of heat that is not known (${listed(silent)})`;
      return [
        {
          level: 'note',
          of: [id, spaceId, ...hot.map((device) => device.id)],
          message: `${id} gives off ${heat}, ${air}, and no fan moves it`,
          ...(silent.length === 0 && { value: sumW, unit: 'W' }),
          remedy: `${space.air === undefined ? `measure the air of ${spaceId} and write it as air:; ` : ''}leave an inlet low and an outlet high, and feel the amplifiers after half an hour of loud music`,
          path,
        },
      ];
    });
  },
};

export const heatRules: readonly Rule[] = [cavityHeat];

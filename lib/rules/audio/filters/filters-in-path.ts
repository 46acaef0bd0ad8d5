import { type Filter, filterLevel } from '../../../audio/filter/filter-response.ts';
import { isFault } from '../../../model/fault.ts';
import type { PlanChannel, PlanFilter } from '../../../model/plan/index.ts';
import { boostsOf } from '../../../plan/audio/path/path-peaks.ts';
import { deviceIdOf, deviceOf, deviceSpot, partSpot } from '../../look-up.ts';
import type { Rule, Verdict } from '../../rule.ts';
import { hertz, levelDb } from '../../words.ts';

/** How much a filter lowers the level at a frequency; 0 where it can't be told. */
function takesDb(filter: Filter, frequencyHz: number): number {
  const level = filterLevel('', filter, frequencyHz);
  return isFault(level) ? 0 : -level.value;
}

const isHigh = ({ pass }: PlanFilter) => pass !== 'low-pass';

/** Pairs of filters that cut the same end of a band, the one that cuts deeper into it first. */
function pairsOf({ filters }: PlanChannel): readonly (readonly [PlanFilter, PlanFilter])[] {
  return filters.flatMap((a, index) =>
    filters.slice(index + 1).flatMap((b) => {
      if (isHigh(a) !== isHigh(b)) return [];
      const first = isHigh(a) === a.cornerHz >= b.cornerHz ? a : b;
      return [[first, first === a ? b : a] as const];
    }),
  );
}

const twice: Rule = {
  id: 'filtered-twice',
  judge({ job, plan }) {
    const addsDb = job.rules['filters-add'].value;
    return plan.audio.channels.flatMap((channel) =>
      pairsOf(channel).flatMap(([first, second]): Verdict<'filtered-twice'>[] => {
        const alone = takesDb(first, first.cornerHz);
        const added = takesDb(second, first.cornerHz);
        if (added <= addsDb + 1e-9) return [];
        return [
          {
            level: 'caution',
            of: [channel.id, deviceIdOf(first.where), deviceIdOf(second.where)],
            message: `${channel.id} is filtered twice: the ${first.pass} of ${first.where} at ${hertz(first.cornerHz)} and the ${second.pass} of ${second.where} at ${hertz(second.cornerHz)} add to ${levelDb(alone + added)} at ${hertz(first.cornerHz)}, where one gives ${levelDb(alone)}, and to ${6 * (first.order + second.order)} dB per octave beyond`,
            value: alone + added,
            limit: alone + addsDb,
            unit: 'dB',
            remedy:
              first.inLead || second.inLead || deviceIdOf(first.where) === deviceIdOf(second.where)
                ? 'keep one of the two'
                : `keep the one in ${deviceIdOf(first.where)}, and leave ${deviceIdOf(second.where)} at full after commissioning`,
            ...deviceSpot(job, channel.amplifier, 'filters'),
          },
        ];
      }),
    );
  },
};

const untold: Rule = {
  id: 'control-final-unknown',
  judge({ job, plan }) {
    return plan.controls.flatMap(({ item, control, final }): Verdict<'control-final-unknown'>[] => {
      if (final.state !== null && /\S/.test(final.state)) return [];
      return [
        {
          level: 'caution',
          of: [`${item}.${control}`, item],
          message: `how ${control} on ${item} stands after commissioning is not known`,
          ...(deviceOf(job, item)?.origin === 'vehicle'
            ? {
                remedy: `write final: at ${control} in the part`,
                ...partSpot(job, item, 'controls', control),
              }
            : {
                remedy: `write it under after-commissioning: of ${item}, or give the control its filter: and channels: in the part`,
                ...deviceSpot(job, item),
              }),
        },
      ];
    });
  },
};

const boostUnknown: Rule = {
  id: 'boost-unknown',
  judge({ job }) {
    return job.devices
      .filter(({ origin, spec }) => origin === 'job' && spec?.kind === 'amplifier')
      .flatMap((device) =>
        boostsOf(device)
          .filter(({ peaks }) => peaks === null)
          .map(({ control, state }): Verdict<'boost-unknown'> => {
            return {
              level: 'caution',
              of: [`${device.id}.${control}`, device.id],
              message: `${control} on ${device.id} is to stand at "${state}", and how far that raises the level is not known: the gain voltages hold with it flat`,
              value: state,
              remedy: `leave it flat, or write boost: with centre and range for ${control} in the part, and its level in dB under after-commissioning:`,
              ...deviceSpot(job, device.id, 'after-commissioning', control),
            };
          }),
      );
  },
};

export const filtersInPathRules: readonly Rule[] = [twice, untold, boostUnknown];

import { type Filter, filterLevel } from '../../audio/filter/filters.ts';
import type { Device } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import type { PlanChannel, PlanFilter } from '../../model/plan/index.ts';
import { filterNames } from '../../model/vocabulary.ts';
import { askedOf, type BuiltInFilter, finalFilters } from '../../plan/audio/final-filters.ts';
import { boostsOf } from '../../plan/audio/path-peaks.ts';
import { deviceIdOf, deviceSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { hertz, levelDb, listed } from '../words.ts';

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
              deviceIdOf(first.where) === deviceIdOf(second.where)
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
          remedy: `write it under after-commissioning: of ${item}, or give the control its filter: and channels: in the part`,
          ...deviceSpot(job, item),
        },
      ];
    });
  },
};

/** What stands in the way of a filter that the job asks of an amplifier; null where its controls make it. */
function missing(device: Device, channel: string, asked: PlanFilter): string | null {
  const own = finalFilters(device).filter(({ channels }) => channels.includes(channel));
  const made = own.find(({ pass }) => pass === asked.pass);
  if (!made) return otherPassText(device, channel, asked, own);
  const { shape, cornerHz } = made;
  if (shape && (shape.type !== asked.type || shape.order !== asked.order))
    return `${device.id} makes ${filterNames[shape.type]} of order ${shape.order}`;
  if (cornerHz !== null && Math.abs(cornerHz - asked.cornerHz) > 1e-6 * asked.cornerHz)
    return atOtherCorner(device, channel, made, cornerHz);
  return outOfRange(device, [...made.states.keys()], asked);
}

/** What an amplifier makes on a channel in place of a pass that it does not make there. */
function otherPassText(
  { id }: Device,
  channel: string,
  { pass }: PlanFilter,
  own: readonly BuiltInFilter[],
): string {
  const stands = own.flatMap(({ states, pass: other, cornerHz }): string[] => {
    const names = [...states.keys()];
    const verb = names.length === 1 ? 'stands' : 'stand';
    if (other === null) return [`${listed(names)} ${verb} where all is let through`];
    return [`${listed(names)} ${verb} at ${other}${cornerHz === null ? '' : `, ${hertz(cornerHz)}`}`];
  });
  return `${id} makes no ${pass} on channel ${channel}${stands.length > 0 ? `: ${stands.join('; ')}` : ''}`;
}

/** Why a filter does not stand at the corner that is asked: one that other channels share stands where these ask. */
function atOtherCorner(device: Device, channel: string, made: BuiltInFilter, cornerHz: number): string {
  const names = [...made.states.keys()];
  const one = names.length === 1;
  const others = made.channels.filter((other) => other !== channel);
  const deciding = others.filter((other) =>
    askedOf(device, [other]).some(
      ({ pass, cornerHz: askedHz }) => pass === made.pass && Math.abs(askedHz - cornerHz) <= 1e-6 * cornerHz,
    ),
  );
  const stand = `${listed(names)} ${one ? 'stands' : 'stand'} at ${hertz(cornerHz)}`;
  return deciding.length === 0
    ? stand
    : `${stand} for channel ${listed(deciding)}, and ${one ? 'it sets' : 'they set'} channels ${listed([...made.channels])} together`;
}

function outOfRange({ facts }: Device, controls: readonly string[], { cornerHz }: PlanFilter): string | null {
  for (const name of controls) {
    const range = facts.controls[name]?.filter?.range;
    if (range && (cornerHz < range.from - 1e-9 || cornerHz > range.to + 1e-9))
      return `${name} goes from ${hertz(range.from)} to ${hertz(range.to)}`;
  }
  return null;
}

/** The filters that the job asks of an amplifier whose filter controls are known, with what stands in their way. */
function notMadeBy(device: Device): readonly { readonly asked: PlanFilter; readonly why: string }[] {
  const { spec } = device;
  if (spec?.kind === 'amplifier') {
    if (finalFilters(device).length === 0) return [];
    return Object.keys(spec.channels).flatMap((channel) =>
      askedOf(device, [channel]).flatMap((asked) => {
        const why = missing(device, channel, asked);
        return why === null ? [] : [{ asked, why }];
      }),
    );
  }
  const orders = spec?.kind === 'processor' ? spec['filter-orders'] : undefined;
  if (!orders) return [];
  return Object.entries(device.given?.filters ?? {}).flatMap(([where, filters]) =>
    filters
      .filter(({ order }) => !orders.includes(order))
      .map(({ corner, ...filter }) => ({
        asked: { ...filter, where, cornerHz: corner },
        why: `${device.id} makes orders ${listed(orders.map(String))}`,
      })),
  );
}

/** The channels of an amplifier, `amp.1`, that a filter written at a terminal or an output is for. */
function channelsAt(device: Device, where: string): readonly string[] {
  if (device.spec?.kind !== 'amplifier') return [];
  return Object.keys(device.spec.channels)
    .filter((channel) => askedOf(device, [channel]).some((asked) => asked.where === where))
    .map((channel) => `${device.id}.${channel}`);
}

const notMade: Rule = {
  id: 'filter-not-made',
  judge({ job }) {
    return job.devices
      .filter(({ origin }) => origin === 'job')
      .flatMap((device) =>
        notMadeBy(device).map(({ asked, why }): Verdict<'filter-not-made'> => {
          const { where, pass, type, order, cornerHz } = asked;
          return {
            level: 'caution',
            of: [device.id, ...channelsAt(device, where)],
            message: `${device.id}.${where} is to have a ${pass} (${filterNames[type]}, order ${order}) at ${hertz(cornerHz)}, but ${why}`,
            remedy: 'write the filter that the device makes, or its control under after-commissioning:',
            ...deviceSpot(job, device.id, 'filters', where),
          };
        }),
      );
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

export const filtersInPathRules: readonly Rule[] = [twice, untold, notMade, boostUnknown];

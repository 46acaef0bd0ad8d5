import type { PartOf } from '../../model/kinds/index.ts';
import { amps, figure, ohms, volts, watts } from '../words.ts';
import type { Doubt } from './doubt.ts';

type Amplifier = PartOf<'amplifier'>;
type Channel = Amplifier['bridges'][string];

/** Charging voltage, the highest that a 12 V amplifier is rated at, and what its fuse carries for a while (ISO 8820-1). */
const ratedV = 14.4;
const fuseCarries = 1.35;

/** What is unlikely in the powers, loads and bridges of an amplifier, and beside its fuse. */
export function amplifierDoubts(part: Amplifier): readonly Doubt[] {
  return [
    ...Object.entries(part.channels).flatMap(([name, channel]) => powerDoubts(['channels', name], channel)),
    ...Object.entries(part.bridges).flatMap(([name, channel]) => [
      ...powerDoubts(['bridges', name], channel),
      ...bridgeDoubts(part, name, channel),
    ]),
    ...inputDoubts(part),
    ...fuseDoubts(part),
  ];
}

/** An output is a voltage: into half the load it gives twice the power at most, and never less; P = V^2 / R. */
function powerDoubts(keys: readonly string[], { powers, minimum }: Channel): readonly Doubt[] {
  const rising = powers.toSorted((a, b) => a.load - b.load);
  const under = powers.flatMap(({ load }, n): Doubt[] =>
    load >= minimum - 1e-9
      ? []
      : [
          {
            keys: [...keys, 'powers', String(n), 'load'],
            message: `states a power of ${keys[1]} into ${ohms(load)}, below its own minimum of ${ohms(minimum)}`,
            remedy: 'correct the load or the minimum',
          },
        ],
  );
  const pairs = rising.slice(1).flatMap((higher, k): Doubt[] => {
    const lower = rising[k];
    if (!lower) return [];
    const index = String(powers.indexOf(higher));
    const least = (0.85 * lower.power * lower.load) / higher.load;
    if (higher.load === lower.load || (higher.power <= 1.02 * lower.power && higher.power >= least))
      return [];
    return [
      {
        keys: [...keys, 'powers', index, 'power'],
        message: `gives ${watts(lower.power)} into ${ohms(lower.load)} and ${watts(higher.power)} into ${ohms(higher.load)} at ${keys[1]}: into the larger load it gives less, by the ratio of the loads at most`,
        remedy: 'check which power belongs to which load',
      },
    ];
  });
  return [...under, ...pairs];
}

/** Each half of a bridge sees half the load, and gives its own power into that. */
function bridgeDoubts(part: Amplifier, name: string, bridge: Channel): readonly Doubt[] {
  const halves = name.split('+').flatMap((half) => part.channels[half] ?? []);
  const least = 2 * Math.max(0, ...halves.map(({ minimum }) => minimum));
  const doubts: Doubt[] = [];
  if (bridge.minimum < least - 1e-9)
    doubts.push({
      keys: ['bridges', name, 'minimum'],
      message: `may be loaded with ${ohms(bridge.minimum)} in bridge ${name}, where each half sees ${ohms(bridge.minimum / 2)}, below its minimum of ${ohms(least / 2)}`,
      remedy: 'a bridge asks for twice the load of a channel: check both',
    });
  for (const [n, { load, power }] of bridge.powers.entries()) {
    const single = Math.max(
      0,
      ...halves.flatMap(({ powers }) => powers.filter((one) => one.load === load).map((one) => one.power)),
    );
    if (power < single)
      doubts.push({
        keys: ['bridges', name, 'powers', String(n), 'power'],
        message: `gives ${watts(power)} in bridge ${name} and ${watts(single)} by one of its channels alone, into the same ${ohms(load)}`,
        remedy: 'check the power of the bridge',
      });
  }
  return doubts;
}

/** The voltage for full output lies within what the gain control of the input spans. */
function inputDoubts({ terminals }: Amplifier): readonly Doubt[] {
  return Object.entries(terminals).flatMap(([name, { signal, 'signal-range': range }]): Doubt[] =>
    !range || signal === undefined || (signal >= (range.from ?? 0) && signal <= range.to)
      ? []
      : [
          {
            keys: ['terminals', name, 'signal'],
            message: `reaches full output at ${name} with ${volts(signal)}, outside its range of ${range.from === undefined ? 'at most' : `${volts(range.from)} to`} ${volts(range.to)}`,
            remedy: 'correct signal: or signal-range:',
          },
        ],
  );
}

/** What all channels give together comes through the fuse; a device gives off no more heat than it takes. */
function fuseDoubts({ channels, supply, heat }: Amplifier): readonly Doubt[] {
  const givenW = Object.values(channels).reduce(
    (sum, { powers }) => sum + Math.min(...powers.map(({ power }) => power)),
    0,
  );
  const systems = (supply.range?.to ?? 16) > 20 ? 2 : 1;
  const mostW = (supply['rated-at'] ?? ratedV * systems) * fuseCarries * supply.fuse;
  const doubts: Doubt[] = [];
  if (givenW > mostW)
    doubts.push({
      keys: ['supply', 'fuse'],
      message: `gives ${watts(givenW)} in all behind a fuse of ${amps(supply.fuse)}, which lets in ${watts(mostW)}`,
      remedy: 'check fuse: and the powers of the channels; several fuses on the chassis add',
    });
  if (heat !== undefined && heat > ratedV * supply.fuse * systems)
    doubts.push({
      keys: ['heat'],
      message: `gives off ${figure(heat)} W of heat behind a fuse of ${amps(supply.fuse)}`,
      remedy: 'check heat: and fuse:',
    });
  return doubts;
}

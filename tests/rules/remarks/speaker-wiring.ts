import {
  type CoilTerminals,
  channelWiring,
  coilsWithoutChannel,
} from '../../../lib/audio/load/channel-wiring.ts';
import type { Coil, Wiring } from '../../../lib/audio/load/coil-wiring.ts';
import { wiringLoad } from '../../../lib/audio/load/loads.ts';
import { fires, quiet, type RemarkCases, refused } from '../remark-case.ts';

const terminals = (id: string): CoilTerminals => {
  return { coil: id, speaker: id, positive: `${id}+`, negative: `${id}-` };
};
/** Coils on a channel, by conductors written `amp+ a+`; another channel is beside it. */
const joined = (coils: readonly string[], ...joins: readonly string[]) =>
  refused(() =>
    channelWiring({
      ...{ channel: 'bass', positive: 'amp+', negative: 'amp-', otherOutputs: ['amp2+', 'amp2-'] },
      coils: coils.map(terminals),
      joins: joins.map((join): readonly [string, string] => {
        const [from = '', to = ''] = join.split(' ');
        return [from, to];
      }),
    }),
  );
const inSeries = quiet(
  'two coils in series, every end wired',
  joined(['a', 'b'], 'amp+ a+', 'a- b+', 'b- amp-'),
);
const bridge = joined(
  ['a', 'b', 'c', 'd', 'e'],
  ...['amp+ a+', 'amp+ b+', 'a- c+', 'b- d+', 'c- amp-', 'd- amp-', 'e+ a-', 'e- b-'],
);

/** The coils of a subwoofer, those of them that a channel drives. */
const silent =
  (...driven: readonly string[]) =>
  () =>
    coilsWithoutChannel(
      ['sub.1', 'sub.2'].map((id) => ({ ...terminals(id), speaker: 'sub' })),
      new Set(driven),
    ).flatMap((fault) => refused(() => fault)());
const bothDriven = quiet('both coils of a speaker on a channel', silent('sub.1', 'sub.2'));

const coil = (id: string): Wiring => ({ kind: 'coil', coil: id });
const coils = (nominalOhm = 4) => ['sub.1', 'sub.2'].map((id): Coil => ({ id, speaker: 'sub', nominalOhm }));
const named = (wiring: Wiring, of: readonly Coil[] = coils()) =>
  refused(() => wiringLoad('bass', wiring, of));
const both: Wiring = { kind: 'series', members: [coil('sub.1'), coil('sub.2')] };
const eachOnce = quiet('each coil once, in a series of two', named(both));

/** How the channels of a job are wired, by Kirchhoff's laws on the links alone. */
export const wiringRemarks = {
  'channel-shorted': {
    fires: [
      fires('a conductor across the coil', 'stop', 'bass', joined(['a'], 'amp+ a+', 'a- amp-', 'amp+ amp-')),
    ],
    quiet: [inSeries],
  },
  'channels-joined': {
    fires: [fires('a coil on two channels', 'stop', 'bass', joined(['a'], 'amp+ a+', 'a- amp-', 'a- amp2-'))],
    quiet: [inSeries],
  },
  'channel-without-speaker': {
    fires: [fires('the only coil on another one', 'stop', 'bass', joined(['a'], 'amp2+ a+'))],
    quiet: [inSeries],
  },
  'coil-shorted': {
    fires: [
      fires(
        'both ends of one of two coils at one point',
        'stop',
        'bass',
        joined(['a', 'b'], 'amp+ a+', 'a+ a-', 'amp+ b+', 'b- amp-'),
        /both ends of a /,
      ),
    ],
    quiet: [inSeries],
  },
  'coil-left-open': {
    fires: [
      fires('one end of a second coil', 'stop', 'bass', joined(['a', 'b'], 'amp+ a+', 'a- amp-', 'amp+ b+')),
      fires('one coil of two on a channel', 'stop', 'sub', silent('sub.1')),
      fires('one coil of two in the wiring', 'stop', 'sub.2', named(coil('sub.1'))),
    ],
    quiet: [inSeries, bothDriven, eachOnce],
  },
  'speaker-without-channel': {
    fires: [fires('neither coil on a channel', 'stop', 'sub', silent())],
    quiet: [bothDriven],
  },
  'wiring-not-series-parallel': {
    fires: [fires('a coil from the middle of one branch to that of another', 'stop', 'bass', bridge)],
    quiet: [inSeries],
  },
  'coil-unknown': {
    fires: [
      fires(
        'a third coil of two',
        'stop',
        'sub.3',
        named({ kind: 'series', members: [coil('sub.1'), coil('sub.3')] }),
      ),
    ],
    quiet: [eachOnce],
  },
  'coil-wired-twice': {
    fires: [
      fires(
        'a coil in parallel with itself',
        'stop',
        'sub.1',
        named({ kind: 'parallel', members: [coil('sub.1'), coil('sub.1')] }),
      ),
    ],
    quiet: [eachOnce],
  },
  'coil-id-twice': {
    fires: [fires('two coils of one name', 'stop', 'sub.1', named(coil('sub.1'), [...coils(), ...coils()]))],
    quiet: [eachOnce],
  },
  'coil-load-unknown': {
    fires: [fires('a coil of 0 ohm', 'stop', 'sub.1', named(both, coils(0)))],
    quiet: [eachOnce],
  },
  'group-too-small': {
    fires: [fires('a series of one', 'stop', 'sub.1', named({ kind: 'series', members: [coil('sub.1')] }))],
    quiet: [eachOnce],
  },
} satisfies RemarkCases;

import type { AmplifierMode } from '../../../lib/audio/load/amplifier-load.ts';
import type { Coil } from '../../../lib/audio/load/coil-wiring.ts';
import { listWirings } from '../../../lib/audio/load/wiring-choice.ts';
import { powerAtLoad } from '../../../lib/audio/rated-power.ts';
import { joinCoils, planned, withTwoCoils } from '../../plan/planned.ts';
import { inJob } from '../../read/problem-case.ts';
import { entry } from '../case.ts';
import { fires, inSmallShop, quiet, type RemarkCases, refused } from '../remark-case.ts';

const stereo: AmplifierMode = { mode: 'stereo', minimumOhm: 2, rated: [{ loadOhm: 4, powerW: 75 }] };
const driven = (loadOhm: number, change: Partial<AmplifierMode> = {}) =>
  refused(() => powerAtLoad('front', loadOhm, { ...stereo, ...change }));
const ratedLoad = quiet('the load that its maker rates', driven(4));

const listed = (count: number) =>
  refused(() =>
    listWirings(
      'bass',
      Array.from({ length: count }, (_, at): Coil => ({ id: `c${at}`, speaker: `s${at}`, nominalOhm: 4 })),
      stereo,
    ),
  );

const asked = (load: string) =>
  inSmallShop(
    inJob('    title: Bass amplifier\n', `    title: Bass amplifier\n    loads: { '1': ${load} }\n`),
  );
/** Two coils of 4 ohm in series, so 8 ohm, on a channel that is asked for a load. */
const inSeries = (load: string) => () =>
  planned((content) => {
    withTwoCoils(content);
    joinCoils(content, 'series');
    entry(content.job.devices, 'amp').loads = { '2': load };
  }).remarks.map(({ remark }) => remark);

/** What an amplifier may drive, by its maker's ratings; loads by Ohm's law. */
export const loadRemarks = {
  'load-unknown': {
    fires: [fires('0 ohm', 'stop', 'front', driven(0))],
    quiet: [ratedLoad],
  },
  'load-below-minimum': {
    fires: [fires('1.99 ohm where 2 ohm is the least', 'stop', 'front', driven(1.99))],
    quiet: [ratedLoad, quiet('the least itself', driven(2))],
  },
  'no-rated-power': {
    fires: [fires('no rating at all', 'stop', 'front', driven(4, { rated: [] }))],
    quiet: [ratedLoad],
  },
  'rated-power-unclear': {
    fires: [fires('0 W into 4 ohm', 'stop', 'front', driven(4, { rated: [{ loadOhm: 4, powerW: 0 }] }))],
    quiet: [ratedLoad],
  },
  'load-not-as-asked': {
    fires: [
      fires('8 ohm for 2 ohm', 'stop', 'amp.2', inSeries('2 ohm'), /is to see 2 ohm, and is wired to 8 ohm/),
    ],
    quiet: [quiet('8 ohm for 8 ohm', inSeries('8 ohm'))],
  },
  'load-not-possible': {
    fires: [fires('3 ohm of one coil of 4 ohm', 'stop', 'amp.1', asked('3 ohm'))],
    quiet: [quiet('4 ohm of it', asked('4 ohm'))],
  },
  'too-many-wirings': {
    fires: [fires('nine coils on a channel', 'stop', 'bass', listed(9))],
    quiet: [quiet('five', listed(5))],
  },
} satisfies RemarkCases;

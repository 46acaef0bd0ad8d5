import { speakerDelays } from '../../../lib/audio/delay.ts';
import { gainTarget } from '../../../lib/audio/gain.ts';
import { type TonePath, testTone } from '../../../lib/audio/test-tone.ts';
import { planned } from '../../plan/planned.ts';
import { inJob } from '../../read/problem-case.ts';
import { entry, partIn } from '../case.ts';
import { asItStands, fires, inSmallShop, quiet, type RemarkCases, refused } from '../remark-case.ts';

const filtered = (text: string) =>
  inSmallShop(
    inJob(
      'CH1: [{ pass: low-pass, type: butterworth, order: 4, corner: 80 Hz }]',
      `CH1: [{ pass: low-pass, ${text} }]`,
    ),
  );

const played = (change: Partial<TonePath>) =>
  refused(() =>
    testTone({
      ...{ channel: 'front', usualHz: 1000, overlapDb: 0, filters: [], peaks: [], lowestDb: 3, nearDb: 0.5 },
      ...change,
    }),
  );
const highPass = (cornerHz: number) => {
  return { pass: 'high-pass', type: 'linkwitz-riley', order: 4, cornerHz } as const;
};
const lowPass = (cornerHz: number) => ({ ...highPass(cornerHz), pass: 'low-pass' }) as const;
const mid = quiet(
  'a band from 80 Hz to 3 kHz, no overlap',
  played({ filters: [highPass(80), lowPass(3000)] }),
);

const gainInto = (loadOhm: number) =>
  refused(() =>
    gainTarget({
      ...{ channel: 'front', loadOhm, powerW: 100, speakersW: 200, overlapDb: 0, pathDb: 0 },
      ...{ ratedSupplyV: 14.4, supplyV: 13.8, regulated: true },
    }),
  );

const delayed = (speakers: readonly (readonly [string, number])[], sampleRateHz = 48_000) =>
  refused(() =>
    speakerDelays({
      speakers: speakers.map(([speaker, distanceM]) => ({ speaker, distanceM })),
      ...{ airC: 20, sampleRateHz },
    }),
  );
const right = ['right', 1.5] as const;
const twoSpeakers = quiet('two speakers at two distances', delayed([['left', 1], right]));

/** A job with a processor, the places of its speakers measured as told. */
const measured =
  (places: Readonly<Record<string, string>>, air = '20 C') =>
  () =>
    planned((content) => {
      Object.assign(partIn(content, 'dsp', 'processor'), { 'sample-rate': '48 kHz' });
      for (const [place, distance] of Object.entries(places))
        Object.assign(entry(content.vehicle.places, place), { distance });
      content.shop.rules = { ...content.shop.rules, 'air-temperature': air };
    }).remarks.map(({ remark }) => remark);
const bothPlaces = { door: '1 m', boot: '1.7 m' };

/** Filters, gain and delays. */
export const levelRemarks = {
  'filter-order-not-made': {
    fires: [
      // Linkwitz 1976: two equal Butterworth filters in a row, so the order is even.
      fires(
        'a Linkwitz-Riley filter of third order',
        'stop',
        'amp.CH1',
        filtered('type: linkwitz-riley, order: 3, corner: 80 Hz'),
      ),
    ],
    quiet: [quiet('one of fourth', filtered('type: linkwitz-riley, order: 4, corner: 80 Hz'))],
  },
  'filter-corner-unclear': {
    fires: [fires('a corner of 0 Hz', 'stop', 'amp.CH1', filtered('type: bessel, order: 4, corner: 0 Hz'))],
    quiet: [quiet('one of 80 Hz', filtered('type: bessel, order: 4, corner: 80 Hz'))],
  },
  'band-empty': {
    fires: [
      fires('from 80 Hz up to 60 Hz', 'stop', 'front', played({ filters: [highPass(80), lowPass(60)] })),
    ],
    quiet: [mid],
  },
  'tone-not-played': {
    fires: [
      fires(
        'a path from 3.5 kHz behind a source up to 200 Hz',
        'stop',
        'front',
        played({ filters: [highPass(3500)], sourceHz: { from: 20, to: 200 } }),
      ),
    ],
    quiet: [mid, quiet('the same behind a full one', played({ filters: [highPass(3500)] }))],
  },
  'overlap-unclear': {
    fires: [fires('an overlap of -1 dB', 'stop', 'front', played({ overlapDb: -1 }))],
    quiet: [mid],
  },
  'gain-unclear': {
    fires: [fires('a load of 0 ohm', 'stop', 'front', gainInto(0))],
    quiet: [quiet('4 ohm', gainInto(4))],
  },
  'speaker-not-measured': {
    fires: [fires('one of two places', 'note', 'sub', measured({ door: '1 m' }))],
    quiet: [
      quiet('both places', measured(bothPlaces)),
      quiet('neither: nothing is delayed', measured({})),
      asItStands,
    ],
  },
  'distance-unclear': {
    fires: [
      fires(
        '1 m behind the listener, as a length below zero',
        'stop',
        'left',
        delayed([['left', -1], right]),
      ),
    ],
    quiet: [twoSpeakers],
  },
  'speaker-twice': {
    fires: [fires('one speaker at two distances', 'stop', 'right', delayed([right, right]))],
    quiet: [twoSpeakers],
  },
  'sample-rate-unclear': {
    fires: [fires('0 Hz', 'stop', '', delayed([right], 0))],
    quiet: [twoSpeakers],
  },
  'air-temperature-unlikely': {
    fires: [fires('200 C', 'stop', 'dsp', measured(bothPlaces, '200 C'))],
    quiet: [quiet('20 C', measured(bothPlaces))],
  },
} satisfies RemarkCases;

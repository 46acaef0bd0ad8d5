import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  type ChannelCircuit,
  type CoilTerminals,
  channelWiring,
  coilsWithoutChannel,
} from '../../../lib/audio/load/channel-wiring.ts';
import { coilsOf, wiringText } from '../../../lib/audio/load/coil-wiring.ts';
import { wiringLoad } from '../../../lib/audio/load/loads.ts';
import { isFault } from '../../../lib/model/fault.ts';
import { outsideCheck } from '../../outside-check.ts';
import { real, type Spice, startSpice } from '../spice.ts';

const inSpice = outsideCheck('coils-in-ngspice');

let spice: Spice;
beforeAll(async () => {
  spice = await startSpice();
});

function coil(id: string, speaker = id): CoilTerminals {
  return { coil: id, speaker, positive: `${id}+`, negative: `${id}-` };
}

function circuit(
  coils: readonly CoilTerminals[],
  joins: readonly (readonly [string, string])[],
): ChannelCircuit {
  return {
    channel: 'bass',
    positive: 'amp+',
    negative: 'amp-',
    otherOutputs: ['amp2+', 'amp2-'],
    coils,
    joins,
  };
}

function read(coils: readonly CoilTerminals[], joins: readonly (readonly [string, string])[]) {
  const found = channelWiring(circuit(coils, joins));
  return isFault(found)
    ? { fault: found.fault }
    : {
        text: wiringText(found.wiring),
        reversed: found.polarity.filter((one) => one.polarity === 'reversed').map((one) => one.coil),
      };
}

const [a, b] = [coil('a', 'sub'), coil('b', 'sub')];

describe('the wiring of a channel, read out of its links', () => {
  it('finds parallel and series coils, and which way round each is', () => {
    expect(
      read(
        [a, b],
        [
          ['amp+', 'a+'],
          ['a+', 'b+'],
          ['a-', 'b-'],
          ['b-', 'amp-'],
        ],
      ),
    ).toEqual({
      text: 'parallel(a, b)',
      reversed: [],
    });
    expect(
      read(
        [a, b],
        [
          ['amp+', 'a+'],
          ['a-', 'b+'],
          ['b-', 'amp-'],
        ],
      ),
    ).toEqual({
      text: 'series(a, b)',
      reversed: [],
    });
    expect(
      read(
        [a, b],
        [
          ['amp+', 'a+'],
          ['a-', 'b-'],
          ['b+', 'amp-'],
        ],
      ),
    ).toEqual({
      text: 'series(a, b)',
      reversed: ['b'],
    });
  });

  it('leaves coils of other channels aside', () => {
    const joins = [
      ['amp+', 'a+'],
      ['a-', 'amp-'],
      ['amp2+', 'b+'],
      ['amp2-', 'b-'],
    ] as const;
    expect(read([a, b], joins)).toEqual({ text: 'a', reversed: [] });
  });

  it.each([
    ['channel-without-speaker', [['amp2+', 'a+']]],
    [
      'channel-shorted',
      [
        ['amp+', 'a+'],
        ['a+', 'amp-'],
      ],
    ],
    [
      'channels-joined',
      [
        ['amp+', 'a+'],
        ['a-', 'amp2-'],
        ['amp-', 'a-'],
      ],
    ],
    [
      'coil-shorted',
      [
        ['amp+', 'a+'],
        ['a+', 'a-'],
        ['amp+', 'b+'],
        ['b-', 'amp-'],
      ],
    ],
    [
      'coil-left-open',
      [
        ['amp+', 'a+'],
        ['a-', 'amp-'],
        ['amp+', 'b+'],
      ],
    ],
    ['coil-left-open', [['amp+', 'a+']]],
  ] as const)('%s is named', (fault, joins) => {
    expect(read([a, b], joins)).toEqual({ fault });
  });

  it('names coils that form a bridge between two branches', () => {
    const five = ['a', 'b', 'c', 'd', 'e'].map((id) => coil(id));
    const joins = [
      ['amp+', 'a+'],
      ['amp+', 'b+'],
      ['a-', 'c+'],
      ['b-', 'd+'],
      ['c-', 'amp-'],
      ['d-', 'amp-'],
      ['e+', 'a-'],
      ['e-', 'b-'],
    ] as const;
    const found = channelWiring(circuit(five, joins));
    expect(found).toMatchObject({
      fault: 'wiring-not-series-parallel',
      of: ['bass', 'a', 'b', 'c', 'd', 'e'],
    });
  });

  it('gives the load that ngspice gives, for whatever coils between random points can be read', async () => {
    const points = ['amp+', 'amp-', 'p', 'q', 'r'];
    const end = fc.constantFrom(...points);
    const placed = fc.array(fc.tuple(end, end, fc.constantFrom(1, 2, 4, 8)), { minLength: 2, maxLength: 7 });
    let compared = 0;
    await fc.assert(
      fc.asyncProperty(placed, async (placings) => {
        const coils = placings.map((_, index) => coil(`c${index}`));
        const joins = placings.flatMap(([from, to], index) => [
          [from, `c${index}+`] as const,
          [to, `c${index}-`] as const,
        ]);
        const found = channelWiring(circuit(coils, joins));
        if (isFault(found)) return;
        const used = new Set(coilsOf(found.wiring));
        const load = wiringLoad(
          'bass',
          found.wiring,
          placings
            .map(([, , nominalOhm], index) => ({ id: `c${index}`, speaker: `c${index}`, nominalOhm }))
            .filter(({ id }) => used.has(id)),
        );
        if (isFault(load)) throw new Error(load.message);
        const node = (point: string) => (point === 'amp-' ? '0' : point === 'amp+' ? 'top' : point);
        const lines = placings.flatMap(([from, to, ohm], index) =>
          used.has(`c${index}`) ? [`r${index} ${node(from)} ${node(to)} ${ohm}`] : [],
        );
        const point = await spice(['i1 0 top 1', ...lines, '.op']);
        const outside = real(point, 'v(top)');
        expect(inSpice.differs(load.loadOhm.value, outside)).toBeCloseTo(outside, 6);
        compared += 1;
      }),
      { seed: 11, numRuns: 600 },
    );
    expect(compared).toBeGreaterThan(40);
  });
});

describe('what is on no channel', () => {
  it('is a speaker, or a coil of a speaker that is driven', () => {
    const coils = [a, b, coil('c')];
    expect(coilsWithoutChannel(coils, new Set(['a', 'b', 'c']))).toEqual([]);
    expect(coilsWithoutChannel(coils, new Set(['a']))).toMatchObject([
      { fault: 'coil-left-open', of: ['sub', 'b'] },
      { fault: 'speaker-without-channel', of: ['c'] },
    ]);
  });
});

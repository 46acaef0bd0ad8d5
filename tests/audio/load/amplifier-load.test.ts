import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AmplifierMode, channelLoad } from '../../../lib/audio/load/amplifier-load.ts';
import { wiringLoad } from '../../../lib/audio/load/loads.ts';
import { type PowerAtLoad, powerAtLoad } from '../../../lib/audio/rated-power.ts';
import { isFault } from '../../../lib/model/fault.ts';
import { outsideCheck } from '../../outside-check.ts';
import { wireBySpeaker } from './wire-by-speaker.ts';

const byHand = outsideCheck('audio-by-hand');

const stereo: AmplifierMode = {
  mode: 'stereo',
  minimumOhm: 2,
  rated: [
    { loadOhm: 4, powerW: 75 },
    { loadOhm: 2, powerW: 120 },
  ],
};

/** Each output of the pair as above, with half of the load. */
const bridged: AmplifierMode = {
  mode: 'bridged',
  minimumOhm: 4,
  rated: [
    { loadOhm: 4, powerW: 240 },
    { loadOhm: 8, powerW: 150 },
  ],
};

function power(loadOhm: number, amplifier = stereo): PowerAtLoad {
  const found = powerAtLoad('front', loadOhm, amplifier);
  if (isFault(found)) throw new Error(found.message);
  return found;
}

describe('power at a load', () => {
  it('is the published one at a published load', () => {
    expect(power(2)).toMatchObject({
      basis: 'rated',
      powerW: { value: 120 },
      greatestPowerW: { value: 120 },
    });
    expect(power(4).powerW.trace.mark).toBeUndefined();
  });

  // Worked by hand: 75 W at 4 ohm is 17.32 V and 4.330 A; 120 W at 2 ohm is 15.49 V and 7.746 A.
  // At 3 ohm for sure the greater of 15.49^2 / 3 = 80 W and 4.330^2 * 3 = 56.25 W;
  // at most the lesser of 17.32^2 / 3 = 100 W and 7.746^2 * 3 = 180 W.
  it('is bounded on both sides between published loads', () => {
    const at = power(3);
    expect(at.basis).toBe('between');
    expect(byHand.differs(at.powerW.value, 80)).toBeCloseTo(80, 9);
    expect(byHand.differs(at.greatestPowerW.value, 100)).toBeCloseTo(100, 9);
    expect(at.powerW.trace.mark).toBe('cp');
  });

  it('never exceeds the published power above the highest published load', () => {
    expect(power(8)).toMatchObject({
      basis: 'beyond',
      powerW: { value: 37.5 },
      greatestPowerW: { value: 75 },
    });
  });

  it('is not raised below the lowest published load', () => {
    const at = power(1, { ...stereo, minimumOhm: 1 });
    expect(at.powerW.value).toBe(60);
    expect(at.greatestPowerW.value).toBe(240);
  });

  it('keeps its lower bound below its upper one, and both within what the neighbours allow', () => {
    const line = fc.record({
      loadOhm: fc.constantFrom(1, 2, 4, 8),
      powerW: fc.double({ min: 10, max: 2000, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.uniqueArray(line, { minLength: 1, maxLength: 4, selector: (entry) => entry.loadOhm }),
        fc.double({ min: 0.5, max: 16, noNaN: true }),
        (rated, loadOhm) => {
          const at = power(loadOhm, { mode: 'stereo', minimumOhm: 0.5, rated });
          expect(at.powerW.value).toBeLessThanOrEqual(at.greatestPowerW.value * (1 + 1e-9));
          expect(at.powerW.value).toBeLessThanOrEqual(
            Math.max(...rated.map((entry) => entry.powerW)) * (1 + 1e-9),
          );
        },
      ),
    );
  });

  it.each([
    ['load-below-minimum', 1.33, stereo],
    ['load-unknown', 0, stereo],
    ['no-rated-power', 4, { ...stereo, rated: [] }],
    [
      'rated-power-unclear',
      4,
      {
        ...stereo,
        rated: [
          { loadOhm: 4, powerW: 75 },
          { loadOhm: 4, powerW: 80 },
        ],
      },
    ],
    ['rated-power-unclear', 4, { ...stereo, rated: [{ loadOhm: 4, powerW: 0 }] }],
  ] as const)('%s is named', (name, loadOhm, amplifier) => {
    expect(powerAtLoad('front', loadOhm, amplifier)).toMatchObject({ fault: name, of: ['front'] });
  });
});

describe('a channel against its amplifier', () => {
  const coils = [
    { id: 'sub.1', speaker: 'sub', nominalOhm: 4 },
    { id: 'sub.2', speaker: 'sub', nominalOhm: 4 },
  ];
  const loadOf = (how: 'series' | 'parallel') => {
    const load = wiringLoad('bass', wireBySpeaker(coils, { coils: how, speakers: how }), coils);
    if (isFault(load)) throw new Error(load.message);
    return load;
  };

  it('may drive its minimum exactly, and divides the power', () => {
    const channel = channelLoad('bass', loadOf('parallel'), stereo);
    expect(channel.mayDrive).toBe(true);
    expect(channel.coils.map((coil) => coil.powerW.value)).toEqual([60, 60]);
  });

  it('gives no power to a bridged load that each output sees as too low', () => {
    const channel = channelLoad('bass', loadOf('parallel'), bridged);
    expect(channel).toMatchObject({ mayDrive: false, outputLoadOhm: { value: 1 }, coils: [] });
    expect(channel.power).toMatchObject({ fault: 'load-below-minimum' });
  });

  it('drives the same coils in series', () => {
    const channel = channelLoad('bass', loadOf('series'), bridged);
    expect(channel).toMatchObject({ mayDrive: true, outputLoadOhm: { value: 4 } });
    expect(channel.coils.map((coil) => coil.powerW.value)).toEqual([75, 75]);
  });
});

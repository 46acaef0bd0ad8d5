import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  levelDifferences,
  type SpeakerRun,
  speakerWireLoss,
} from '../../../lib/audio/load/speaker-wire-loss.ts';
import { isFault } from '../../../lib/model/fault.ts';
import { outsideCheck } from '../../outside-check.ts';
import { complex, type Spice, startSpice } from '../spice.ts';

const inSpice = outsideCheck('speaker-wire-in-ngspice');

let spice: Spice;
beforeAll(async () => {
  spice = await startSpice();
});

/** 12 AWG: 1.588 ohm per 1000 ft at 20 C (copper-wire-awg.csv of the reference figures). */
const awg12 = 1.588 / 304.8;
const bass: SpeakerRun = { channel: 'bass', loadOhm: 2, legs: [{ lengthM: 5, ohmPerM: awg12 }] };

function loss(run: SpeakerRun) {
  const found = speakerWireLoss(run);
  if (isFault(found)) throw new Error(found.message);
  return found;
}

describe('loss in a speaker wire', () => {
  // By hand: 10 m of conductor at 5.210 mohm/m is 52.1 mohm; 20 log10(2.0521 / 2) = 0.223 dB; 2.54 % of the
  // power.
  it('of 5 m of 12 AWG at 2 ohm is 0.223 dB', () => {
    const found = loss(bass);
    expect(found.wireOhm.value).toBeCloseTo(0.0521, 5);
    expect(found.lossDb.value).toBeCloseTo(0.2234, 3);
    expect(found.lostShare.value).toBeCloseTo(0.02539, 4);
  });

  it('is what ngspice finds at the speaker, over legs of different size', async () => {
    const legs = fc.array(
      fc.record({
        lengthM: fc.double({ min: 0.1, max: 12, noNaN: true }),
        ohmPerM: fc.double({ min: 0.001, max: 0.09, noNaN: true }),
      }),
      { minLength: 1, maxLength: 3 },
    );
    await fc.assert(
      fc.asyncProperty(legs, fc.constantFrom(1, 2, 4, 8), async (some, loadOhm) => {
        const conductors = some.flatMap(({ lengthM, ohmPerM }, index) => [
          `rp${index} p${index} p${index + 1} ${lengthM * ohmPerM}`,
          `rm${index} m${index} m${index + 1} ${lengthM * ohmPerM}`,
        ]);
        const netlist = [
          'vamp p0 m0 dc 0 ac 1',
          'rgnd m0 0 1',
          ...conductors,
          `rspk p${some.length} m${some.length} ${loadOhm}`,
          `espk out 0 p${some.length} m${some.length} 1`,
          'rout out 0 1',
          '.ac lin 1 50 50',
        ];
        const [volts] = complex(await spice(netlist), 'v(out)');
        const found = loss({ channel: 'front', loadOhm, legs: some });
        const outsideDb = -20 * Math.log10(volts?.real ?? 0);
        expect(inSpice.differs(found.lossDb.value, outsideDb)).toBeCloseTo(outsideDb, 6);
      }),
      { seed: 3, numRuns: 40 },
    );
  });

  it('grows with length and falls with load', () => {
    const longer = { ...bass, legs: [...bass.legs, { lengthM: 1, ohmPerM: awg12 }] };
    expect(loss(longer).lossDb.value).toBeGreaterThan(loss(bass).lossDb.value);
    expect(loss({ ...bass, loadOhm: 4 }).lossDb.value).toBeLessThan(loss(bass).lossDb.value);
  });
});

describe('damping at the terminals', () => {
  // By hand: factor 200 at 4 ohm is 20 mohm; with 52.1 mohm of wire, 2 / 0.0721 = 27.7; bridged 2 / 0.0921 =
  // 21.7.
  it('counts the amplifier and the wire, twice the amplifier when bridged', () => {
    const amplifierDamping = { factor: 200, atOhm: 4 };
    expect(loss({ ...bass, amplifierDamping }).damping?.value).toBeCloseTo(27.74, 2);
    expect(loss({ ...bass, amplifierDamping, bridged: true }).damping?.value).toBeCloseTo(21.72, 2);
  });

  it('says that it is assumed where the part is silent', () => {
    expect(loss(bass).damping?.trace).toMatchObject({ origin: 'assumed', mark: 'cp' });
    expect(loss({ ...bass, legs: [] }).damping).toBeNull();
  });
});

describe('level differences', () => {
  it('are counted from the loudest path', () => {
    const paths = [
      { path: 'left', lossDb: 0.2 },
      { path: 'right', lossDb: 0.5 },
      { path: 'sub', lossDb: 0.1, otherDb: 3 },
    ];
    const below = levelDifferences(paths).map(({ belowDb }) => belowDb.value);
    expect(below).toEqual([expect.closeTo(3.1, 9), expect.closeTo(3.4, 9), 0]);
    expect(levelDifferences([])).toEqual([]);
  });
});

describe('a run that is not clear', () => {
  it.each([
    { ...bass, loadOhm: 0 },
    { ...bass, legs: [{ lengthM: -1, ohmPerM: awg12 }] },
    { ...bass, legs: [{ lengthM: 1, ohmPerM: Number.NaN }] },
    { ...bass, amplifierDamping: { factor: 0, atOhm: 4 } },
  ])('is named: %o', (run) => {
    expect(speakerWireLoss(run)).toMatchObject({ fault: 'speaker-run-unclear', of: ['bass'] });
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AmplifierMode } from '../../../lib/audio/load/amplifier-load.ts';
import { enumerateNetworks } from '../../../lib/audio/load/coil-networks.ts';
import { type Coil, coilsOf } from '../../../lib/audio/load/coil-wiring.ts';
import { wiringLoad } from '../../../lib/audio/load/loads.ts';
import {
  listWirings,
  type WiringChoice,
  wiringChoice,
  wiringsForLoad,
} from '../../../lib/audio/load/wiring-choice.ts';
import { isFault } from '../../../lib/model/fault.ts';
import { wiredCoils } from './arbitrary-wiring.ts';

const bass: AmplifierMode = {
  mode: 'stereo',
  minimumOhm: 1,
  rated: [
    { loadOhm: 4, powerW: 400 },
    { loadOhm: 2, powerW: 700 },
    { loadOhm: 1, powerW: 1000 },
  ],
};

function dualCoil(speakers: number, nominalOhm: number): Coil[] {
  return Array.from({ length: 2 * speakers }, (_, index) => {
    const speaker = `sub-${Math.floor(index / 2) + 1}`;
    return { id: `${speaker}.${(index % 2) + 1}`, speaker, nominalOhm };
  });
}

function listed(coils: readonly Coil[]): readonly WiringChoice[] {
  const choices = listWirings('bass', coils, bass);
  if (isFault(choices)) throw new Error(choices.message);
  return choices.map((one) => wiringChoice('bass', one, coils, bass));
}

describe('the ways of wiring a set of coils', () => {
  // Number of series-parallel networks of n equal elements: OEIS A000084 (MacMahon 1892).
  it.each([
    [1, 1],
    [2, 2],
    [3, 4],
    [4, 10],
    [5, 24],
    [6, 66],
    [7, 180],
    [8, 522],
  ])('of %i equal coils are %i', (coils, ways) => {
    expect(enumerateNetworks([coils], 2000)).toHaveLength(ways);
  });

  // The same with every element different: OEIS A006351.
  it.each([
    [2, 2],
    [3, 8],
    [4, 52],
    [5, 472],
  ])('of %i different coils are %i', (coils, ways) => {
    expect(enumerateNetworks(Array(coils).fill(1), 2000)).toHaveLength(ways);
  });

  it('lists none twice, and each one wires each coil once', () => {
    fc.assert(
      fc.property(
        wiredCoils.filter(({ coils }) => coils.length < 6),
        ({ coils }) => {
          const choices = listed(coils);
          expect(new Set(choices.map((choice) => choice.text)).size).toBe(choices.length);
          for (const { wiring } of choices)
            expect(coilsOf(wiring).toSorted()).toEqual(coils.map((coil) => coil.id).toSorted());
        },
      ),
      { numRuns: 30 },
    );
  });

  it('contains the load of any wiring made at random', () => {
    fc.assert(
      fc.property(
        wiredCoils.filter(({ coils }) => coils.length < 6),
        ({ coils, wiring }) => {
          const load = wiringLoad('bass', wiring, coils);
          if (isFault(load)) throw new Error(load.message);
          const ohm = load.loadOhm.value;
          expect(listed(coils).some((choice) => Math.abs(choice.loadOhm.value - ohm) < 1e-9 * ohm)).toBe(
            true,
          );
        },
      ),
      { numRuns: 30 },
    );
  });

  it('are ranked by the very numbers that their workings give, stereo and bridged', () => {
    const bridged: AmplifierMode = { mode: 'bridged', minimumOhm: 2, rated: [{ loadOhm: 4, powerW: 800 }] };
    fc.assert(
      fc.property(
        wiredCoils.filter(({ coils }) => coils.length < 6),
        fc.constantFrom(bass, bridged),
        ({ coils }, amplifier) => {
          const ranked = listWirings('bass', coils, amplifier);
          if (isFault(ranked)) throw new Error(ranked.message);
          for (const one of ranked) {
            const { loadOhm, mayDrive, power, coils: each } = wiringChoice('bass', one, coils, amplifier);
            const powerW = isFault(power) ? null : power.powerW.value;
            expect([one.loadOhm, one.mayDrive, one.powerW]).toEqual([loadOhm.value, mayDrive, powerW]);
            const ofCoils = each.map((coil) => coil.powerW.value);
            if (ofCoils.length > 0)
              expect(Math.max(...ofCoils) / Math.min(...ofCoils)).toBeCloseTo(one.unevenness, 9);
          }
        },
      ),
      { numRuns: 30 },
    );
  });

  it('puts what the amplifier drives first, the most power first, and keeps a speaker together', () => {
    const choices = listed(dualCoil(2, 4));
    expect(choices[0]).toMatchObject({ mayDrive: true, loadOhm: { value: 1 }, unevenness: 1 });
    expect(choices.map((choice) => choice.text)).toContain(
      'parallel(series(sub-1.1, sub-1.2), series(sub-2.1, sub-2.2))',
    );
    const allDriven = choices.map((choice) => choice.mayDrive);
    expect(allDriven.indexOf(false)).toBe(-1);
  });

  // By hand: three coils of 4 ohm give 4/3 and 12 ohm with the same power in each, 8/3 and 6 ohm with the fourfold in one.
  it('puts the ways with the same power in every coil before the others, however much these take', () => {
    const loads = listed(dualCoil(2, 4).slice(0, 3)).map(({ loadOhm }) => loadOhm.value);
    expect(loads).toEqual([4 / 3, 12, 8 / 3, 6].map((ohm) => expect.closeTo(ohm, 9)));
  });

  it('marks what the amplifier may not drive, and gives it no power', () => {
    const choices = listed(dualCoil(2, 2));
    const tooLow = choices.filter((choice) => choice.loadOhm.value < 1);
    expect(tooLow.map((choice) => choice.loadOhm.value)).toEqual(
      [0.8, 0.5].map((ohm) => expect.closeTo(ohm, 9)),
    );
    for (const choice of tooLow) expect(choice).toMatchObject({ mayDrive: false, coils: [] });
    expect(choices.slice(-tooLow.length)).toEqual(tooLow);
  });

  it('shows where coils get unequal power', () => {
    const three = dualCoil(2, 4).slice(0, 3);
    const mixed = listed(three).find((choice) => choice.loadOhm.value === 6);
    expect(mixed?.unevenness).toBeCloseTo(4, 9);
  });
});

describe('a load that is asked for', () => {
  it('is found where it can be had', () => {
    const choices = wiringsForLoad('bass', dualCoil(1, 4), bass, 2);
    expect(choices).toMatchObject([{ text: 'parallel(sub-1.1, sub-1.2)' }]);
  });

  it('is refused with what can be had instead', () => {
    const fault = wiringsForLoad('bass', dualCoil(1, 4), bass, 4);
    expect(fault).toMatchObject({ fault: 'load-not-possible' });
    expect(isFault(fault) && fault.message).toContain('what can be had is 2, 8 ohm');
    const single = wiringsForLoad('bass', dualCoil(1, 4).slice(1), bass, 2);
    expect(isFault(single) && single.message).toBe(
      "the coil of channel bass can't be wired to 2 ohm; what can be had is 4 ohm",
    );
  });

  it('needs coils, and not too many', () => {
    expect(listWirings('bass', [], bass)).toMatchObject({ fault: 'channel-without-speaker' });
    const unknown = dualCoil(1, 4).map((coil) => ({ ...coil, nominalOhm: 0 }));
    expect(listWirings('bass', unknown, bass)).toMatchObject({ fault: 'coil-load-unknown' });
    expect(listWirings('bass', dualCoil(5, 4), bass)).toMatchObject({ fault: 'too-many-wirings' });
    const different = dualCoil(4, 4).map((coil, index) => ({ ...coil, nominalOhm: index + 1 }));
    expect(listWirings('bass', different, bass)).toMatchObject({ fault: 'too-many-wirings' });
  });
});

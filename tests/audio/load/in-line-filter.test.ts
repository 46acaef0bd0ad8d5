import { beforeAll, describe, expect, it } from 'vitest';
import type { Coil, Wiring } from '../../../lib/audio/load/coil-wiring.ts';
import { isLeastEnough, leastLoad } from '../../../lib/audio/load/in-line-filter.ts';
import { wiringLoad } from '../../../lib/audio/load/loads.ts';
import { isFault } from '../../../lib/model/fault.ts';
import { outsideCheck } from '../../outside-check.ts';
import { complex, type Spice, startSpice } from '../spice.ts';

const inSpice = outsideCheck('lead-filter-in-ngspice');

let spice: Spice;
beforeAll(async () => {
  spice = await startSpice();
});

const woofer: Coil = { id: 'woofer', speaker: 'woofer', nominalOhm: 4, dcOhm: 3.3, inductanceH: 0.35e-3 };
const filter = (order: number, fromHz = 4000): Coil => ({
  id: 'filter',
  speaker: 'filter',
  nominalOhm: 4,
  inLine: { fromHz, order },
});
const beside: Wiring = {
  kind: 'parallel',
  members: [
    { kind: 'coil', coil: 'woofer' },
    { kind: 'coil', coil: 'filter' },
  ],
};

/** The least modulus of a network at `top`, 2,000 points a decade, in ngspice. */
async function leastInSpice(network: readonly string[]): Promise<number> {
  const seen = complex(
    await spice(['i1 0 top dc 0 ac 1', 'rbig top 0 1e9', ...network, '.ac dec 2000 20 20000']),
    'v(top)',
  );
  return Math.min(...seen.map(({ real, img }) => Math.hypot(real, img)));
}

// What a capacitor and a coil of a second-order crossover are for 3.2 ohm at 4 kHz: C = 1 / (2 pi f R sqrt(2)), L = R sqrt(2) / (2 pi f).
const corner = 2 * Math.PI * 4000;
const tweeterOhm = 3.2;

describe('a filter in the lead of one speaker', () => {
  it.each([
    ['a capacitor', 1, [`c1 top t ${1 / (corner * tweeterOhm)}`, `r2 t 0 ${tweeterOhm}`]],
    [
      'a capacitor and a coil',
      2,
      [
        `c1 top t ${1 / (corner * tweeterOhm * Math.SQRT2)}`,
        `l2 t 0 ${(tweeterOhm * Math.SQRT2) / corner}`,
        `r2 t 0 ${tweeterOhm}`,
      ],
    ],
  ])('beside a woofer: its least load is that of ngspice, %s', async (_, order, lead) => {
    const { ohm } = leastLoad(beside, [woofer, filter(order)]);
    const outside = await leastInSpice(['r1 top w 3.3', 'l1 w 0 0.35e-3', ...lead]);
    expect(inSpice.differs(ohm.value, outside)).toBeCloseTo(outside, 3);
  });

  it('is as low as both in parallel where the woofer brings no inductance', async () => {
    const { inductanceH: _, ...bare } = woofer;
    const { ohm, atHz } = leastLoad(beside, [bare, filter(1)]);
    const outside = await leastInSpice([
      'r1 top 0 3.3',
      `c1 top t ${1 / (corner * tweeterOhm)}`,
      `r2 t 0 ${tweeterOhm}`,
    ]);
    expect(inSpice.differs(ohm.value, outside)).toBeCloseTo(outside, 3);
    expect(atHz).toBeCloseTo(20_000);
    expect(isLeastEnough(ohm.value, 2)).toBe(true);
    expect(isLeastEnough(ohm.value, 4)).toBe(false);
  });

  // Ohm's law at one voltage: 60 W in 4 ohm are 40 W in 6.
  it('leaves load and power of the channel to the woofer, and has what the same voltage drives through it', () => {
    const load = wiringLoad('front', beside, [woofer, { ...filter(1), nominalOhm: 6 }]);
    if (isFault(load)) throw new Error(load.message);
    expect(load.loadOhm.value).toBe(4);
    expect(load.shares.map(({ coil, share }) => [coil, Number(share.toFixed(4))])).toEqual([
      ['woofer', 1],
      ['filter', 0.6667],
    ]);
  });

  it('is the load of a channel that it has to itself', () => {
    const load = wiringLoad('front', { kind: 'coil', coil: 'filter' }, [filter(1)]);
    if (isFault(load)) throw new Error(load.message);
    expect(load.loadOhm.value).toBe(4);
  });
});

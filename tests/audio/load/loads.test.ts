import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Coil, type Wiring, wiringText } from '../../../lib/audio/load/coil-wiring.ts';
import { type WiringLoad, wiringLoad } from '../../../lib/audio/load/loads.ts';
import { type Fault, isFault } from '../../../lib/model/fault.ts';
import { real, type Spice, startSpice } from '../spice.ts';
import { wiredCoils } from './arbitrary-wiring.ts';
import { wireBySpeaker } from './wire-by-speaker.ts';

let spice: Spice;
beforeAll(async () => {
  spice = await startSpice();
});

function loaded(wiring: Wiring | null, coils: readonly Coil[]): WiringLoad {
  const load = wiringLoad('front', wiring, coils);
  if (isFault(load)) throw new Error(load.message);
  return load;
}

function faultOf(result: WiringLoad | Fault): string {
  return isFault(result) ? result.fault : 'none';
}

/** The wiring as resistors between two nodes. */
function netlist(wiring: Wiring, from: string, to: string, coils: readonly Coil[], path = 'n'): string[] {
  if (wiring.kind === 'coil')
    return [`r${wiring.coil} ${from} ${to} ${coils.find((coil) => coil.id === wiring.coil)?.nominalOhm}`];
  const last = wiring.members.length - 1;
  return wiring.members.flatMap((member, index) =>
    wiring.kind === 'parallel'
      ? netlist(member, from, to, coils, `${path}${index}`)
      : netlist(
          member,
          index === 0 ? from : `${path}x${index}`,
          index === last ? to : `${path}x${index + 1}`,
          coils,
          `${path}${index}`,
        ),
  );
}

const dual = (speaker: string, nominalOhm: number): Coil[] => [
  { id: `${speaker}.1`, speaker, nominalOhm },
  { id: `${speaker}.2`, speaker, nominalOhm },
];

describe('load of a wiring', () => {
  it('agrees with ngspice for random mixed wirings, load and power of each coil', async () => {
    await fc.assert(
      fc.asyncProperty(wiredCoils, async ({ coils, wiring }) => {
        const load = loaded(wiring, coils);
        const names = coils.map((coil) => `@r${coil.id}[p]`);
        const point = await spice([
          'i1 0 top 1',
          ...netlist(wiring, 'top', '0', coils),
          `.save v(top) ${names.join(' ')}`,
          '.op',
        ]);
        const volts = real(point, 'v(top)');
        expect(load.loadOhm.value).toBeCloseTo(volts, 6);
        for (const { coil, share } of load.shares)
          expect(share * volts).toBeCloseTo(real(point, `@r${coil}[p]`), 6);
      }),
      { seed: 5, numRuns: 60 },
    );
  });

  it('gives the loads that every installer knows of two dual 4 ohm speakers', () => {
    const coils = [...dual('a', 4), ...dual('b', 4)];
    const ohm = (inner: 'series' | 'parallel', outer: 'series' | 'parallel') =>
      loaded(wireBySpeaker(coils, { coils: inner, speakers: outer }), coils).loadOhm.value;
    expect(ohm('parallel', 'parallel')).toBe(1);
    expect(ohm('series', 'parallel')).toBe(4);
    expect(ohm('parallel', 'series')).toBe(4);
    expect(ohm('series', 'series')).toBe(16);
  });

  it('falls when a coil is added in parallel and rises when it is added in series', () => {
    fc.assert(
      fc.property(wiredCoils, fc.constantFrom(1, 2, 4, 8), ({ coils, wiring }, nominalOhm) => {
        const more = [...coils, { id: 'more', speaker: 'more', nominalOhm }];
        const before = loaded(wiring, coils).loadOhm.value;
        const withMore = (kind: 'series' | 'parallel') =>
          loaded({ kind, members: [wiring, { kind: 'coil', coil: 'more' }] }, more).loadOhm.value;
        expect(withMore('parallel')).toBeLessThan(before);
        expect(withMore('series')).toBeGreaterThan(before);
      }),
    );
  });

  it('shares out all of the power, and none twice', () => {
    fc.assert(
      fc.property(wiredCoils, ({ coils, wiring }) => {
        const shares = loaded(wiring, coils).shares;
        expect(shares.map((share) => share.coil).toSorted()).toEqual(coils.map((coil) => coil.id).toSorted());
        expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('carries its working', () => {
    const coils = dual('sub', 4);
    const { trace } = loaded(wireBySpeaker(coils, { coils: 'parallel', speakers: 'series' }), coils).loadOhm;
    expect(trace.formula).toContain('parallel(sub.1, sub.2)');
    expect(trace.inputs.map(({ name, value, unit }) => `${name}=${value} ${unit}`)).toEqual([
      'sub.1=4 ohm',
      'sub.2=4 ohm',
    ]);
  });
});

describe('coils that cannot be wired as asked', () => {
  const coils = dual('sub', 4);
  const coil = (id: string): Wiring => ({ kind: 'coil', coil: id });
  const cases: readonly [string, Wiring | null, readonly Coil[]][] = [
    ['channel-without-speaker', null, coils],
    ['channel-without-speaker', coil('sub.1'), []],
    ['coil-left-open', coil('sub.1'), coils],
    ['coil-unknown', { kind: 'series', members: [coil('sub.1'), coil('sub.3')] }, coils],
    ['coil-wired-twice', { kind: 'parallel', members: [coil('sub.1'), coil('sub.1')] }, coils],
    ['group-too-small', { kind: 'series', members: [coil('sub.1')] }, coils],
    ['group-too-small', { kind: 'series', members: [] }, coils],
    ['coil-id-twice', coil('sub.1'), [...coils, ...coils]],
    ['coil-load-unknown', coil('sub.1'), dual('sub', 0)],
    ['coil-load-unknown', coil('sub.1'), dual('sub', Number.NaN)],
  ];
  it.each(cases)('%s', (name, wiring, on) => {
    expect(faultOf(wiringLoad('bass', wiring, on))).toBe(name);
  });

  it('names the coil and the channel', () => {
    const fault = wiringLoad('bass', coil('sub.1'), coils);
    expect(isFault(fault) && fault.message).toContain('channel bass leaves sub.2 open');
    expect(wiringText({ kind: 'series', members: [coil('a'), coil('b')] })).toBe('series(a, b)');
  });
});

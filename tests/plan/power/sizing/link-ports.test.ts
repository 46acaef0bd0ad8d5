import { describe, expect, test } from 'vitest';
import { awgSize } from '../../../../lib/model/quantity/wire-size.ts';
import { linkPorts } from '../../../../lib/plan/power/sizing/link-ports.ts';
import { inJob } from '../../../read/problem-case.ts';
import { type Change, smallShop } from '../../../read/small-shop.ts';
import { byId, jobOf } from '../../plan-small-shop.ts';
import { addParts, inParts } from '../../shop-changes.ts';

function portsOf(link: string, ...changes: readonly Change[]) {
  const job = jobOf(smallShop(...changes));
  const devices = new Map(job.devices.map((device) => [device.id, device]));
  return linkPorts(job, devices, byId(job.links, link));
}
const mm2 = (awg: string) => awgSize(awg).areaMm2;
const reducer = addParts(
  'reducer-0: { kind: terminal, title: Reducer, form: reducer, takes: { from: 1/0 AWG, to: 1/0 AWG }, pin: 4 AWG }',
);

describe('the ports of a conductor', () => {
  test('are those at both of its ends, each with what its part says that it takes', () => {
    expect(portsOf('feed')).toMatchObject([
      { id: 'main-fuse.OUT', smallestMm2: mm2('8'), largestMm2: mm2('1/0'), largest: '1/0 AWG' },
      { id: 'amp.B+', smallestMm2: mm2('8'), largestMm2: mm2('4'), largest: '4 AWG' },
    ]);
  });

  test('are none where no part says what it takes', () => {
    expect(portsOf('turn-on')).toEqual([]);
    expect(portsOf('tail').map(({ id }) => id)).toEqual(['main-fuse.IN']);
  });

  test('are none at a lead that its maker supplies: the conductor is spliced to it', () => {
    const supplied = inParts(
      'B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }',
      'B+: { role: supply-positive, joint: supplied-lead, takes: { from: 8 AWG, to: 4 AWG } }',
    );
    expect(portsOf('feed', supplied).map(({ id }) => id)).toEqual(['main-fuse.OUT']);
  });

  test('take a reducer where they clamp, a stud does not', () => {
    expect(portsOf('feed').map(({ clamps }) => clamps)).toEqual([false, true]);
    expect(portsOf('feed', reducer).map(({ reduces }) => reduces(mm2('1/0')))).toEqual([false, true]);
    // No reducer of the catalogue is made for it.
    expect(portsOf('feed').map(({ reduces }) => reduces(mm2('1/0')))).toEqual([false, false]);
    expect(portsOf('feed', reducer).map(({ reduces }) => reduces(mm2('2/0')))).toEqual([false, false]);
  });

  test('that two conductors share take no reducer: it holds one', () => {
    const shared = [
      reducer,
      inParts(
        'B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }',
        'B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG }, conductors: 2 }',
      ),
      inJob('  speaker: {', '  second: { from: main-fuse.OUT, to: amp.B+, length: 2 m }\n  speaker: {'),
    ];
    const [, port] = portsOf('feed', ...shared);
    expect(port).toMatchObject({ id: 'amp.B+', clamps: false });
    expect(port?.reduces(mm2('1/0'))).toBe(false);
  });
});

import { describe, expect, test } from 'vitest';
import { PlanBook } from '../../../../lib/plan/plan-book.ts';
import { faultText } from '../../../../lib/plan/power/network-fault-text.ts';
import { remarkFaults } from '../../../../lib/plan/power/network-remarks.ts';
import type { NetworkFault } from '../../../../lib/power/network/network-fault.ts';
import { supply } from './written-supply.ts';

describe('a network that can not be computed', () => {
  const fault = (
    name: NetworkFault['fault'],
    of: readonly string[],
    nodes: readonly string[] = [],
  ): NetworkFault => ({
    ...{ fault: name, of: [...of], nodes: [...nodes] },
    ...{ message: `${of.join(' ')} is wrong`, remedy: 'mend it' },
  });

  test('is told by what its elements stand for', () => {
    expect(faultText(fault('network-floating', ['amp:load'], ['amp.GND']), 'battery.NEG')).toBe(
      'amp.GND has no way to battery.NEG but through a device that draws current',
    );
    expect(
      faultText(
        fault('network-floating', ['amp:load'], ['amp.GND', 'dsp.GND', 'amp:conductor']),
        'battery.NEG',
      ),
    ).toMatch(/^amp\.GND and dsp\.GND have no way/);
    expect(faultText(fault('network-zero-resistance-loop', ['one:conductor', 'two:conductor']), 'x')).toMatch(
      /^one and two form a loop/,
    );
    expect(faultText(fault('network-stiff-sources-in-parallel', ['battery:emf', 'second:emf']), 'x')).toMatch(
      /^battery and second are sources without resistance/,
    );
    expect(faultText(fault('network-not-a-number', ['amp:load']), 'x')).toBe('amp is wrong');
    const many = Array.from({ length: 9 }, (_, k) => `w${k}:conductor`);
    expect(faultText(fault('network-zero-resistance-loop', many), 'x')).toMatch(
      /^w0, w1, w2, w3, w4, w5 and 3 more form/,
    );
  });

  test('is told once, at the link or device of the job that it names, with the points at which it is so', () => {
    const told = (...faults: Parameters<typeof remarkFaults>[1][number][1][]) => {
      const found = supply();
      const book = new PlanBook();
      const [first = [], second = []] = faults;
      remarkFaults(found, [['rest', first] as const, ['idle', second] as const], book);
      return book
        .remarks()
        .map(({ remark, path, file }) => ({ rule: remark.rule, of: remark.of, path, file }));
    };
    const loop = fault('network-zero-resistance-loop', ['vehicle.charge:conductor', 'amp-feed:conductor']);
    expect(told([loop], [loop])).toEqual([
      {
        ...{ rule: 'network-zero-resistance-loop', of: ['amp-feed', 'vehicle.charge', 'rest', 'idle'] },
        ...{ path: '/links/amp-feed', file: 'job' },
      },
    ]);
    // A device of the job goes before a link of the vehicle.
    expect(told([fault('network-floating', ['vehicle.charge:conductor', 'dsp:load'], ['dsp.GND'])])).toEqual([
      {
        ...{ rule: 'network-floating', of: ['dsp', 'vehicle.charge', 'rest'] },
        ...{ path: '/devices/dsp', file: 'job' },
      },
    ]);
    expect(told([fault('network-not-a-number', ['nothing:load'])])).toEqual([
      { rule: 'network-not-a-number', of: ['network', 'rest'], path: '/links', file: undefined },
    ]);
  });
});

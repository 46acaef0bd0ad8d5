import { describe, expect, it } from 'vitest';
import type { BuildPlan, WireEnd } from '../../../lib/model/plan/index.ts';
import { pullsTable } from '../../../lib/publish/sheets/bench-test.ts';
import { smallPlan } from '../../plan/plan-small-shop.ts';

const { plan } = smallPlan();

/** The plan with its speaker wires in a cable of 20 AWG, their ends made in one way. */
const inCable = (form: WireEnd['form']): BuildPlan => ({
  ...plan,
  wires: plan.wires.map((wire) => {
    if (wire.role !== 'speaker') return wire;
    const [first, last] = wire.ends;
    const size = { label: '20 AWG', awg: '20', areaMm2: 0.518 };
    return {
      ...{ ...wire, cable: 'four-core', size },
      ends: [
        { ...first, form },
        { ...last, form },
      ],
    };
  }),
});

const rowsOf = (of: BuildPlan): string[][] =>
  (pullsTable(of)?.rows ?? []).map(({ cells }) => cells.map(({ text }) => text));
const sizesOf = (of: BuildPlan) => rowsOf(of).map(([size]) => size);

describe('the pull-test table', () => {
  it.each(['ferrule', 'crimp', 'supplied-lead'] as const)(
    'has a size that stands in a cable alone, where an end of it is a %s',
    (form) => {
      expect(sizesOf(plan)).not.toContain('20 AWG');
      const row = rowsOf(inCable(form)).find(([size]) => size === '20 AWG');
      expect(row?.[1]).toMatch(/\+/);
      // No pull test of 20 AWG stands in the published table.
      expect(row?.[2]).toBe('as the terminal\u2019s maker says');
    },
  );

  it.each(['made-up', 'solder', 'as-fitted'] as const)('has none for ends that are %s', (form) => {
    expect(sizesOf(inCable(form))).not.toContain('20 AWG');
  });

  it('keeps the sizes of wires of their own', () => {
    const own = plan.wires.filter(({ origin, cable }) => origin === 'job' && cable === undefined);
    expect(new Set(sizesOf(plan))).toEqual(new Set(own.map(({ size }) => size.label)));
  });
});

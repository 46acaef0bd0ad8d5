import { describe, expect, test } from 'vitest';
import { webOf } from '../../../lib/rules/folding/bonds.ts';
import {
  batteriesBehindWire,
  dropOfExcess,
  reelOfExcess,
} from '../../../lib/rules/folding/bonds-of-leads.ts';
import { aboutPlan } from '../case.ts';
import { secondBattery, wire } from '../changes.ts';
import { aFinding } from './a-finding.ts';

describe('a ground that drops too much for its length', () => {
  // Of 1.2 m that drop 0.4 V, 0.6 m are too much: they drop 0.2 V.
  const lead = aFinding('ground-lead-long', ['board-ground'], { value: 1.2, limit: 0.6, unit: 'm' });
  const made = (of: string) =>
    aboutPlan((plan) => {
      for (const point of plan.power.points) {
        point.nodes.push({ id: 'ground.G0', voltageV: 0.4 }, { id: 'body.cargo', voltageV: 0 });
        point.elements.push({
          ...{ id: of, of, kind: 'conductor', model: 'resistance', from: 'ground.G0', to: 'body.cargo' },
          ...{ currentA: 40, dropV: 0.4 },
        });
      }
    });
  const holds = (value: number, limit: number, cause = lead, of = 'board-ground') =>
    dropOfExcess(cause, aFinding('ground-drop', ['amp'], { value, limit, unit: 'V' }), webOf(made(of), []));

  test('would not at the length that it may have', () => {
    expect(holds(0.5, 0.3)).toBe(true);
    expect(holds(0.501, 0.3)).toBe(false);
  });

  test('is told by itself where the length of the lead says nothing of it', () => {
    expect(holds(0.5, 0.3, { ...lead, value: 0 })).toBe(false);
    expect(holds(0.5, 0.3, aFinding('ground-lead-long', ['board-ground']))).toBe(false);
    expect(holds(0.5, 0.3, lead, 'amp-ground')).toBe(false);
    const bare = aFinding('ground-drop', ['amp']);
    expect(dropOfExcess(lead, bare, webOf(made('board-ground'), []))).toBe(false);
  });
});

describe('a reel that is short for a lead that is too long', () => {
  // 5 m on the shelf; the lead takes 2 m of what is asked for, and may take 1 m.
  const lead = aFinding('ground-lead-long', ['board-ground'], { value: 2, limit: 1, unit: 'm' });
  const short = aFinding('stock-short', ['black-4'], { value: 5, limit: 7, unit: 'm' });
  const holds = (quantity: number, missing: number, part = 'black-4') => {
    const made = aboutPlan((plan) => {
      wire(plan, 'board-ground').part = part;
      plan.pick = [
        {
          part: 'black-4',
          title: 'Black',
          quantity,
          unit: 'm',
          stockQuantity: 5,
          short: missing,
          kind: 'wire',
        },
      ];
    });
    return reelOfExcess(lead, short, webOf(made, []));
  };

  test('would do at the length that it may have', () => {
    expect(holds(6, 1)).toBe(true);
    expect(holds(6.001, 1)).toBe(false);
  });

  test('where no more is short than the lead itself', () => {
    expect(holds(6, 2)).toBe(true);
    expect(holds(6, 2.001)).toBe(false);
  });

  test('and the lead is cut from it', () => {
    expect(holds(6, 1, 'red-4')).toBe(false);
  });
});

describe('a fuse that cannot interrupt what a battery gives', () => {
  const told = (batteries: readonly string[]) => aFinding('fuse-interrupting', ['main-fuse', ...batteries]);
  const noFuse = aFinding('conductor-without-fuse', ['second-tail']);

  test('only follows where that battery reaches it over the wire without a fuse alone', () => {
    const web = webOf(secondBattery(false), []);
    expect(batteriesBehindWire(noFuse, told(['second']), web)).toBe(true);
    expect(batteriesBehindWire(noFuse, told(['second', 'battery']), web)).toBe(false);
    expect(batteriesBehindWire(noFuse, told([]), web)).toBe(false);
    expect(batteriesBehindWire(aFinding('conductor-without-fuse', ['feed']), told(['second']), web)).toBe(
      false,
    );
  });

  test('stands for itself where a fuse is at the end of that battery', () => {
    expect(batteriesBehindWire(noFuse, told(['second']), webOf(secondBattery(true), []))).toBe(false);
  });
});

import { expect, test } from 'vitest';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';

/** What the rules fault of where a part stands, and the layout search can see ahead. */
const seenAhead: readonly string[] = [
  ...['hole-near-edge', 'hole-near-corner', 'mounting-hole-off-board', 'holes-run-together'],
  ...['item-over-fixing', 'item-over-hole', 'item-over-opening', 'item-outside-board', 'items-overlap'],
  ...['part-gap-short', 'air-gap-short', 'bend-room-short', 'control-covered', 'control-under-part'],
  ...['face-covered', 'signal-end-faces-wrong-side', 'power-end-faces-wrong-side'],
];

/** What the search proposes is not what the rules fault: on the demo boards there is room for lawful layouts. */
export function proposalChecks(plan: () => BuildPlan): void {
  test('nothing that the search placed is faulted for where it stands', () => {
    const { boards, findings } = plan();
    const computed = boards.flatMap(({ placements }) =>
      placements.filter(({ chosen }) => chosen === 'computed').map(({ item }) => item),
    );
    const faulted = findings.filter(
      ({ rule, related }) => seenAhead.includes(rule) && related.some((id) => computed.includes(id)),
    );
    expect(faulted.map(({ message }) => message)).toEqual([]);
  });

  test('no part that lies on a board lies on the head of a fixing', () => {
    for (const { placements, fixings } of plan().boards)
      for (const { xM, yM, widthM, depthM } of placements.filter(({ raisedM }) => raisedM === 0))
        for (const at of fixings) {
          const beside = Math.max(xM - at.xM, at.xM - xM - widthM);
          const before = Math.max(yM - at.yM, at.yM - yM - depthM);
          // Half the hole of an M6 in the demo shop is 3.3 mm; its head is no smaller.
          expect(Math.hypot(Math.max(0, beside), Math.max(0, before))).toBeGreaterThan(0.0033);
        }
  });
}

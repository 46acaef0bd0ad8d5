import { describe, expect, test } from 'vitest';
import { placement } from '../../../../lib/publish/sheets/board/placement.ts';
import { outsideCheck } from '../../../outside-check.ts';
import type { Change } from '../../../read/small-shop.ts';
import { smallPlan } from '../../plan-small-shop.ts';
import { onFourPoints, stocked } from '../../power/four-points.ts';
import { inParts, inVehicle } from '../../shop-changes.ts';

const byHand = outsideCheck('rooms-by-hand');

/** A board of so many millimetres on spacers of 25 mm with an amplifier 40 mm high, in a space 200 mm deep. */
function deepOf(mm: number, ...changes: readonly Change[]) {
  const shop = [...stocked({ id: 'ply-12', mm, pieces: 1 }), ...onFourPoints(['sheet: ply-12'])];
  const { plan } = smallPlan(...shop, ...changes);
  const [board] = plan.boards;
  const model = placement.model(plan);
  const [told] = model && 'boards' in model ? model.boards : [];
  return { depth: board?.depth, told: told?.depth };
}
const deep = (...changes: readonly Change[]) => deepOf(12, ...changes);

const airOver = inParts('    channels:', '    air: { face: 30 mm }\n    channels:');
const front = (bound: string) => inVehicle('    air: 60 L', `    air: 60 L\n    bounds: { front: ${bound} }`);

// By hand: 25 + 12 + 40 mm, and 6 mm of clearance before it, or the 30 mm of air that its maker asks for.
describe('the depth that a board takes of its space', () => {
  test('is its spacers, its sheet, its highest part and the clearance before that', () => {
    const { depth, told } = deep();
    expect(byHand.differs(depth?.totalM ?? 0, 0.083)).toBeCloseTo(0.083, 9);
    expect(depth).toMatchObject({ of: 'amp', raisedM: 0 });
    expect(told).toBe(
      'Depth: 3 5/16 in (83 mm) of 7 13/16 in (200 mm): spacer 1 in (25 mm) + board 1/2 in (12 mm) + Bass amplifier 1 5/8 in (40 mm) + room for air over it 1/4 in (6 mm).',
    );
  });

  test('takes the air that a part asks for over its face, unless its space is open in front', () => {
    expect(byHand.differs(deep(airOver, front('lid')).depth?.totalM ?? 0, 0.107)).toBeCloseTo(0.107, 9);
    expect(deep(airOver, front('open')).depth?.totalM).toBeCloseTo(0.083, 9);
  });

  // To the millimetre: 83.04 mm are told as more, 199.96 mm as less.
  test('is told up, and what the space has down', () => {
    const { told } = deepOf(12.04, inVehicle('depth: 200 mm', 'depth: 199.96 mm'));
    expect(told).toMatch(/^Depth: 3 5\/16 in \(84 mm\) of 7 13\/16 in \(199 mm\): /);
  });
});

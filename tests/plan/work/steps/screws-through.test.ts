import { expect, test } from 'vitest';
import { inJob, withBoard } from '../../../read/problem-case.ts';
import { smallPlan } from '../../plan-small-shop.ts';
import { addParts, inParts } from '../../shop-changes.ts';

/** The parts of the board are mounted: how that is known to be right, with a screw of a length and feet of 3 mm. */
const mountedProof = (length: string) => {
  const { plan } = smallPlan(
    withBoard(),
    inJob('    in: boot\n    settings', '    on: main\n    settings'),
    addParts(
      `pan: { kind: fixing, title: S, form: wood-screw, thread: "#8", length: ${length}, clearance: 4.6 mm, pilot: 3 mm }`,
    ),
    inParts(
      'kind: amplifier\n    title: Amplifier\n    ',
      'kind: amplifier\n    title: Amplifier\n    foot: 3 mm\n    mounting-holes: [{ x: 20 mm, y: 20 mm, diameter: 4.8 mm }]\n    ',
    ),
  );
  const [board] = plan.boards;
  return {
    thicknessM: board?.thicknessM,
    proof: plan.steps.find(({ text }) => text.startsWith('Mount by the placement drawing'))?.proof,
  };
};

// By hand: past a foot of 3 mm a screw of 22 mm has 19 mm, and one of 20 mm has 17 mm, for a board of 18 mm.
test('no screw is asked to stay inside where the board lets its point come out', () => {
  expect(mountedProof('20 mm')).toEqual({
    thicknessM: 0.018,
    proof: expect.stringMatching(/no screw stands through/),
  });
  expect(mountedProof('22 mm').proof).toMatch(/the screws of \S+ come out behind the board, no others do/);
});

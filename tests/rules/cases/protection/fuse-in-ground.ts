import { about, aboutPlan, byId } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

/** Common practice, no source: with the ground open, the current finds its way back through the shields. */
export const fuseInGroundCases = {
  'fuse-in-ground': {
    fires: [
      {
        name: 'a fuse between a device and its ground',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(byId(plan.power.fuses, 'block.OUT1'), { from: 'ground.G8', to: 'ground.G9' });
            Object.assign(byId(plan.wires, 'amp-ground'), { to: 'ground.G8' });
          }),
        level: 'stop',
        subject: 'block.OUT1',
        says: /the fuse block\.OUT1 stands in the ground amp-ground/,
      },
    ],
    quiet: [
      { name: 'fuses in the feeds alone', about: () => about() },
      {
        name: 'a live fuse on the body, which is a short and told as one',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(byId(plan.wires, 'board-ground'), { from: 'block.OUT1' });
          }),
      },
    ],
  },
} satisfies RuleCases;

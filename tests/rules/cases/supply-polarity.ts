import { about, aboutPlan, byId } from '../case.ts';
import type { RuleCases } from '../rule-case.ts';

/** Kirchhoff's laws: what joins a source's two poles through conductors alone is a short. */
export const supplyPolarityCases: RuleCases = {
  'live-end-on-ground': {
    fires: [
      {
        name: 'a fused way that is led to the body',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(byId(plan.wires, 'board-ground'), { from: 'block.OUT1' });
          }),
        level: 'stop',
        subject: 'board-ground',
        says: /block\.OUT1, which is live, to body\.cargo/,
      },
      {
        name: 'a feed on the ground terminal of a device',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(byId(plan.wires, 'amp-feed'), { to: 'amp.GND', role: 'ground' });
          }),
        level: 'stop',
        subject: 'amp-feed',
      },
    ],
    quiet: [{ name: 'feed and ground as they belong', about: () => about() }],
  },
  'supply-not-live': {
    fires: [
      {
        name: 'a device the wrong way round',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(byId(plan.wires, 'amp-feed'), { to: 'amp.GND', role: 'ground' });
            Object.assign(byId(plan.wires, 'amp-ground'), { from: 'amp.B+' });
          }),
        level: 'stop',
        subject: 'amp',
        says: /amp\.B\+ is connected, but no battery reaches it/,
      },
    ],
    quiet: [{ name: 'fed through its fuse', about: () => about() }],
  },
};

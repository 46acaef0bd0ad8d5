import { about, aboutContent, aboutPlan, byId } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

/** One more link from a fused way. */
const withLink = (id: string, to: string) =>
  aboutContent(({ job }) => {
    job.links[id] = { from: 'block.OUT2', to };
  });

/** Kirchhoff's laws: what joins a source's two poles through conductors alone is a short. */
export const supplyPolarityCases = {
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
      {
        name: 'a charge lead that the file of the vehicle takes to the negative post',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(byId(plan.wires, 'vehicle.charge'), { to: 'battery.NEG', role: 'ground' });
          }),
        level: 'stop',
        subject: 'vehicle.charge',
        says: /alternator\.B\+, which is live, to battery\.NEG/,
        file: 'vehicle.yaml',
      },
    ],
    quiet: [{ name: 'feed and ground as they belong', about: () => about() }],
  },
  'live-end-on-signal': {
    fires: [
      {
        name: 'a fused way on a signal input',
        about: () => withLink('wrong-signal', 'amp.IN1'),
        level: 'stop',
        subject: 'wrong-signal',
        says: /wrong-signal leads the supply from block\.OUT2 to amp\.IN1, a signal input: it would burn/,
      },
      {
        name: 'a fused way on a speaker output',
        about: () => withLink('wrong-feed', 'amp.CH1+'),
        level: 'stop',
        subject: 'wrong-feed',
        says: /amp\.CH1\+, a speaker output/,
      },
      {
        name: 'a fused way on a coil',
        about: () => withLink('wrong-feed', 'sub.C+'),
        level: 'stop',
        subject: 'wrong-feed',
        says: /a coil/,
      },
    ],
    quiet: [
      { name: 'supplies, signals and speakers as they belong', about: () => about() },
      { name: 'a supply on a turn-on input', about: () => withLink('wrong-rem', 'amp.REM') },
    ],
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
} satisfies RuleCases;

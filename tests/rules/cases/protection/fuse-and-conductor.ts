import { aboutPlan } from '../../case.ts';
import { conductor, fuse } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

export const fuseAndConductorCases = {
  // 33 CFR 183.425, Table 5; 100 % of it by the trade's own rule, where 33 CFR 183.455 would allow 150 %.
  'fuse-over-conductor': {
    fires: [
      {
        name: 'one ampere over',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'block.OUT1').ratingA = 70;
            conductor(plan, 'amp-feed').ampacityA = 69;
          }),
        level: 'stop',
        subject: 'block.OUT1',
        says: /within the 150 % yardstick/,
      },
      {
        name: 'copper-clad aluminium, which carries less than copper of its size',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'block.OUT1').ratingA = 70;
            Object.assign(conductor(plan, 'amp-feed'), { ampacityA: 69, material: 'copper-clad-aluminium' });
          }),
        level: 'stop',
        subject: 'block.OUT1',
        says: /amp-feed \(8 AWG, copper-clad aluminium\) carries/,
        toDo: /a larger conductor, or one of copper$/,
      },
      {
        name: 'insulation for a low temperature',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'block.OUT1').ratingA = 70;
            Object.assign(conductor(plan, 'amp-feed'), { ampacityA: 69, insulationC: 60 });
          }),
        level: 'stop',
        subject: 'block.OUT1',
        says: /amp-feed \(8 AWG, insulation for 60 C\) carries/,
        toDo: /one with insulation for a higher temperature$/,
      },
      {
        name: 'far past the yardstick, named by the conductor alone',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'dsp-feed').fuses = ['block.OUT2'];
            fuse(plan, 'block.OUT2').protects = [];
            fuse(plan, 'block.OUT2').ratingA = 60;
          }),
        level: 'stop',
        subject: 'block.OUT2',
        says: /past the 150 % yardstick/,
      },
      {
        name: 'a weakest conductor that the plan does not list',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(fuse(plan, 'block.OUT3'), { protects: ['elsewhere'], leastAmpacityA: 7.5 });
          }),
        level: 'stop',
        subject: 'block.OUT3',
      },
    ],
    quiet: [
      {
        name: 'the fuse is just what the conductor carries',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'amp-feed').ampacityA = 60;
            conductor(plan, 'amp-feed').cautionA = 60;
          }),
      },
      {
        name: 'a main fuse above what a branch behind its own fuse carries',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'dsp-feed').fuses = ['block.OUT2', 'main-fuse'];
          }),
      },
    ],
  },
  // 33 CFR 183.425, Table 5.
  'conductor-under-need': {
    fires: [
      {
        name: 'a ground that carries less than the fuse of its feed',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'amp-ground').neededA = 80;
          }),
        level: 'stop',
        subject: 'amp-ground',
      },
    ],
    quiet: [
      {
        name: 'a ground that carries just that',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'amp-ground').neededA = 68;
          }),
      },
    ],
  },
  // Common practice, no source: 85 C in the engine bay, 0.8 under loom; bundles from memory.
  'fuse-over-warm-conductor': {
    fires: [
      {
        name: 'enough by the published figure, too little in the heat',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'main').cautionA = 79;
          }),
        level: 'caution',
        subject: 'main-fuse',
      },
    ],
    quiet: [
      {
        name: 'enough in the heat too',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'main').cautionA = 80;
          }),
      },
    ],
  },
  // The limit itself comes with the plan, with its citation.
  'conductor-past-limit': {
    fires: [
      {
        name: 'a drop over its limit',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'main').limits = [
              { what: 'drop', value: 0.5, limit: 0.414, unit: 'V', level: 'caution', citation: 'the shop' },
            ];
          }),
        level: 'caution',
        subject: 'main',
      },
      {
        name: 'a limit that stops',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'main').limits = [
              { what: 'drop', value: 0.5, limit: 0.4, unit: 'V', level: 'stop', citation: 'the shop' },
            ];
          }),
        level: 'stop',
        subject: 'main',
      },
    ],
    quiet: [
      {
        name: 'a drop at its limit, an ampacity that fuse rules judge',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'main').limits = [
              { what: 'drop', value: 0.414, limit: 0.414, unit: 'V', level: 'caution', citation: 'the shop' },
              { what: 'ampacity', value: 80, limit: 70, unit: 'A', level: 'caution', citation: 'Table 5' },
            ];
          }),
      },
    ],
  },
} satisfies RuleCases;

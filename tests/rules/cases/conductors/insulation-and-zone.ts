import { about, aboutContent, aboutPlan, entry, partIn } from '../../case.ts';
import { conductor, unsized, wire } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

export const insulationAndZoneCases = {
  // Common practice, no source: ambient 85 C in the engine bay, unmarked insulation counts as 60 C.
  'insulation-at-ambient': {
    fires: [
      {
        name: '80 C in the engine bay',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'main').insulationC = 80;
          }),
        level: 'stop',
        subject: 'main',
        says: /85 C/,
        toDo: /where the zone engine-bay is wrong, write another at vehicle\.yaml\S* ?.*; of these would do: .*cabin/,
      },
      {
        name: '85 C in the engine bay: at the ambient',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'main').insulationC = 85;
          }),
        level: 'stop',
        subject: 'main',
      },
      {
        name: 'a conductor that carries nothing, wherever it runs',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'dsp-ground').ampacityA = 0;
          }),
        level: 'stop',
        subject: 'dsp-ground',
        // No zone is to blame where nothing was sized.
        says: /^no ampacity is known for dsp-ground/,
      },
      {
        name: 'a zone that the plan found to carry nothing, though another is hotter',
        about: () =>
          aboutPlan((plan) => {
            const limit = {
              what: 'ampacity',
              value: 5,
              unit: 'A',
              level: 'stop',
              citation: 'the table',
            } as const;
            Object.assign(conductor(plan, 'main'), {
              ampacityA: 0,
              limits: [
                { ...limit, zone: 'engine-bay', limit: 100 },
                { ...limit, zone: 'sill', limit: 0 },
              ],
            });
          }),
        level: 'stop',
        subject: 'main',
        says: /sill is 50 C/,
      },
      {
        name: 'an unmarked turn-on lead in the engine bay, at any current',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(wire(plan, 'radio-rem'), {
              part: 'unmarked',
              zones: [{ zone: 'engine-bay', lengthM: 1, edge: false }],
            });
          }),
        level: 'stop',
        subject: 'radio-rem',
      },
    ],
    quiet: [
      { name: '105 C in the engine bay', about: () => about() },
      {
        name: 'a wire that no cable was found for',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'main').size = unsized;
            Object.assign(conductor(plan, 'main'), { insulationC: 60, ampacityA: 0 });
          }),
      },
    ],
  },
  // Common practice, no source.
  'near-exhaust': {
    fires: [
      {
        name: 'a run past the exhaust',
        about: () =>
          aboutContent(({ vehicle }) => {
            entry(vehicle.routes, 'left-sill').passes.push({ zone: 'near-exhaust', length: '300 mm' });
          }),
        level: 'stop',
        subject: 'main',
      },
    ],
    quiet: [{ name: 'a run through the engine bay', about: () => about() }],
  },
  // The part's own data against an ambient of 85 C (common practice, no source).
  'covering-too-hot': {
    fires: [
      {
        name: 'loom for 80 C in the engine bay',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'loom', 'covering').withstands = '80 C';
          }),
        level: 'caution',
        subject: 'left',
      },
    ],
    quiet: [
      {
        name: 'loom for 85 C in the engine bay',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'loom', 'covering').withstands = '85 C';
          }),
      },
    ],
  },
  // Common practice, no source: unmarked cable counts as 60 C.
  'insulation-unmarked': {
    fires: [
      {
        name: 'a feed from an unmarked reel',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'amp-feed').part = 'unmarked';
          }),
        level: 'note',
        subject: 'unmarked',
        file: 'parts.yaml',
        says: /60 C/,
      },
    ],
    quiet: [
      {
        name: 'a feed from a marked reel',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'amp-feed').part = 'clad';
          }),
      },
    ],
  },
} satisfies RuleCases;

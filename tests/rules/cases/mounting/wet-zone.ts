import { about, aboutContent, partIn } from '../../case.ts';
import { space, wet } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

export const wetZoneCases = {
  // Common practice, no source.
  'fibreboard-in-wet-zone': {
    fires: [
      {
        name: 'bare fibreboard',
        about: () =>
          aboutContent((content) => {
            space(content).wet = true;
            partIn(content, 'plywood', 'board-sheet').material = 'fibreboard';
          }),
        level: 'caution',
        subject: 'main',
      },
    ],
    quiet: [
      { name: 'plywood', about: () => wet(0.012) },
      {
        name: 'sealed fibreboard',
        about: () =>
          aboutContent((content) => {
            space(content).wet = true;
            Object.assign(partIn(content, 'plywood', 'board-sheet'), {
              material: 'fibreboard',
              sealed: true,
            });
          }),
      },
    ],
  },
  // Common practice, no source: raise 12 mm, drip loop, drain clear.
  'board-low-in-wet-zone': {
    fires: [
      { name: '10 mm', about: () => wet(0.01), level: 'caution', subject: 'main' },
      { name: '12 mm: drip loops are told', about: () => wet(0.012), level: 'note', subject: 'main' },
    ],
    quiet: [{ name: 'a dry space', about: () => about() }],
  },
  // Common practice, no source. Axes of the vehicle: ISO 8855.
  'amplifier-upside-down': {
    fires: [
      {
        name: 'under a shelf: right is left, upward is front',
        about: () =>
          aboutContent((content) => {
            Object.assign(space(content), { right: 'left', upward: 'front' });
          }),
        level: 'caution',
        subject: 'amp',
      },
    ],
    quiet: [
      { name: 'upright on a side panel', about: () => about() },
      {
        name: 'face up on the floor: right is right, upward is front',
        about: () =>
          aboutContent((content) => {
            Object.assign(space(content), { right: 'right', upward: 'front' });
          }),
      },
    ],
  },
} satisfies RuleCases;

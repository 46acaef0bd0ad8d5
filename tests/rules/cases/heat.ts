import { about, aboutContent, partIn } from '../case.ts';
import { space } from '../changes.ts';
import type { RuleCases } from '../rule-case.ts';

export const heatCases = {
  // Common practice, no source.
  'cavity-heat': {
    fires: [
      {
        name: 'no fan, heat and air known',
        about: () =>
          aboutContent((content) => {
            delete partIn(content, 'two-channel', 'amplifier').cooling;
          }),
        level: 'note',
        subject: 'main',
        says: /90 W.*60 L/,
      },
      {
        name: 'no fan, nothing known',
        about: () =>
          aboutContent((content) => {
            const amplifier = partIn(content, 'two-channel', 'amplifier');
            delete amplifier.cooling;
            delete amplifier.heat;
            delete space(content).air;
          }),
        level: 'note',
        subject: 'main',
        says: /not known/,
      },
    ],
    quiet: [{ name: 'a fan', about: () => about() }],
  },
} satisfies RuleCases;

import { about, aboutContent, partIn } from '../case.ts';
import type { RuleCases } from '../rule-case.ts';

export const chargingVariesCases: RuleCases = {
  // Common practice, no source: 12.2 to 15.0 V, sized at 12.5 V.
  'charging-voltage-varies': {
    fires: [
      {
        name: 'an alternator whose voltage varies',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'generator', 'alternator')['variable-voltage'] = true;
          }),
        level: 'note',
        subject: 'alternator',
        says: /chosen at 12\.5 V/,
        file: 'vehicle.yaml',
      },
    ],
    quiet: [{ name: 'one that holds its voltage', about: () => about() }],
  },
};

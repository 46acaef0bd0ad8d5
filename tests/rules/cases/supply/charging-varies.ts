import { about, aboutContent, partIn } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

export const chargingVariesCases = {
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
      {
        name: 'a range that was read in this vehicle',
        about: () =>
          aboutContent((content) => {
            content.vehicle['charging-range'] = { from: '13.2 V', to: '14.6 V' };
          }),
        level: 'note',
        subject: 'alternator',
        says: /varies, from 13\.2 V to 14\.6 V: currents and sizes are chosen at 13\.2 V/,
        file: 'vehicle.yaml',
      },
    ],
    quiet: [{ name: 'one that holds its voltage', about: () => about() }],
  },
  // Common practice, no source: a sound battery charges at 13.5 to 14.8 V.
  'charging-voltage-unusual': {
    fires: [
      {
        name: 'an alternator set too high',
        about: () => setTo('15.2 V'),
        level: 'caution',
        subject: 'alternator',
        says: /set to 15\.2 V; a sound system charges at 13\.5 V to 14\.8 V/,
        file: 'vehicle.yaml',
      },
      {
        name: 'an alternator set too low',
        about: () => setTo('13.2 V'),
        level: 'caution',
        subject: 'alternator',
        says: /set to 13\.2 V/,
        file: 'vehicle.yaml',
      },
    ],
    quiet: [
      { name: 'one at the upper end', about: () => setTo('14.8 V') },
      { name: 'one at the lower end', about: () => setTo('13.5 V') },
      { name: 'one whose part does not tell', about: () => about() },
    ],
  },
} satisfies RuleCases;

const setTo = (voltage: string) =>
  aboutContent((content) => {
    partIn(content, 'generator', 'alternator')['set-point'] = voltage;
  });

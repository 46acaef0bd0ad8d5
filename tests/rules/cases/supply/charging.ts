import { about, aboutContent, aboutPlan, entry } from '../../case.ts';
import { regime } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

/** The starter battery with a reserve that ends at a share of its charge. */
const reserveEnd = (share: string) =>
  aboutContent(({ vehicle }) => {
    entry(vehicle.fitted, 'battery')['reserve-end'] = share;
  });

/** At idle an average with so much of it into a charger, and what that draws for a battery that is run down (A). */
const chargedBy = (averageA: number, currentA: number, flatA: number) =>
  aboutPlan((plan) =>
    Object.assign(regime(plan, 'idle'), { averageA, chargers: [{ item: 'charger', currentA, flatA }] }),
  );

export const chargingCases = {
  // Common practice, no source: 80 % asks for an upgrade; above all of it at cruise stops, at idle only cautions.
  'charging-short': {
    fires: [
      {
        name: '57 of 70 A at idle',
        about: () => aboutPlan((plan) => Object.assign(regime(plan, 'idle'), { averageA: 12 })),
        level: 'caution',
        subject: 'idle',
      },
      {
        name: '58 of 70 A at idle, 9 of them into a charger',
        about: () => chargedBy(13, 9, 9),
        level: 'caution',
        subject: 'idle',
        says: /the vehicle takes 45 A, the audio 4 A on average and charger 9 A, 82\.9 %/,
        toDo: /^set charger to a lower current/,
      },
      {
        name: '66 of 70 A at idle once the battery behind the charger is run down',
        about: () => chargedBy(8, 4, 17),
        level: 'caution',
        subject: 'idle',
        says: /the audio 4 A on average and charger 17 A while the battery behind it is run down, 94\.3 %/,
      },
      {
        name: '75 of 70 A at idle',
        about: () => aboutPlan((plan) => Object.assign(regime(plan, 'idle'), { averageA: 30 })),
        level: 'caution',
        subject: 'idle',
      },
      {
        name: '100 of 120 A at cruise',
        about: () => aboutPlan((plan) => Object.assign(regime(plan, 'cruise'), { averageA: 55 })),
        level: 'caution',
        subject: 'cruise',
      },
      {
        name: '125 of 120 A at cruise',
        about: () => aboutPlan((plan) => Object.assign(regime(plan, 'cruise'), { averageA: 80 })),
        level: 'stop',
        subject: 'cruise',
      },
      {
        name: 'no alternator output at cruise',
        about: () => aboutPlan((plan) => Object.assign(regime(plan, 'cruise'), { alternatorA: 0 })),
        level: 'stop',
        subject: 'cruise',
      },
    ].map((each) => ({ ...each, level: each.level === 'stop' ? 'stop' : 'caution', file: 'vehicle.yaml' })),
    quiet: [
      {
        name: '56 of 70 A at idle: just 80 %',
        about: () => aboutPlan((plan) => Object.assign(regime(plan, 'idle'), { averageA: 11 })),
      },
      {
        name: '56 of 70 A with the battery behind the charger run down',
        about: () => chargedBy(8, 4, 7),
      },
      { name: 'nothing but the battery with the engine off', about: () => about() },
    ],
  },
  // Common practice, no source: half of the charge, so that the engine still starts.
  'reserve-leaves-no-start': {
    fires: [
      {
        name: 'a starter battery run down to 49 %',
        about: () => reserveEnd('49 %'),
        level: 'caution',
        subject: 'battery',
        file: 'vehicle.yaml',
        says: /ends at 49 % of its charge.*asks for 50 %/,
      },
    ],
    quiet: [
      { name: 'run down to half', about: () => reserveEnd('50 %') },
      {
        name: 'run down to half where its part says less',
        about: () =>
          aboutContent((content) => {
            entry(content.vehicle.fitted, 'battery')['reserve-end'] = '50 %';
            for (const part of Object.values(content.parts))
              if (part.kind === 'battery') part['reserve-end'] = '20 %';
          }),
      },
      { name: 'nothing said', about: () => about() },
    ],
  },
  // Common practice, no source: 40 to 60 A where it is not measured.
  'vehicle-load-assumed': {
    fires: [
      {
        name: 'not measured',
        about: () =>
          aboutContent(({ vehicle }) => {
            delete vehicle['vehicle-load'];
          }),
        level: 'note',
        subject: 'wagon',
        file: 'vehicle.yaml',
        says: /50 A is assumed/,
      },
    ],
    quiet: [{ name: 'measured', about: () => about() }],
  },
} satisfies RuleCases;

import { about, aboutContent, partIn } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

export const vehicleSupplyCases = {
  // Common practice, no source.
  'high-voltage-vehicle': {
    fires: (['hybrid', 'electric'] as const).map((supply) => ({
      name: supply,
      about: () =>
        aboutContent(({ vehicle }) => {
          vehicle.supply = supply;
        }),
      level: 'caution',
      subject: 'wagon',
      file: 'vehicle.yaml',
      says: /orange/,
    })),
    quiet: [{ name: 'combustion', about: () => about() }],
  },
  // Common practice, no source.
  'system-without-battery': {
    fires: [
      {
        name: 'an alternator alone',
        about: () => {
          const { job, plan } = about();
          const devices = job.devices.filter(({ spec }) => spec?.kind !== 'battery');
          return { job: { ...job, devices }, plan };
        },
        level: 'stop',
        subject: 'wagon',
        file: 'vehicle.yaml',
        says: /no battery stands in wagon/,
      },
    ],
    quiet: [{ name: 'the battery that the vehicle came with', about: () => about() }],
  },
  // Common practice, no source.
  'starter-battery-unknown': {
    fires: [
      {
        name: 'a battery of the vehicle without a cold-cranking current',
        about: () =>
          aboutContent((content) => {
            delete partIn(content, 'agm', 'battery')['cold-cranking'];
          }),
        level: 'caution',
        subject: 'battery',
        file: 'vehicle.yaml',
        says: /not known which one starts the engine/,
      },
    ],
    quiet: [
      { name: 'a battery that says it', about: () => about() },
      {
        name: 'an electric vehicle: its battery starts no engine',
        about: () =>
          aboutContent((content) => {
            delete partIn(content, 'agm', 'battery')['cold-cranking'];
            content.vehicle.supply = 'electric';
          }),
      },
    ],
  },
} satisfies RuleCases;

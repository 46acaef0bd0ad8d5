import { about, aboutContent } from '../case.ts';
import type { RuleCases } from '../rule-case.ts';

export const vehicleSupplyCases: RuleCases = {
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
};

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
};

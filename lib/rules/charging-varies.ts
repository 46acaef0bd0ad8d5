import type { Rule, Verdict } from './rule.ts';
import { defaultSource, houseRule } from './source.ts';
import { volts } from './words.ts';

const varies: Rule = {
  id: 'charging-voltage-varies',
  asks: 'Where the vehicle lets its charging voltage vary, currents and sizes go by the low end.',
  levels: ['note'],
  ...defaultSource('voltage-variable'),
  judge({ job }) {
    const { value, from } = houseRule(job, 'voltage-variable');
    const lowV = houseRule(job, 'voltage-variable-low').value;
    const highV = houseRule(job, 'voltage-variable-high').value;
    return job.devices.flatMap(({ id, spec, path, origin }): Verdict[] => {
      if (spec?.kind !== 'alternator' || !spec['variable-voltage']) return [];
      return [
        {
          level: 'note',
          of: [id],
          message: `the charging voltage of ${id} varies, from about ${volts(lowV)} to ${volts(highV)}: currents and sizes are chosen at ${volts(value)}`,
          value,
          unit: 'V',
          remedy:
            'see that every device stands the high end, charge a second battery through a charger, and measure with the loads on',
          ...from,
          path,
          file: origin,
        },
      ];
    });
  },
};

export const chargingVariesRules: readonly Rule[] = [varies];

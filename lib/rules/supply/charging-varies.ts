import { varyingCharge } from '../../power/network/varying-charge.ts';
import { houseRule } from '../house-rule-of.ts';
import type { Rule, Verdict } from '../rule.ts';
import { volts } from '../words.ts';

const varies: Rule = {
  id: 'charging-voltage-varies',
  judge({ job }) {
    const varying = varyingCharge(job);
    if (!varying) return [];
    const { from } = houseRule(job, 'voltage-variable');
    const wasRead = job.vehicle['charging-range'] !== undefined;
    const { lowV, highV, sizingV: value } = varying;
    return job.devices.flatMap(({ id, spec, path, origin }): Verdict<'charging-voltage-varies'>[] => {
      if (spec?.kind !== 'alternator' || !(spec['variable-voltage'] || wasRead)) return [];
      return [
        {
          level: 'note',
          of: [id],
          message: `the charging voltage of ${id} varies, from ${wasRead ? '' : 'about '}${volts(lowV)} to ${volts(highV)}: currents and sizes are chosen at ${volts(value)}`,
          value,
          unit: 'V',
          remedy: `${wasRead ? '' : `read it over a drive and write both ends into the file of the vehicle, such as charging-range: ${volts(lowV)} to ${volts(highV)}; `}see that every device stands the high end, charge a second battery through a charger, and measure with the loads on`,
          ...from,
          path,
          file: origin,
        },
      ];
    });
  },
};

const unusual: Rule = {
  id: 'charging-voltage-unusual',
  judge({ job }) {
    const least = houseRule(job, 'check-in-charging-least');
    const most = houseRule(job, 'check-in-charging-most');
    return job.devices.flatMap(({ id, spec, path, origin }): Verdict<'charging-voltage-unusual'>[] => {
      const setV = spec?.kind === 'alternator' ? spec['set-point'] : undefined;
      if (setV === undefined || (setV >= least.value && setV <= most.value)) return [];
      const high = setV > most.value;
      const limit = high ? most : least;
      return [
        {
          level: 'caution',
          of: [id],
          message: `${id} is set to ${volts(setV)}; a sound system charges at ${volts(least.value)} to ${volts(most.value)}`,
          value: setV,
          limit: limit.value,
          unit: 'V',
          remedy: high
            ? 'see by their makers that battery and every device stand it, or have the regulator set lower'
            : 'measure the charging voltage at the battery, and correct the part or have the regulator seen to',
          ...limit.from,
          path,
          file: origin,
        },
      ];
    });
  },
};

export const chargingVariesRules: readonly Rule[] = [varies, unusual];

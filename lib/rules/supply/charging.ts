import { deviceSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { houseRule } from '../source.ts';
import { amps, ampsDrawn, percent } from '../words.ts';

const chargingShort: Rule = {
  id: 'charging-short',
  judge({ job, plan }) {
    const { value: upgradeShare, from } = houseRule(job, 'charging-share');
    return plan.power.charging.flatMap(
      ({ name, alternatorA, vehicleA, averageA }): Verdict<'charging-short'>[] => {
        if (name === 'engine-off') return [];
        const demandA = vehicleA + averageA;
        const over = demandA > alternatorA + 1e-9;
        if (!over && demandA <= upgradeShare * alternatorA + 1e-9) return [];
        const idle = name === 'idle';
        return [
          {
            level: over && !idle ? 'stop' : 'caution',
            of: [name],
            message: `at ${name} the vehicle takes ${ampsDrawn(vehicleA)} and the audio ${ampsDrawn(averageA)} on average, ${alternatorA > 0 ? percent(demandA / alternatorA) : 'all and more'} of the ${amps(alternatorA)} that the hot alternator gives`,
            value: demandA,
            limit: over ? alternatorA : upgradeShare * alternatorA,
            unit: 'A',
            remedy:
              over && idle
                ? 'do not play loud at idle for long, or fit a larger alternator'
                : 'fit a larger alternator, or less average power',
            ...from,
            path: '/fitted',
            file: 'vehicle',
          },
        ];
      },
    );
  },
};

const loadAssumed: Rule = {
  id: 'vehicle-load-assumed',
  judge({ job, plan }) {
    if (job.vehicle['vehicle-load'] !== undefined || plan.power.charging.length === 0) return [];
    const { value, from } = houseRule(job, 'vehicle-load');
    return [
      {
        level: 'note',
        of: [job.vehicle.id],
        message: `the load of the vehicle itself is not measured: ${ampsDrawn(value)} is assumed in the charging balance`,
        value,
        unit: 'A',
        remedy:
          'clamp a meter round the battery lead with lights, blower and heated glass on, engine running, and write it as vehicle-load: of the vehicle',
        ...from,
        path: '',
        file: 'vehicle',
      },
    ];
  },
};

const leavesNoStart: Rule = {
  id: 'reserve-leaves-no-start',
  judge({ job }) {
    const { value: limit, from } = houseRule(job, 'reserve-end');
    return job.devices.flatMap(
      ({ id, origin, spec, fittedReserveEnd }): Verdict<'reserve-leaves-no-start'>[] => {
        if (origin !== 'vehicle' || spec?.kind !== 'battery') return [];
        const value = fittedReserveEnd ?? spec['reserve-end'] ?? limit;
        if (value >= limit - 1e-9) return [];
        return [
          {
            level: 'caution',
            of: [id],
            message: `the reserve of ${id} ends at ${percent(value)} of its charge; it starts the engine, which asks for ${percent(limit)}`,
            value: value * 100,
            limit: limit * 100,
            unit: '%',
            remedy: `write reserve-end: ${percent(limit)} or more at ${id}, or play from a second battery that an isolating relay parts from it`,
            ...from,
            ...deviceSpot(job, id),
          },
        ];
      },
    );
  },
};

export const chargingRules: readonly Rule[] = [chargingShort, leavesNoStart, loadAssumed];

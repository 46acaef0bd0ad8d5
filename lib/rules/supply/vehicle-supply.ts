import { deviceSpot } from '../look-up.ts';
import type { Rule } from '../rule.ts';

const highVoltage: Rule = {
  id: 'high-voltage-vehicle',
  judge({ job: { vehicle } }) {
    if (vehicle.supply === 'combustion') return [];
    return [
      {
        level: 'caution',
        of: [vehicle.id],
        message: `${vehicle.id} is ${vehicle.supply === 'hybrid' ? 'a hybrid' : 'an electric vehicle'}: orange cable is not touched, and the source is the converter of the 12 V side with its own ampere limit`,
        remedy:
          "work on the 12 V side alone, switch off and wait as the vehicle's maker says, and write the converter's limit as the rating of the alternator",
        path: '/supply',
        file: 'vehicle',
      },
    ];
  },
};

const withoutBattery: Rule = {
  id: 'system-without-battery',
  judge({ job: { devices, vehicle } }) {
    if (devices.some(({ spec }) => spec?.kind === 'battery')) return [];
    return [
      {
        level: 'stop',
        of: [vehicle.id],
        message: `no battery stands in ${vehicle.id} or in the job: nothing carries the load with the engine off`,
        remedy:
          'write the battery under fitted: of the vehicle, with its links to the body and the alternator',
        path: '/fitted',
        file: 'vehicle',
      },
    ];
  },
};

const withoutStarter: Rule = {
  id: 'starter-battery-unknown',
  judge({ job }) {
    const fitted = job.devices.filter(({ origin }) => origin === 'vehicle');
    const batteries = fitted.flatMap(({ id, spec }) => (spec?.kind === 'battery' ? [{ id, spec }] : []));
    const [first] = batteries;
    if (job.vehicle.supply !== 'combustion' || !first) return [];
    if (batteries.some(({ spec }) => spec['cold-cranking'] !== undefined)) return [];
    return [
      {
        level: 'caution',
        of: batteries.map(({ id }) => id),
        message: `no battery of ${job.vehicle.id} says its cold-cranking current: it is not known which one starts the engine`,
        remedy: 'write cold-cranking: in the part of the starter battery, as it is printed on it',
        ...deviceSpot(job, first.id),
      },
    ];
  },
};

export const vehicleSupplyRules: readonly Rule[] = [highVoltage, withoutBattery, withoutStarter];

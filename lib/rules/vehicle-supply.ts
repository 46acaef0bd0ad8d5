import type { Rule } from './rule.ts';
import { commonPractice } from './source.ts';

const highVoltage: Rule = {
  id: 'high-voltage-vehicle',
  asks: "In a hybrid or electric vehicle only the 12 V side is used, its converter's ampere limit as the source, and orange cable is not touched.",
  levels: ['caution'],
  ...commonPractice,
  judge({ job: { vehicle } }) {
    if (vehicle.supply === 'combustion') return [];
    return [
      {
        level: 'caution',
        of: [vehicle.id],
        message: `${vehicle.id} is ${vehicle.supply === 'hybrid' ? 'a hybrid' : 'an electric vehicle'}: orange cable is not touched, and the source is the converter of the 12 V side with its own ampere limit`,
        remedy:
          "work on the 12 V side alone, switch off and wait as the vehicle's maker says, and write the converter's limit as the rating of the alternator",
        ...commonPractice,
        path: '/supply',
        file: 'vehicle',
      },
    ];
  },
};

const withoutBattery: Rule = {
  id: 'system-without-battery',
  asks: 'A battery stands in the system: it steadies the alternator, and carries the load with the engine off.',
  levels: ['stop'],
  ...commonPractice,
  judge({ job: { devices, vehicle } }) {
    if (devices.some(({ spec }) => spec?.kind === 'battery')) return [];
    return [
      {
        level: 'stop',
        of: [vehicle.id],
        message: `no battery stands in ${vehicle.id} or in the job: nothing carries the load with the engine off`,
        remedy:
          'write the battery under fitted: of the vehicle, with its links to the body and the alternator',
        ...commonPractice,
        path: '/fitted',
        file: 'vehicle',
      },
    ];
  },
};

export const vehicleSupplyRules: readonly Rule[] = [highVoltage, withoutBattery];

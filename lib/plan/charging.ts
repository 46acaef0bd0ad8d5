import type { PlanPower } from '../model/plan/index.ts';
import type { Remark } from '../model/remark.ts';
import type { Job } from '../model/resolved-job.ts';
import { chargingRegimes, type Reserve } from '../power/charging.ts';
import { isPowerFault, traced } from '../power/traced.ts';
import type { Circuit } from './circuit.ts';
import type { DeviceLoad } from './device-loads.ts';
import type { PlanBook } from './plan-book.ts';
import { powerRules } from './power-rules.ts';

const peukertRules = {
  flooded: 'peukert-flooded',
  'absorbed-glass-mat': 'peukert-agm',
  lithium: 'peukert-lithium',
} as const;

/** What the vehicle itself draws while music plays with the engine off: its source unit, by the part's data (A). */
function playingA({ devices }: Job): number {
  return devices.reduce(
    (sum, { origin, spec }) =>
      origin === 'vehicle' && spec?.kind === 'source-unit' ? sum + (spec.supply.draw ?? 0) : sum,
    0,
  );
}

/**
 * The charging balance at idle, cruising and with the engine off, of all alternators together. Where it can't be
 * made, for want of an alternator say, it is empty, and that is remarked.
 */
export function planCharging(
  job: Job,
  circuit: Circuit,
  loads: readonly DeviceLoad[],
  book: PlanBook,
): PlanPower['charging'] {
  const alternators = circuit.sources.flatMap(({ device: { id, spec } }) =>
    spec?.kind === 'alternator' ? [[id, spec.rating] as const] : [],
  );
  const batteries = circuit.sources.flatMap(({ device: { spec } }): Reserve[] =>
    spec?.kind === 'battery'
      ? [
          {
            capacityAh: spec.capacity / 3600,
            chemistry: spec.chemistry,
            exponent: job.rules[peukertRules[spec.chemistry]].value,
          },
        ]
      : [],
  );
  const own = job.devices.filter(({ origin }) => origin === 'job').map(({ id }) => id);
  const playing = loads.filter(({ item }) => own.includes(item));
  const average = traced(
    playing.reduce((sum, { musicA }) => sum + musicA, 0),
    'A',
    {
      rule: 'charging-average',
      formula: 'the sum of what the devices draw with music',
      citation: 'sum of currents',
      inputs: playing.map(({ item, musicA }) => [item, musicA, 'A'] as const),
    },
  );
  const regimes = chargingRegimes(
    {
      alternatorsA: Object.fromEntries(alternators),
      hotIdleShare: job.rules['alternator-idle-share'].value,
      hotCruiseShare: job.rules['alternator-cruise-share'].value,
      vehicleA: job.vehicle['vehicle-load'] ?? job.rules['vehicle-load'].value,
      vehicleOffA: playingA(job),
      averageA: average.value,
      batteries,
    },
    powerRules(job.rules),
  );
  if (isPowerFault(regimes)) {
    book.remark(notBalanced(job, regimes.fault), { path: '/fitted', file: 'vehicle' });
    return [];
  }
  return regimes.map(({ name, alternatorA, vehicleA, marginA, reserveMinutes }) => {
    const at = `power.charging.${name}`;
    return {
      name,
      alternatorA: book.trace(`${at}.alternatorA`, alternatorA),
      vehicleA: book.trace(`${at}.vehicleA`, vehicleA),
      averageA: book.trace(`${at}.averageA`, average),
      marginA: book.trace(`${at}.marginA`, marginA),
      reserveMinutes: reserveMinutes && book.trace(`${at}.reserveMinutes`, reserveMinutes),
    };
  });
}

function notBalanced({ vehicle }: Job, fault: string): Remark {
  return {
    rule: 'charging-unknown',
    level: 'caution',
    of: [vehicle.id],
    message: `whether ${vehicle.id} charges enough is not known: ${fault}`,
    remedy: 'write the alternator, or the converter in its place, with its rating among what is fitted',
  };
}

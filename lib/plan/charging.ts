import { isFault } from '../audio/fault.ts';
import { turnOnSum } from '../audio/turn-on.ts';
import type { PlanPower, PlanTurnOn } from '../model/plan/index.ts';
import { type Job, terminalId } from '../model/resolved-job.ts';
import { chargingRegimes, type Reserve } from '../power/charging.ts';
import { isPowerFault } from '../power/traced.ts';
import { remarkFault } from './audio-channels.ts';
import type { Circuit } from './circuit.ts';
import { type DevicesById, terminalRole } from './conductor-role.ts';
import { type DeviceLoad, supplyOf } from './device-loads.ts';
import type { PlanBook } from './plan-book.ts';
import { powerRules } from './power-rules.ts';

/** The charging balance at idle, cruising and with the engine off; empty where the vehicle has no alternator. */
export function planCharging(
  job: Job,
  circuit: Circuit,
  loads: readonly DeviceLoad[],
  book: PlanBook,
): PlanPower['charging'] {
  const alternator = circuit.sources.flatMap(({ device }) =>
    device.spec?.kind === 'alternator' ? [device.spec] : [],
  )[0];
  if (!alternator) return [];
  const batteries = circuit.sources.flatMap(({ device: { spec } }): Reserve[] =>
    spec?.kind === 'battery' ? [{ capacityAh: spec.capacity / 3600, chemistry: spec.chemistry }] : [],
  );
  const own = job.devices.filter(({ origin }) => origin === 'job').map(({ id }) => id);
  const regimes = chargingRegimes(
    {
      alternatorRatedA: alternator.rating,
      hotIdleShare: job.rules['alternator-idle-share'].value,
      hotCruiseShare: job.rules['alternator-cruise-share'].value,
      vehicleA: job.vehicle['vehicle-load'] ?? job.rules['vehicle-load'].value,
      vehicleOffA: 0,
      averageA: loads.filter(({ item }) => own.includes(item)).reduce((sum, { musicA }) => sum + musicA, 0),
      batteries,
    },
    powerRules(job.rules),
  );
  if (isPowerFault(regimes)) return [];
  return regimes.map(({ name, alternatorA, vehicleA, averageA, marginA, reserveMinutes }) => {
    const at = `power.charging.${name}`;
    return {
      name,
      alternatorA: book.trace(`${at}.alternatorA`, alternatorA),
      vehicleA: book.trace(`${at}.vehicleA`, vehicleA),
      averageA,
      marginA: book.trace(`${at}.marginA`, marginA),
      reserveMinutes: reserveMinutes && book.trace(`${at}.reserveMinutes`, reserveMinutes),
    };
  });
}

/** What each turn-on output drives, summed against what it can give. */
export function planTurnOn(job: Job, devices: DevicesById, book: PlanBook): PlanTurnOn[] {
  return turnOnOutputs(job, devices).map(({ end, loads }) => {
    const source = terminalId(end);
    const device = devices.get(end.device);
    const limitA = device?.facts.terminals[end.terminal]?.current ?? null;
    const sum = turnOnSum({ source, limitA }, loads);
    if (isFault(sum)) {
      if (device) remarkFault(sum, device, book);
      return { source, loads, sumA: null, limitA, within: null };
    }
    const at = `power.turnOn.${source}`;
    return {
      source,
      loads,
      sumA: book.trace(`${at}.sumA`, sum.sumA),
      limitA: book.trace(`${at}.limitA`, sum.limitA),
      within: sum.within,
    };
  });
}

function turnOnOutputs(job: Job, devices: DevicesById) {
  const outputs = new Map<
    string,
    { end: Job['links'][number]['from']; loads: { item: string; currentA: number | null }[] }
  >();
  for (const link of job.links) {
    for (const [end, other] of [
      [link.from, link.to],
      [link.to, link.from],
    ] as const) {
      if (terminalRole(devices, end) !== 'turn-on-out') continue;
      const id = terminalId(end);
      const output = outputs.get(id) ?? { end, loads: [] };
      output.loads.push({ item: other.device, currentA: turnOnDrawA(devices, other.device) });
      outputs.set(id, output);
    }
  }
  return [...outputs.values()];
}

function turnOnDrawA(devices: DevicesById, id: string): number | null {
  const spec = devices.get(id)?.spec ?? null;
  if (spec?.kind === 'relay') return spec['coil-current'];
  return supplyOf(spec)?.['turn-on-draw'] ?? null;
}

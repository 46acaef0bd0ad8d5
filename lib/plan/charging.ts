import type { PartOf } from '../model/kinds/index.ts';
import type { PlanPower } from '../model/plan/index.ts';
import type { Remark } from '../model/remark.ts';
import type { Job } from '../model/resolved-job.ts';
import type { Traced } from '../model/trace.ts';
import { type ChargingRegime, chargingRegimes, type Reserve } from '../power/charging.ts';
import { isPowerFault, type PowerFault, traced } from '../power/traced.ts';
import type { Circuit, CircuitLoad, CircuitSource } from './circuit.ts';
import { suppliedIslands } from './circuit-states.ts';
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
  const balance = ({ playing, batteries, vehicleOffA }: Side): Balanced | PowerFault => {
    const average = averageOf(playing);
    const input = {
      alternatorsA: Object.fromEntries(alternators),
      hotIdleShare: job.rules['alternator-idle-share'].value,
      hotCruiseShare: job.rules['alternator-cruise-share'].value,
      vehicleA: job.vehicle['vehicle-load'] ?? job.rules['vehicle-load'].value,
      vehicleOffA,
      averageA: average.value,
      batteries,
    };
    const regimes = chargingRegimes(input, powerRules(job.rules));
    return isPowerFault(regimes) ? regimes : regimes.map((regime) => ({ regime, average }));
  };
  const [on, ...off] = sidesOf(job, circuit, loads).map(balance);
  if (!on || isPowerFault(on)) {
    book.remark(notBalanced(job, on?.fault ?? 'nothing is fed'), { path: '/fitted', file: 'vehicle' });
    return [];
  }
  const running = on.filter(({ regime }) => regime.name !== 'engine-off');
  const standing = off.flatMap((one) => (isPowerFault(one) ? [] : one)).filter(isStanding);
  return [...running, ...standing.toSorted(byReserve).slice(0, 1)].map(({ regime, average }) => {
    const { name, alternatorA, vehicleA, marginA, reserveMinutes } = regime;
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

/** What is balanced together: the loads that one group of batteries carries. */
interface Side {
  readonly playing: readonly DeviceLoad[];
  readonly batteries: readonly Reserve[];
  readonly vehicleOffA: number;
}

type Balanced = readonly { readonly regime: ChargingRegime; readonly average: Traced<number> }[];

/**
 * First the side of the alternator with the engine running, on which a charger counts with its input and what lies
 * behind it does not; then, with the engine off, each group of batteries with what is joined to it.
 */
function sidesOf(job: Job, circuit: Circuit, loads: readonly DeviceLoad[]): readonly Side[] {
  const own = (fed: readonly CircuitLoad[]) =>
    loads.filter(({ item }) => fed.some(({ device }) => device.id === item && device.origin === 'job'));
  const reserves = (batteries: readonly CircuitSource[]) =>
    batteries.flatMap(({ device: { spec } }) => (spec?.kind === 'battery' ? [reserveOf(job, spec)] : []));
  const isVehicles = ({ primary }: { readonly primary: CircuitSource }) => primary === circuit.primary;
  const [running] = suppliedIslands(circuit, 'engine-on').filter(isVehicles);
  const standing = suppliedIslands(circuit, 'engine-off');
  return [
    {
      playing: running ? own([...running.loads, ...running.chargers]) : [],
      batteries: reserves(running?.batteries ?? []),
      vehicleOffA: 0,
    },
    ...standing.map((island) => ({
      playing: own(island.loads),
      batteries: reserves(island.batteries),
      vehicleOffA: isVehicles(island) ? playingA(job) : 0,
    })),
  ];
}

function reserveOf({ rules }: Job, { capacity, chemistry }: PartOf<'battery'>): Reserve {
  return { capacityAh: capacity / 3600, chemistry, exponent: rules[peukertRules[chemistry]].value };
}

function averageOf(playing: readonly DeviceLoad[]): Traced<number> {
  return traced(
    playing.reduce((sum, { musicA }) => sum + musicA, 0),
    'A',
    {
      rule: 'charging-average',
      formula: 'the sum of what the devices draw with music',
      citation: 'sum of currents',
      inputs: playing.map(({ item, musicA }) => [item, musicA, 'A'] as const),
    },
  );
}

const isStanding = ({ regime }: Balanced[number]): boolean => regime.name === 'engine-off';

/** The group that runs down first goes before one that lasts longer, and one that gives nothing comes last. */
function byReserve(a: Balanced[number], b: Balanced[number]): number {
  const minutes = ({ regime }: Balanced[number]) => regime.reserveMinutes?.value ?? Number.MAX_VALUE;
  return minutes(a) - minutes(b) || a.regime.marginA.value - b.regime.marginA.value;
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

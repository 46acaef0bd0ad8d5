import type { Job } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import type { Part } from '../../model/kinds/index.ts';
import { regimeNames } from '../../model/operating-points.ts';
import type { OperatingPoint, NetworkElement as PlanElement, PlanPower } from '../../model/plan/index.ts';
import type { Remark } from '../../model/remark.ts';
import { type BatteryFlow, chargingRegime, type RegimeFlows } from '../../power/charging-balance.ts';
import { powerRules } from '../../power/house-power-rules.ts';
import { chargerInputA } from '../../power/network/charger-draw.ts';
import type { PlanBook } from '../plan-book.ts';
import type { Circuit, CircuitSource } from './circuit/circuit.ts';
import { type Island, islandAt, islandsOf } from './circuit/circuit-islands.ts';

const peukertRules = {
  flooded: 'peukert-flooded',
  'absorbed-glass-mat': 'peukert-agm',
  lithium: 'peukert-lithium',
} as const;

/** The operating point at which each regime is solved. */
const pointOf = { idle: 'music', cruise: 'cruise', 'engine-off': 'engine-off' } as const;
const shareOf = {
  idle: 'alternator-idle-share',
  cruise: 'alternator-cruise-share',
} as const;

/**
 * The charging balance at idle, cruising and with the engine off, with music, of all alternators together, from what
 * flows at the operating points. Where it can't be made, for want of an alternator say, it is empty, and that is
 * remarked; a regime whose point has no solution is left out, since a finding tells of that.
 */
export function planCharging(
  job: Job,
  { circuit, islands }: { readonly circuit: Circuit; readonly islands: readonly Island[] },
  points: readonly OperatingPoint[],
  book: PlanBook,
): PlanPower['charging'] {
  const main = circuit.primary && islandAt(islands, circuit.primary.positive);
  if (!circuit.sources.some(({ type }) => type === 'alternator')) {
    book.remark(notBalanced(job, 'no alternator is known'), { path: '/fitted', file: 'vehicle' });
    return [];
  }
  const drained = drainedBatteries(circuit, points);
  return regimeNames.flatMap((name): PlanPower['charging'] => {
    const point = points.find((one) => one.name === pointOf[name]);
    if (!point || point.state === 'no-solution') return [];
    const share = name === 'engine-off' ? null : job.rules[shareOf[name]].value;
    const flows = regimeFlows(job, circuit, point, share, { main: main?.nodes ?? new Set(), drained });
    const regime = chargingRegime(flows, powerRules(job.rules));
    if (isFault(regime)) {
      book.remark(notBalanced(job, regime.message), { path: '/fitted', file: 'vehicle' });
      return [];
    }
    const at = `power.charging.${name}`;
    const { reserveMinutes, rechargeMinutes } = regime;
    return [
      {
        name,
        alternatorA: book.trace(`${at}.alternatorA`, regime.alternatorA),
        vehicleA: book.trace(`${at}.vehicleA`, regime.vehicleA),
        averageA: book.trace(`${at}.averageA`, regime.averageA),
        ...(share !== null && chargersOf(job, point, flows.devicesA, at, book)),
        marginA: book.trace(`${at}.marginA`, regime.marginA),
        batteryA: book.trace(`${at}.batteryA`, regime.batteryA),
        reserveMinutes: reserveMinutes && book.trace(`${at}.reserveMinutes`, reserveMinutes),
        rechargeMinutes: rechargeMinutes && book.trace(`${at}.rechargeMinutes`, rechargeMinutes),
        ...(share !== null && {
          recharges: regime.recharges.map(({ id, minutes }) => ({
            battery: id,
            minutes: minutes && book.trace(`${at}.recharges.${id}`, minutes),
            through: chargedThrough(circuit, id),
          })),
        }),
      },
    ];
  });
}

/**
 * What flows in a regime. With the engine running what hangs on the output of a charger is not counted: the charger's
 * own draw stands for it.
 */
function regimeFlows(
  job: Job,
  { sources }: Circuit,
  { elements }: OperatingPoint,
  share: number | null,
  { main, drained }: { readonly main: ReadonlySet<string>; readonly drained: ReadonlyMap<string, number> },
): RegimeFlows {
  const counts = (node: string) => share === null || main.has(node);
  const currentOf = (some: readonly PlanElement[]) =>
    some.reduce((sum, { currentA = 0 }) => sum + currentA, 0);
  const drawing = elements.filter(({ kind, from }) => kind === 'load' && counts(from));
  const own = new Set(job.devices.filter(({ origin }) => origin === 'job').map(({ id }) => id));
  const devices = [...new Set(drawing.map(({ of }) => of))].filter((id) => own.has(id));
  return {
    alternators: Object.fromEntries(
      sources.flatMap(({ device: { id, spec } }) =>
        spec?.kind === 'alternator' && share !== null ? [[id, { ratingA: spec.rating, share }]] : [],
      ),
    ),
    vehicleA: currentOf(drawing.filter(({ of }) => !own.has(of))),
    vehicleAssumed: share !== null && job.vehicle['vehicle-load'] === undefined,
    devicesA: Object.fromEntries(devices.map((id) => [id, currentOf(drawing.filter(({ of }) => of === id))])),
    batteries: sources.flatMap(({ device, positive }): BatteryFlow[] => {
      const { id, spec } = device;
      const reserveEnd = device.given?.['reserve-end'] ?? device.fittedReserveEnd ?? reserveEndOf(spec);
      const flow = elements.find((one) => one.of === id && one.model === 'two-slope');
      if (spec?.kind !== 'battery' || flow?.currentA === undefined) return [];
      return [
        {
          id,
          capacityAh: spec.capacity / 3600,
          exponent: job.rules[peukertRules[spec.chemistry]].value,
          ...(reserveEnd !== undefined && { reserveEnd }),
          currentA: flow.currentA,
          drainA: drained.get(id) ?? 0,
          shares: counts(positive),
        },
      ];
    }),
  };
}

/** What each charger that is counted draws at a point, and what it draws from there for a battery that is run down. */
function chargersOf(
  job: Job,
  { elements }: OperatingPoint,
  devicesA: RegimeFlows['devicesA'],
  at: string,
  book: PlanBook,
): Pick<PlanPower['charging'][number], 'chargers'> {
  const chargers = job.devices.flatMap(({ id, spec }) => {
    const currentA = devicesA[id];
    const input = elements.find(({ of, kind }) => of === id && kind === 'load');
    const inputV = input?.dropV ?? 0;
    if (spec?.kind !== 'charger' || currentA === undefined || !(inputV > 0)) return [];
    const flatA = book.trace(`${at}.chargers.${id}.flatA`, chargerInputA(spec, inputV));
    return [{ item: id, currentA, flatA }];
  });
  return chargers.length === 0 ? {} : { chargers };
}

/** What each battery gives with the engine off and music (A): one behind an open contact or a charger gives nothing. */
function drainedBatteries(
  { sources }: Circuit,
  points: readonly OperatingPoint[],
): ReadonlyMap<string, number> {
  const off = points.find(({ name }) => name === pointOf['engine-off']);
  return new Map(
    sources.flatMap(({ device: { id } }) => {
      const flow = off?.elements.find((one) => one.of === id && one.model === 'two-slope');
      return flow?.currentA === undefined ? [] : [[id, Math.max(0, -flow.currentA)] as const];
    }),
  );
}

/** The isolating relays and chargers that a battery is charged through; none where conductors alone join it. */
function chargedThrough(circuit: Circuit, battery: string): string[] {
  const own = circuit.sources.find(({ device }) => device.id === battery);
  if (!own) return [];
  const parted = islandAt(islandsOf(circuit, 'engine-off'), own.positive);
  const joined = islandAt(islandsOf(circuit, 'engine-on'), own.positive);
  const gives = ({ type }: CircuitSource) => type === 'alternator';
  if (parted?.sources.some(gives)) return [];
  const through = joined?.sources.some(gives)
    ? circuit.edges.filter(
        ({ closed, from, to }) =>
          closed !== undefined && (parted?.nodes.has(from) ?? false) !== (parted?.nodes.has(to) ?? false),
      )
    : (joined?.sources ?? []).filter(({ type }) => type === 'charger');
  return [...new Set(through.flatMap(({ device }) => device?.id ?? []))];
}

/** The charge at which the reserve of a battery ends, by its maker. */
function reserveEndOf(part: Part | null): number | undefined {
  return part?.kind === 'battery' ? part['reserve-end'] : undefined;
}

function notBalanced({ vehicle }: Pick<Job, 'vehicle'>, fault: string): Remark {
  return {
    rule: 'charging-unknown',
    level: 'caution',
    of: [vehicle.id],
    message: `whether ${vehicle.id} charges enough is not known: ${fault}`,
    remedy: 'write the alternator, or the converter in its place, with its rating among what is fitted',
  };
}

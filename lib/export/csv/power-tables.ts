import type { BuildPlan } from '../../model/plan/index.ts';
import { terminalWords } from '../../model/plan/shown-names.ts';
import { printed } from '../../model/printed/index.ts';
import { csvTable, listed } from './csv-table.ts';
import type { CsvTables } from './tables.ts';

/** Fuses, conductors with their limits, voltages at the devices, charging. */
export const powerTables = {
  fuses: ({ shop, job, power, wires }) =>
    csvTable({ shop, job }, power.fuses, [
      { title: 'fuse', value: ({ id }) => id },
      { title: 'holder', value: ({ item }) => item },
      { title: 'way', value: ({ way }) => way },
      { title: 'form', value: ({ form }) => form },
      { title: 'rating_A', figure: 'current-allowed', of: ({ ratingA }) => ratingA },
      { title: 'part', value: ({ part }) => part },
      { title: 'from', value: ({ from }) => from },
      { title: 'to', value: ({ to }) => to },
      { title: 'from_source', length: 'from-source', lengthM: ({ distanceM }) => distanceM },
      { title: 'protects', value: ({ protects }) => listed(protects.map((id) => labelOf(wires, id))) },
      { title: 'at_rated_power_A', figure: 'current-carried', of: ({ ratedA }) => ratedA },
      { title: 'ceiling_A', figure: 'current-allowed', of: ({ ceilingA }) => ceilingA },
      { title: 'least_ampacity_A', figure: 'current-allowed', of: ({ leastAmpacityA }) => leastAmpacityA },
      { title: 'interrupts_A', figure: 'current-allowed', of: ({ interruptA }) => interruptA },
      { title: 'interrupts_by', value: ({ interruptBasis }) => interruptBasis ?? null },
      { title: 'must_interrupt_A', figure: 'current-carried', of: ({ needsInterruptA }) => needsInterruptA },
      { title: 'short_A', figure: 'current-carried', of: ({ faultA }) => faultA ?? null },
      { title: 'short_at', value: ({ faultAt }) => faultAt ?? null },
      {
        title: 'short_from',
        value: ({ faultFrom = [] }) =>
          listed(
            faultFrom.map(({ source, currentA }) => `${source} ${printed('current-carried', currentA)}`),
          ),
      },
      { title: 'in_stock', value: ({ stockQuantity }) => stockQuantity },
      { title: 'chosen', value: ({ chosen }) => chosen },
      { title: 'reason', value: ({ reason }) => reason },
    ]),
  conductors: ({ shop, job, power, wires, items }) => {
    const terminal = terminalWords({ items });
    return csvTable({ shop, job }, power.conductors, [
      { title: 'label', value: ({ id }) => labelOf(wires, id) },
      { title: 'wire', value: ({ id }) => id },
      { title: 'from', value: ({ from }) => terminal(from) },
      { title: 'to', value: ({ to }) => terminal(to) },
      { title: 'role', value: ({ role }) => role },
      { title: 'size', value: ({ size }) => size.label },
      { title: 'area_mm2', figure: 'cross-section', of: ({ size }) => size.areaMm2 },
      { title: 'material', value: ({ material }) => material },
      { title: 'insulation_C', figure: 'temperature-stood', of: ({ insulationC }) => insulationC },
      { title: 'length', length: 'wire', lengthM: ({ lengthM }) => lengthM, feet: true },
      {
        title: 'must_carry_A',
        figure: 'current-carried',
        of: ({ neededA }) => (neededA > 0 ? neededA : null),
      },
      { title: 'ampacity_A', figure: 'current-allowed', of: ({ ampacityA }) => ampacityA },
      { title: 'caution_A', figure: 'current-allowed', of: ({ cautionA }) => cautionA },
      { title: 'fed', value: ({ fed }) => (fed ? 'yes' : 'no') },
      { title: 'fuses', value: ({ fuses }) => listed(fuses) },
      { title: 'chosen', value: ({ chosen }) => chosen },
      { title: 'reason', value: ({ reason }) => reason },
    ]);
  },
  'conductor-limits': ({ shop, job, power, wires }) =>
    csvTable(
      { shop, job },
      power.conductors.flatMap(({ id, limits }) => limits.map((limit) => ({ wire: id, ...limit }))),
      [
        { title: 'label', value: ({ wire }) => labelOf(wires, wire) },
        { title: 'wire', value: ({ wire }) => wire },
        { title: 'what', value: ({ what }) => what },
        { title: 'zone', value: ({ zone }) => zone },
        { title: 'value', value: ({ value }) => value },
        { title: 'limit', value: ({ limit }) => limit },
        { title: 'unit', value: ({ unit }) => unit },
        { title: 'level', value: ({ level }) => level },
        { title: 'source', value: ({ citation }) => citation },
      ],
    ),
  drops: ({ shop, job, power }) =>
    csvTable({ shop, job }, power.drops, [
      { title: 'operating_point', value: ({ point }) => point },
      { title: 'device', value: ({ item }) => item },
      { title: 'source', value: ({ source }) => source },
      { title: 'voltage_V', figure: 'voltage', of: ({ voltageV }) => voltageV },
      { title: 'feed_drop_V', figure: 'voltage-lost', of: ({ feedDropV }) => feedDropV },
      { title: 'ground_drop_V', figure: 'voltage-lost', of: ({ groundDropV }) => groundDropV },
      {
        title: 'drop_percent',
        figure: 'share-lost',
        of: ({ share }) => (share === null ? null : share * 100),
      },
      { title: 'not_known', value: ({ unknown }) => unknown ?? null },
    ]),
  charging: ({ shop, job, power }) =>
    csvTable({ shop, job }, power.charging, [
      { title: 'regime', value: ({ name }) => name },
      { title: 'alternator_A', figure: 'current-allowed', of: ({ alternatorA }) => alternatorA },
      { title: 'vehicle_A', figure: 'current-carried', of: ({ vehicleA }) => vehicleA },
      { title: 'average_A', figure: 'current-carried', of: ({ averageA }) => averageA },
      { title: 'margin_A', figure: 'current-left', of: ({ marginA }) => marginA },
      { title: 'battery_A', figure: 'current-left', of: ({ batteryA }) => batteryA },
      { title: 'reserve_min', figure: 'time-left', of: ({ reserveMinutes }) => reserveMinutes },
      { title: 'recharge_min', figure: 'time-needed', of: ({ rechargeMinutes }) => rechargeMinutes },
      {
        title: 'recharged',
        value: ({ recharges = [] }) => recharges.map(({ battery }) => battery).join(' '),
      },
      {
        title: 'recharged_through',
        value: ({ recharges = [] }) => [...new Set(recharges.flatMap(({ through }) => through))].join(' '),
      },
    ]),
} as const satisfies CsvTables;

/** The label of a wire, or its id where it has none. */
export function labelOf(wires: BuildPlan['wires'], id: string): string {
  return wires.find((wire) => wire.id === id)?.label || id;
}

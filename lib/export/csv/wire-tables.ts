import type { PlanWire } from '../../model/plan/index.ts';
import { shownTerminal, terminalWords } from '../../model/plan/shown-names.ts';
import { madeMm } from '../../model/printed/holes.ts';
import { labelRows } from '../labels/labels-of-both-ends.ts';
import { type CsvColumn, csvTable, listed } from './csv-table.ts';
import { labelOf } from './power-tables.ts';
import type { CsvTables } from './tables.ts';

/** Wires, cables, runs, terminals and the labels of both ends. */
export const wireTables = {
  wires: ({ shop, job, wires, items }) => {
    const terminal = terminalWords({ items });
    return csvTable({ shop, job }, wires, [
      { title: 'label', value: ({ label }) => label },
      { title: 'wire', value: ({ id }) => id },
      { title: 'origin', value: ({ origin }) => origin },
      { title: 'role', value: ({ role }) => role },
      { title: 'from', value: ({ from }) => terminal(from) },
      { title: 'to', value: ({ to }) => terminal(to) },
      { title: 'size', value: ({ size }) => size.label },
      { title: 'area_mm2', figure: 'cross-section', of: ({ size }) => size.areaMm2 },
      { title: 'colour', value: ({ colour }) => colour },
      { title: 'cut_to', length: 'wire', lengthM: ({ lengthM }) => lengthM, feet: true },
      { title: 'how_measured', value: ({ measured }) => measured },
      { title: 'reel', value: ({ part }) => part },
      { title: 'cable', value: ({ cable }) => cable },
      { title: 'conductor', value: ({ conductor }) => conductor },
      { title: 'board', value: ({ board }) => board },
      { title: 'run', value: ({ run }) => run },
      { title: 'zones', value: ({ zones }) => listed(zones.map(({ zone }) => zone)) },
      { title: 'covering', value: ({ covering }) => listed(covering) },
      ...endColumns('a', 0, terminal),
      ...endColumns('b', 1, terminal),
    ]);
  },
  cables: ({ shop, job, cables, wires }) =>
    csvTable(
      { shop, job },
      cables.flatMap(({ conductors, ...cable }) => conductors.map((conductor) => ({ cable, ...conductor }))),
      [
        { title: 'cable', value: ({ cable }) => cable.id },
        { title: 'part', value: ({ cable }) => cable.part },
        { title: 'length', length: 'wire', lengthM: ({ cable }) => cable.lengthM, feet: true },
        { title: 'conductor', value: ({ name }) => name },
        { title: 'colour', value: ({ colour }) => colour },
        { title: 'size', value: ({ size }) => size.label },
        { title: 'carries', value: ({ wire }) => (wire === null ? 'spare' : labelOf(wires, wire)) },
      ],
    ),
  runs: ({ shop, job, runs, wires }) =>
    csvTable({ shop, job }, runs, [
      { title: 'run', value: ({ id }) => id },
      { title: 'title', value: ({ title }) => title },
      { title: 'side', value: ({ side }) => side },
      { title: 'wires', value: (run) => listed(run.wires.map((id) => labelOf(wires, id))) },
      { title: 'length', length: 'way', lengthM: ({ lengthM }) => lengthM, feet: true },
      { title: 'bundle', length: 'size', lengthM: ({ bundleM }) => bundleM },
      { title: 'covering', value: ({ covering }) => covering },
      {
        title: 'grommets',
        value: ({ grommets }) =>
          listed(
            grommets.map(
              ({ part, own, unmeasured }) => part ?? (own || unmeasured ? "the vehicle's own" : 'none fits'),
            ),
          ),
      },
    ]),
  terminals: ({ shop, job, terminals, wires, items }) =>
    csvTable({ shop, job }, terminals, [
      { title: 'item', value: ({ item }) => item },
      {
        title: 'terminal',
        value: ({ item, terminal }) =>
          shownTerminal(
            items.find(({ id }) => id === item),
            terminal,
          ),
      },
      { title: 'state', value: ({ state }) => state },
      { title: 'wires', value: (one) => listed(one.wires.map((id) => labelOf(wires, id))) },
      { title: 'reason', value: ({ reason }) => reason },
    ]),
  labels: (plan) =>
    csvTable(plan, labelRows(plan), [
      { title: 'label', value: ({ label }) => label },
      { title: 'end', value: ({ end }) => end },
      { title: 'copy', value: ({ copy }) => copy },
      { title: 'here', value: ({ here }) => here },
      { title: 'there', value: ({ there }) => there },
      { title: 'size', value: ({ size }) => size },
      { title: 'colour', value: ({ colour }) => colour },
      { title: 'role', value: ({ role }) => role },
      { title: 'wire', value: ({ wire }) => wire },
    ]),
} as const satisfies CsvTables;

function endColumns(
  name: 'a' | 'b',
  index: 0 | 1,
  terminalText: (id: string) => string,
): CsvColumn<PlanWire>[] {
  return [
    { title: `end_${name}`, value: ({ ends }) => terminalText(ends[index].terminal) },
    { title: `end_${name}_preparation`, value: ({ ends }) => ends[index].prep },
    { title: `end_${name}_part`, value: ({ ends }) => ends[index].part },
    { title: `end_${name}_strip`, length: 'strip', lengthM: ({ ends }) => ends[index].stripM },
    { title: `end_${name}_stud`, value: ({ ends }) => ends[index].stud },
    {
      title: `end_${name}_hole_mm`,
      value: ({ ends }) => (ends[index].holeM === undefined ? null : madeMm(ends[index].holeM)),
    },
    { title: `end_${name}_die`, value: ({ ends }) => ends[index].die },
    { title: `end_${name}_shrink`, value: ({ ends }) => ends[index].shrink?.part },
    {
      title: `end_${name}_shrink_length`,
      length: 'covered',
      lengthM: ({ ends }) => ends[index].shrink?.lengthM,
    },
    { title: `end_${name}_torque_Nm`, figure: 'torque', of: ({ ends }) => ends[index].torqueNm },
    { title: `end_${name}_loop`, length: 'way', lengthM: ({ ends }) => ends[index].loopM },
  ];
}

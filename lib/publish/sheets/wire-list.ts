import type { BuildPlan, PlanCable, PlanRun, PlanWire, WireEnd } from '../../model/plan/index.ts';
import { counted, spelled, spelledWithin } from '../words.ts';
import { lengthOr, measure, none, type Writer, writerFor } from '../written.ts';
import { builderSheet } from './sheet.ts';
import { type Cell, strong, type Table, tableOf, tick } from './table.ts';

/** What is cut, reel by reel and the longest first; then what each cable carries. */
export interface WireListSheet {
  readonly reels: readonly Table[];
  readonly cables: readonly Table[];
  readonly runs: Table | null;
  readonly fitted: Table | null;
}

function reelTable(caption: string, wires: readonly PlanWire[], write: Writer): Table {
  return tableOf(
    caption,
    [...wires].sort((a, b) => b.lengthM - a.lengthM || (a.id < b.id ? -1 : 1)),
    [
      { title: 'Label', cell: (wire) => ({ text: wire.label, strong: true, beside: spelled(wire.role) }) },
      { title: 'Size', cell: (wire) => ({ text: wire.size.label, beside: wire.colour ?? 'any colour' }) },
      { title: 'Cut to', kind: 'figure', cell: (wire) => strongLength(wire, write) },
      { title: 'End A', cell: (wire) => endCell(wire.ends[0], write) },
      { title: 'End B', cell: (wire) => endCell(wire.ends[1], write) },
      tick('Cut'),
      tick('A'),
      tick('B'),
      tick('Pull'),
      tick('Label'),
    ],
    (wire) => wire.id,
  );
}

function strongLength(wire: PlanWire, write: Writer): Cell {
  const { text, beside } = write.wire(wire.lengthM);
  return strong(text, beside);
}

function endCell(end: WireEnd, write: Writer): Cell {
  const details = [
    end.part === null || end.part === end.prep ? end.prep : `${end.prep}, ${end.part}`,
    end.stripM === null ? '' : `strip ${write.length(end.stripM).text}`,
    end.torqueNm === undefined ? '' : measure(end.torqueNm, 'N m', 1),
  ];
  return { text: end.terminal, beside: details.filter((text) => text !== '').join(', ') };
}

function cableTable(cable: PlanCable, labels: ReadonlyMap<string, string>, write: Writer): Table {
  const { text } = write.wire(cable.lengthM);
  return tableOf(`Cable ${cable.id}: ${cable.part}, ${text}`, cable.conductors, [
    { title: 'Conductor', cell: (one) => strong(one.name) },
    { title: 'Colour', cell: (one) => one.colour },
    { title: 'Size', cell: (one) => one.size.label },
    { title: 'Carries', cell: (one) => (one.wire === null ? 'spare' : (labels.get(one.wire) ?? one.wire)) },
    tick('Done'),
  ]);
}

function runsTable(plan: BuildPlan, labels: ReadonlyMap<string, string>, write: Writer): Table | null {
  if (plan.runs.length === 0) return null;
  const grommetText = ({ zone, holeM, part }: PlanRun['grommets'][number]): string =>
    [
      part ?? 'no grommet that fits',
      `at ${spelledWithin(zone)}`,
      holeM === null ? '' : `hole ${write.length(holeM).text}`,
    ].join(' ');
  return tableOf(
    'Runs through the vehicle',
    plan.runs,
    [
      { title: 'Run', cell: (run) => strong(run.title, `${run.id}, ${run.side}`) },
      { title: 'Wires', cell: (run) => run.wires.map((wire) => labels.get(wire) ?? wire).join(', ') },
      { title: 'Length', kind: 'figure', cell: (run) => write.wire(run.lengthM) },
      { title: 'Bundle', kind: 'figure', cell: (run) => write.length(run.bundleM) },
      { title: 'Covering', cell: (run) => run.covering ?? none },
      {
        title: 'Grommets',
        cell: (run) => (run.grommets.length === 0 ? none : run.grommets.map(grommetText).join('; ')),
      },
      tick('Pulled'),
    ],
    (run) => run.id,
  );
}

function fittedTable(wires: readonly PlanWire[], write: Writer): Table | null {
  if (wires.length === 0) return null;
  return tableOf(
    'Conductors that the vehicle came with',
    wires,
    [
      { title: 'Wire', cell: (wire) => strong(wire.label) },
      { title: 'From', cell: (wire) => wire.from },
      { title: 'To', cell: (wire) => wire.to },
      { title: 'Size', cell: (wire) => wire.size.label },
      { title: 'Length', kind: 'figure', cell: (wire) => lengthOr(wire.lengthM, write.wire) },
    ],
    (wire) => wire.id,
  );
}

function byReel(wires: readonly PlanWire[]): readonly (readonly [string, PlanWire[]])[] {
  const reels = new Map<string, PlanWire[]>();
  for (const wire of wires) {
    const reel = wire.part ?? none.text;
    reels.set(reel, [...(reels.get(reel) ?? []), wire]);
  }
  return [...reels].sort(([a], [b]) => (a < b ? -1 : 1));
}

function wireModel(plan: BuildPlan): WireListSheet | null {
  if (plan.wires.length === 0) return null;
  const write = writerFor(plan.shop);
  const ours = plan.wires.filter((wire) => wire.origin === 'job');
  const labels = new Map(plan.wires.map((wire) => [wire.id, wire.label]));
  const titles = new Map(plan.pick.map((pick) => [pick.part, pick.title]));
  const cut = byReel(ours.filter((wire) => wire.cable === undefined));
  return {
    reels: cut.map(([reel, wires]) => reelTable(reelCaption(reel, wires, titles, write), wires, write)),
    cables: plan.cables.map((cable) => cableTable(cable, labels, write)),
    runs: runsTable(plan, labels, write),
    fitted: fittedTable(
      plan.wires.filter((wire) => wire.origin === 'vehicle'),
      write,
    ),
  };
}

function reelCaption(
  reel: string,
  wires: readonly PlanWire[],
  titles: ReadonlyMap<string, string>,
  write: Writer,
): string {
  const totalM = wires.reduce((sum, wire) => sum + wire.lengthM, 0);
  const name = reel === none.text ? 'No reel chosen' : (titles.get(reel) ?? reel);
  return `${name}: ${counted(wires.length, 'wire')}, ${write.wire(totalM).text} in all`;
}

export const wireList = builderSheet('wire-list', 'Wire list', wireModel);

import type { BuildPlan, PlanRun, PlanWire } from '../../model/plan/index.ts';
import type { ValueOrigin } from '../../model/trace.ts';
import { namesOf, type PlanNames } from '../words/plan-names.ts';
import { counted } from '../words/words.ts';
import { none, type Writer, writerFor } from '../words/written.ts';
import { coveringPieces, dressTable } from './run-dress.ts';
import { builderSheet } from './sheet.ts';
import {
  blank,
  dense,
  type Group,
  groupedTable,
  groupsBy,
  strong,
  type Table,
  tableOf,
  tick,
} from './table.ts';

/** What is cut, reel by reel and the longest first; then what is pulled, way by way. */
export interface WireListSheet {
  readonly cuts: Table | null;
  /** Wires that go together and part ways: how far together, and how long each leg. */
  readonly partings: Table | null;
  /** Wires that are joined to others before a port. */
  readonly joints: Table | null;
  readonly pulls: Table | null;
  /** What covers, holds and guards each run, with the reasons. */
  readonly dress: Table | null;
}

/** One piece that is cut from a reel: a wire, or a length of cable. */
interface Piece {
  readonly subject: string;
  readonly label: string;
  readonly what: string;
  readonly reel: string;
  readonly lengthM: number;
  /** Who says a length that is cut as it stands, with no loop added; null for a sum. */
  readonly cutAs: ValueOrigin | null;
  /** Where its ends go; what has no ends of its own tells where it lies instead. */
  readonly ends: readonly [string, string | null];
  readonly run: string | null;
}

/** A plan that was frozen before it told so says of a given length alone who says it. */
function cutAs({ cutAs: told, measured }: PlanWire): ValueOrigin | null {
  return told ?? (measured === 'given' ? 'given' : null);
}

function wirePiece(wire: PlanWire, names: PlanNames): Piece {
  return {
    subject: wire.id,
    label: names.wire(wire.id),
    what: `${wire.size.label} ${wire.colour ?? ''}`.trim(),
    reel: wire.part ?? none.text,
    lengthM: wire.lengthM,
    cutAs: cutAs(wire),
    ends: [names.terminal(wire.from), names.terminal(wire.to)],
    run: wire.run,
  };
}

/** Cables are pulled whole: a piece holds the wires of all its conductors. */
function cablePieces(plan: BuildPlan, names: PlanNames): Piece[] {
  return plan.cables.map(({ id, part, lengthM, conductors }) => {
    const wires = conductors.flatMap(({ wire }) => (wire === null ? [] : [wire]));
    const first = plan.wires.find((wire) => wire.id === wires[0]);
    return {
      subject: first?.id ?? id,
      label: wires.map(names.wire).join(' '),
      what: `cable ${id}`,
      reel: part,
      lengthM,
      cutAs: first ? cutAs(first) : null,
      ends: [deviceOf(first?.from), deviceOf(first?.to)],
      run: first?.run ?? null,
    };
  });
}

/** Covering is cut from its reel as wire is. */
function coveringPiece({ run, title, part, lengthM }: ReturnType<typeof coveringPieces>[number]): Piece {
  return {
    subject: run,
    label: run,
    what: 'covering',
    reel: part,
    lengthM,
    cutAs: null,
    ends: [title, null],
    run: null,
  };
}

function deviceOf(terminal: string | undefined): string {
  return terminal?.split('.')[0] ?? none.text;
}

function longestFirst(pieces: readonly Piece[]): Piece[] {
  return [...pieces].sort((a, b) => b.lengthM - a.lengthM || (a.subject < b.subject ? -1 : 1));
}

/** What has no ends to make up has no boxes for them. */
function endless({ ends: [, other] }: Piece): string {
  return other === null ? none.text : '';
}

function cutsTable(pieces: readonly Piece[], names: PlanNames, write: Writer): Table {
  const groups = groupsBy(
    [...longestFirst(pieces)].sort((a, b) => (a.reel < b.reel ? -1 : Number(a.reel > b.reel))),
    ({ reel }) => reel,
  ).map(({ title, things }): Group<Piece> => {
    const totalM = things.reduce((sum, piece) => sum + piece.lengthM, 0);
    const name = title === none.text || title === null ? 'No reel chosen' : names.part(title);
    return {
      title: `${name}: ${counted(things.length, 'piece')}, ${write.wire('length-taken', totalM).text} altogether`,
      things,
    };
  });
  return groupedTable(
    'Cut, reel by reel, the longest first',
    groups,
    [
      { title: 'Label', cell: (piece) => strong(piece.label) },
      {
        title: 'Cut to',
        kind: 'figure',
        leads: true,
        cell: ({ lengthM, cutAs }) => strong(write.wire('wire', lengthM).text, cutAs ?? undefined),
      },
      { title: 'End A', cell: ({ ends: [text, other] }) => ({ text, wide: other === null }) },
      { title: 'End B', cell: ({ ends }) => ends[1] ?? '' },
      tick('Cut'),
      tick('A', endless),
      tick('B', endless),
      tick('Pull-test', endless),
      tick('Label'),
    ],
    ({ subject }) => subject,
  );
}

function runTitle(run: PlanRun, write: Writer): string {
  return `${run.title} (${run.side}): way ${write.wire('way', run.lengthM).text}, bundle ${write.length('size', run.bundleM).text}`;
}

function pullsTable(plan: BuildPlan, pieces: readonly Piece[], write: Writer): Table | null {
  const groups = plan.runs
    .map((run) => ({
      title: runTitle(run, write),
      things: longestFirst(pieces.filter((piece) => piece.run === run.id)),
    }))
    .filter(({ things }) => things.length > 0);
  if (groups.length === 0) return null;
  return groupedTable(
    'Pull, way by way, the longest first',
    groups,
    [
      { title: 'Label', cell: (piece) => strong(piece.label) },
      { title: 'What', cell: ({ what }) => what },
      {
        title: 'Length',
        kind: 'figure',
        leads: true,
        cell: ({ lengthM }) => write.wire('wire', lengthM).text,
      },
      { title: 'From', cell: ({ ends }) => ends[0] },
      { title: 'To', cell: ({ ends }) => ends[1] ?? '' },
      tick('Pulled'),
      tick('Tied'),
      blank('Left over'),
    ],
    ({ subject }) => subject,
  );
}

function partingsTable(
  { branches }: Pick<BuildPlan, 'branches'>,
  names: PlanNames,
  write: Writer,
): Table | null {
  if (branches.length === 0) return null;
  const groups = branches.map(({ terminal, partsAtM, legs, facing }) => ({
    title: `From ${names.terminal(terminal)}, parted after ${write.wire('measured', partsAtM).text} of the way: ${facing}`,
    things: legs,
  }));
  return groupedTable(
    'Wires that part ways, cut whole and tied up to there',
    groups,
    [
      { title: 'Label', cell: ({ label }) => strong(label) },
      { title: 'Together', kind: 'figure', cell: ({ sharedM }) => write.wire('measured', sharedM).text },
      { title: 'Leg of its own', kind: 'figure', cell: ({ ownM }) => write.wire('way', ownM).text },
      {
        title: 'Cut to',
        kind: 'figure',
        leads: true,
        cell: ({ sharedM, ownM }) => write.wire('wire', sharedM + ownM).text,
      },
      tick('Turned'),
      tick('Tied'),
    ],
    ({ wire }) => wire,
  );
}

function jointsTable(
  { joints = [] }: Pick<BuildPlan, 'joints'>,
  names: PlanNames,
  write: Writer,
): Table | null {
  if (joints.length === 0) return null;
  return tableOf(
    'Wires that are joined to others before a port',
    joints,
    [
      { title: 'Label', cell: ({ label }) => strong(label) },
      { title: 'Joined to', cell: ({ trunkLabel }) => strong(trunkLabel) },
      { title: 'Before', leads: true, cell: ({ terminal }) => names.terminal(terminal) },
      {
        title: 'From the port',
        kind: 'figure',
        cell: ({ distanceM }) => write.wire('measured', distanceM).text,
      },
      { title: 'By', cell: ({ part }) => (part === null ? none.text : names.part(part)) },
      tick('Joined'),
      tick('Pull-test'),
    ],
    ({ id }) => id,
  );
}

function wireModel(plan: BuildPlan): WireListSheet | null {
  const names = namesOf(plan);
  const write = writerFor(plan.shop);
  const ours = plan.wires.filter((wire) => wire.origin === 'job' && wire.cable === undefined);
  const pieces = [...ours.map((wire) => wirePiece(wire, names)), ...cablePieces(plan, names)];
  if (pieces.length === 0) return null;
  const pulls = pullsTable(plan, pieces, write);
  const partings = partingsTable(plan, names, write);
  return {
    cuts: dense(cutsTable([...pieces, ...coveringPieces(plan).map(coveringPiece)], names, write)),
    partings: partings && dense(partings),
    joints: jointsTable(plan, names, write),
    pulls: pulls && dense(pulls),
    dress: dressTable(plan, names, write),
  };
}

export const wireList = builderSheet('wire-list', 'Wire cut list', wireModel, { wideMargin: true });

import type { BuildPlan } from '../../../model/plan/index.ts';
import { namesOf } from '../../words/plan-names.ts';
import { writerFor } from '../../words/written.ts';
import { builderSheet } from '../sheet.ts';
import { dense, type Table } from '../table.ts';
import { cutsTable } from './cut-list.ts';
import { jointsTable } from './joints.ts';
import { partingsTable } from './partings.ts';
import { cablePieces, coveringPiece, wirePiece } from './piece.ts';
import { pullsTable } from './pull-list.ts';
import { coveringPieces, dressTable } from './run-dress.ts';

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

import type { BuildPlan, PlanWire } from '../../../model/plan/index.ts';
import type { ValueOrigin } from '../../../model/trace.ts';
import type { PlanNames } from '../../words/plan-names.ts';
import { none } from '../../words/written.ts';
import type { coveringPieces } from './run-dress.ts';

/** One piece that is cut from a reel: a wire, or a length of cable. */
export interface Piece {
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

/** The piece that a wire is cut as. */
export function wirePiece(wire: PlanWire, names: PlanNames): Piece {
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
export function cablePieces(plan: BuildPlan, names: PlanNames): Piece[] {
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
export function coveringPiece({
  run,
  title,
  part,
  lengthM,
}: ReturnType<typeof coveringPieces>[number]): Piece {
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

/** Pieces, the longest first. */
export function longestFirst(pieces: readonly Piece[]): Piece[] {
  return [...pieces].sort((a, b) => b.lengthM - a.lengthM || (a.subject < b.subject ? -1 : 1));
}

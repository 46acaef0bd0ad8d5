import type { BoardShape } from '../../shape/outline.ts';
import type { Barrier } from '../track-grid.ts';
import type { MapEdge } from './map-edge.ts';
import type { PassRange } from './pass.ts';

type CutEdge = Omit<MapEdge, 'cuts' | 'between'>;

/** Something round that narrows a place: a fixing's head, or a hole. */
interface Round {
  readonly xM: number;
  readonly yM: number;
  readonly radiusM: number;
}

/**
 * The narrow places of a board: portals in one line from what stands at one end to what stands at the other, parted by
 * fixings and holes on the line. Each has the room that wires find there, whichever of its portals they pass.
 */
export function roomsOfCuts(
  edges: readonly CutEdge[],
  barriers: readonly Barrier[],
  holes: BoardShape['holes'],
): {
  readonly cuts: readonly (readonly number[])[];
  readonly roomsM: readonly number[];
  readonly ends: readonly PassRange[];
} {
  const rounds = [
    ...barriers.flatMap((one) => ('centre' in one ? [{ ...one.centre, radiusM: one.radiusM }] : [])),
    ...holes.map(({ xM, yM, diameterM }) => ({ xM, yM, radiusM: diameterM / 2 })),
  ];
  const cuts = edges.map((): number[] => []);
  const roomsM: number[] = [];
  const ends: PassRange[] = [];
  const ordered = edges
    .map((edge, at) => ({ edge, at }))
    .filter(({ edge }) => edge.kind === 'portal')
    .toSorted(
      (a, b) =>
        Number(a.edge.upright) - Number(b.edge.upright) ||
        a.edge.lineM - b.edge.lineM ||
        a.edge.fromM - b.edge.fromM,
    );
  let before: CutEdge | null = null;
  for (const { edge, at } of ordered) {
    const goesOn =
      before !== null &&
      before.upright === edge.upright &&
      Math.abs(before.lineM - edge.lineM) < 1e-9 &&
      Math.abs(before.toM - edge.fromM) < 1e-9 &&
      !rounds.some((round) => standsAt(round, edge, edge.fromM));
    if (!goesOn) roomsM.push(0);
    const cut = roomsM.length - 1;
    cuts[at] = [cut];
    roomsM[cut] = (roomsM[cut] ?? 0) + edge.toM - edge.fromM - reachOfRounds(rounds, edge);
    const radiusM = (atM: number) =>
      Math.max(0, ...rounds.filter((round) => standsAt(round, edge, atM)).map((round) => round.radiusM));
    ends[cut] = {
      lowM: ends[cut]?.lowM ?? edge.fromM + radiusM(edge.fromM),
      highM: edge.toM - radiusM(edge.toM),
    };
    before = edge;
  }
  return { cuts, roomsM, ends };
}

/** True where a fixing or a hole stands on the line of an edge, at its one end. */
function standsAt({ xM, yM }: Round, { upright, lineM }: CutEdge, atM: number): boolean {
  const [across, along] = upright ? [xM, yM] : [yM, xM];
  return Math.abs(across - lineM) < 1e-3 && Math.abs(along - atM) < 1e-3;
}

/** What the heads of fixings at both ends of an edge take of it. */
function reachOfRounds(rounds: readonly Round[], edge: CutEdge): number {
  return rounds.reduce((sum, round) => {
    const ends = [edge.fromM, edge.toM].filter((endM) => standsAt(round, edge, endM));
    return sum + ends.length * round.radiusM;
  }, 0);
}

import type { Keep } from '../model/keep.ts';
import type { PlannedChannel } from './audio/audio-channels.ts';
import { channelWires, sizeSpeakerWires } from './audio/speaker-sizing.ts';
import { chooseProposals } from './board/board-proposals.ts';
import { type RoutedBoard, routeBoards } from './board/board-routes.ts';
import type { LaidBoard } from './board/laid-board.ts';
import type { SizedConductor } from './power/sizing/conductor-sizing.ts';
import { LeastSizes } from './power/sizing/least-sizes.ts';
import type { PowerSizing } from './power/sizing/power-sizing.ts';
import { sizeForDrop } from './power/sizing/size-for-drop.ts';
import { sizeOthers } from './power/sizing/size-others.ts';
import type { SizedPower } from './power/sizing/size-power.ts';
import { colourPairs } from './wiring/pair-colours.ts';
import { wireLengths } from './wiring/wire-lengths.ts';

/** What the loop between size and length came to. */
export interface Settled {
  readonly sizing: PowerSizing;
  readonly power: SizedPower;
  /** Every conductor of the job, by link. */
  readonly all: ReadonlyMap<string, SizedConductor>;
  /** In the order of the boards. */
  readonly routed: readonly RoutedBoard[];
  /** The boards as laid out by the proposal that can be wired best. */
  readonly laid: readonly LaidBoard[];
  readonly passes: number;
}

/** Sizes only grow, and there are few; a loop that goes on past this is a bug. */
const mostPasses = 24;

/**
 * The loop between size and length: lengths give sizes, sizes give outside diameters and bends, these give
 * routes, and routes give lengths. A size never shrinks between passes, so the loop ends: when a pass grows
 * none, its lengths are those of its own sizes. `layout`: of several proposed layouts the one that can be wired best is
 * taken, unless the boards are to stay as they are placed. Routes are drafted until sizes stand, then many wires are laid in
 * lanes; `draft`: they stay as drafted, since the job is settled once more.
 */
export function settle(
  basis: Omit<PowerSizing, 'lengths' | 'least'>,
  channels: readonly PlannedChannel[],
  proposed: readonly LaidBoard[],
  keep: Keep,
  { layout, routes }: { readonly layout: 'by wiring' | 'as placed'; readonly routes: 'final' | 'draft' },
): Settled {
  const { job, devices, circuit } = basis;
  const least = new LeastSizes();
  const wires = channelWires(job, channels, circuit.roles);
  let laid = proposed;
  let routed: readonly RoutedBoard[] = [];
  let [inLanes, before] = [false, ''];
  for (let pass = 1; pass <= mostPasses; pass += 1) {
    const lengths = wireLengths(job, devices, laid, routedLengths(routed));
    sizeSpeakerWires(job, wires, lengths, least);
    const sizing: PowerSizing = { ...basis, lengths, least };
    const power = sizeForDrop(sizing);
    const all = new Map([...power.conductors, ...sizeOthers(sizing, power.fuses)]);
    const sizes = [...all].map(([id, { cable }]) => `${id} ${cable.part} ${cable.size.label}`).join('\n');
    if (pass === 1 && layout === 'by wiring') laid = chooseProposals(job, laid, all, circuit.roles, keep);
    const stands = sizes === before;
    if (stands && (routes === 'draft' || !routed.some(({ isDraft }) => isDraft)))
      return { sizing, power, all: colourPairs(job, all), laid, routed, passes: pass };
    inLanes ||= stands;
    routed = routeBoards(job, laid, all, circuit.roles, { inLanes, keep });
    before = sizes;
  }
  throw new Error('Sizes and lengths did not settle.');
}

/** The length on the board of each wire that lies there. */
export function routedLengths(routed: readonly RoutedBoard[]): Map<string, number> {
  return new Map(
    routed.flatMap(({ routes }) =>
      routes.flatMap(({ along, lengthM }) => along.map((wire) => [wire, lengthM] as const)),
    ),
  );
}

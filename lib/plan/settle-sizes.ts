import type { Job } from '../model/content/resolved-job.ts';
import type { Keep } from '../model/keep.ts';
import { type ChannelWires, channelWires, sizeSpeakerWires } from './audio/speaker-sizing.ts';
import { chooseProposals } from './board/board-proposals.ts';
import { type RoutedBoard, routeBoards } from './board/board-routes.ts';
import type { LaidBoard } from './board/laid-board.ts';
import { onceEach } from './once-each.ts';
import { type BendBounds, thinnerBounds } from './power/sizing/bend-bounds.ts';
import { conductorSizer } from './power/sizing/conductor-sizer.ts';
import type { SizedConductor } from './power/sizing/conductor-sizing.ts';
import { LeastSizes, type LeastSizesHeld } from './power/sizing/least-sizes.ts';
import type { PowerSizing } from './power/sizing/power-sizing.ts';
import { sizeForDrop } from './power/sizing/size-for-drop.ts';
import { sizeOthers } from './power/sizing/size-others.ts';
import type { SizedPower } from './power/sizing/size-power.ts';
import type { SizingBasis } from './sizing-basis.ts';
import { boardToRim } from './wiring/lengths/board-to-rim.ts';
import { colourPairs } from './wiring/pair-colours.ts';
import { type RoutedWay, type RoutedWays, type WireLengths, wireLengths } from './wiring/wire-lengths.ts';

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

/** A job with everything placed, sized and routed. */
export interface SettledJob extends SizingBasis {
  readonly settled: Settled;
}

/** Routes stay as drafted where the job is settled once more; otherwise many wires are dressed. */
type Routes = 'final' | 'draft';

/** Sizes only grow, and there are few; a loop that goes on past this is a bug. */
const mostPasses = 24;

/** How often layouts are tried: with the sizes of straight ways, then with those that the layout before came to. */
const mostLayouts = 3;

/**
 * Lays the boards out by the proposal that can be wired best, then settles sizes and lengths there. Proposals are wired on
 * trial with sizes for the ways ahead of the first of them; where wires then find no way, since their sizes came out
 * larger, proposals are wired on trial with these. What was sized for one layout does not bind the next; what came to
 * nothing `before` anything was placed, with the shortest ways there can be, is not tried again.
 */
export function settleByWiring(
  basis: SizingBasis,
  proposed: readonly LaidBoard[],
  keep: Keep,
  routes: Routes,
  before?: SizesAhead,
): Settled {
  return thinEnough(basis, (own) => settleLayouts(own, proposed, keep, routes, before?.tried));
}

/** Settles sizes and lengths on boards as they are placed, conductors as thin as their bends there ask for. */
export function settleInPlace(
  basis: SizingBasis,
  laid: readonly LaidBoard[],
  keep: Keep,
  routes: Routes,
): Settled {
  return thinEnough(basis, (own) => settle(own, laid, keep, routes));
}

/** How often sizes are settled anew for what kinks; each time something becomes thinner by a size at least. */
const mostThinner = 6;

/**
 * Settles, and where a conductor of a computed size then kinks on its board, settles anew with nothing as thick there:
 * a size that no hand can bend is none, however much less it would lose. What comes to fewest stops is taken, the
 * thickest of these.
 */
function thinEnough(basis: SizingBasis, settleWith: (basis: SizingBasis) => Settled): Settled {
  const { job, devices, circuit } = basis;
  const faultsOf = ({ routed }: Settled) => routed.flatMap(({ faults }) => faults);
  const stops = (settled: Settled) => faultsOf(settled).filter(({ level }) => level === 'stop').length;
  let best = settleWith(basis);
  let current = best;
  let bounds: BendBounds = new Map();
  for (let round = 0; round < mostThinner; round += 1) {
    const next = thinnerBounds(job, faultsOf(current), current.all, bounds);
    if (!next) break;
    bounds = next;
    current = settleWith({ ...basis, sizer: conductorSizer(job, devices, circuit.roles, bounds) });
    if (stops(current) < stops(best)) best = current;
  }
  return best;
}

function settleLayouts(
  basis: SizingBasis,
  proposed: readonly LaidBoard[],
  keep: Keep,
  routes: Routes,
  inVain?: LeastSizesHeld['tried'],
): Settled {
  const begin = beginnings(basis, inVain);
  if (proposed.every(({ proposals }) => proposals.length === 0))
    return settle(basis, proposed, keep, routes, begin);
  const { job, circuit } = basis;
  let { all: sized } = begin(wireLengths(job, basis.devices, proposed, new Map())).sizes;
  let best: Settled | null = null;
  let passes = 1;
  const tried = new Set<string>();
  for (let layout = 1; layout <= mostLayouts; layout += 1) {
    // At first nothing else has found fault with the layout: the wires are laid for good as it is settled.
    const laid = chooseProposals(job, proposed, { sized, roles: circuit.roles, layFirst: layout > 1 }, keep);
    const places = JSON.stringify(laid.map(({ placements }) => placements));
    if (tried.has(places)) break;
    tried.add(places);
    const settled = settle(basis, laid, keep, routes, begin);
    passes += settled.passes;
    if (!best || stopsOf(settled) < stopsOf(best)) best = settled;
    if (stopsOf(settled) === 0) break;
    sized = settled.all;
  }
  if (!best) throw new Error('No layout was settled.');
  return { ...best, passes };
}

/** How many wires of open layouts have no way or do not reach. */
function stopsOf({ laid, routed }: Settled): number {
  return routed.reduce((sum, { faults }, at) => {
    const isOpen = (laid[at]?.proposals.length ?? 0) > 0;
    return sum + (isOpen ? faults.filter(({ level }) => level === 'stop').length : 0);
  }, 0);
}

/**
 * The loop between size and length on boards as they are placed: lengths give sizes, sizes give outside diameters and
 * bends, these give routes, and routes give lengths. A size never shrinks between passes, so the loop ends: when a pass
 * grows none, its lengths are those of its own sizes. Routes are drafted until sizes stand.
 */
export function settle(
  basis: SizingBasis,
  laid: readonly LaidBoard[],
  keep: Keep,
  routes: Routes,
  begin = beginnings(basis),
): Settled {
  const { job, devices, circuit } = basis;
  const wires = channelWires(basis.job, basis.channels, basis.circuit.roles);
  let least: LeastSizes | null = null;
  let routed: readonly RoutedBoard[] = [];
  let [isDraft, before] = [true, ''];
  for (let pass = 1; pass <= mostPasses; pass += 1) {
    const lengths = wireLengths(job, devices, laid, routedWays(job, laid, routed));
    const begun: Begun = least ? { least, sizes: sizesAt(basis, wires, lengths, least) } : begin(lengths);
    least = begun.least;
    const { sizing, power, all } = begun.sizes;
    const sizes = [...all].map(([id, { cable }]) => `${id} ${cable.part} ${cable.size.label}`).join('\n');
    const stands = sizes === before;
    if (stands && (routes === 'draft' || !routed.some(({ isDraft }) => isDraft)))
      return { sizing, power, all: colourPairs(job, all), laid, routed, passes: pass };
    isDraft &&= !stands;
    routed = routeBoards(job, laid, all, circuit.roles, { isDraft, keep });
    before = sizes;
  }
  throw new Error('Sizes and lengths did not settle.');
}

/** What conductors come to before anything is placed. */
export interface SizesAhead {
  /** The sizes that they have at least, by link. */
  readonly all: Settled['all'];
  /** What they grew by in vain. */
  readonly tried: LeastSizesHeld['tried'];
}

/** The sizes that conductors have at least: for their runs and loops, before anything is placed. */
export function sizesAtLeast(basis: SizingBasis): SizesAhead {
  const least = new LeastSizes();
  const lengths = wireLengths(basis.job, basis.devices, [], new Map());
  const wires = channelWires(basis.job, basis.channels, basis.circuit.roles);
  const { all } = sizesAt(basis, wires, lengths, least);
  return { all, tried: least.held().tried };
}

type Sizes = Pick<Settled, 'sizing' | 'power' | 'all'>;

/** Sizes that nothing was sized before, and what they are at least from there on. */
interface Begun {
  readonly least: LeastSizes;
  readonly sizes: Sizes;
}

/**
 * Begins to size, once for the same lengths: what proposals are wired on trial by is often what the loop begins with. Each
 * that is given goes on by itself.
 */
function beginnings(basis: SizingBasis, tried?: LeastSizesHeld['tried']): (lengths: WireLengths) => Begun {
  const wires = channelWires(basis.job, basis.channels, basis.circuit.roles);
  const begun = onceEach(
    (lengths: WireLengths): Begun => {
      const least = new LeastSizes(tried);
      return { sizes: sizesAt(basis, wires, lengths, least), least };
    },
    (lengths) => JSON.stringify(basis.job.links.map(({ id }) => [id, lengths(id)])),
  );
  return (lengths) => {
    const { least, sizes } = begun(lengths);
    const own = least.copy();
    return { least: own, sizes: { ...sizes, sizing: { ...sizes.sizing, lengths, least: own } } };
  };
}

/** Every conductor sized for its length. */
function sizesAt(
  basis: SizingBasis,
  wires: readonly ChannelWires[],
  lengths: WireLengths,
  least: LeastSizes,
): Sizes {
  sizeSpeakerWires(basis.job, basis.devices, wires, lengths, least);
  const sizing: PowerSizing = { ...basis, lengths, least };
  const power = sizeForDrop(sizing);
  return { sizing, power, all: new Map([...power.conductors, ...sizeOthers(sizing, power.fuses)]) };
}

/** Each wire that lies on a board: how far there, and from where it leaves to the rim of the space. */
export function routedWays(job: Job, laid: readonly LaidBoard[], routed: readonly RoutedBoard[]): RoutedWays {
  const ways = new Map<string, RoutedWay>();
  for (const [at, { routes, exits }] of routed.entries()) {
    const board = laid[at]?.board;
    for (const { wire: laidAs, along, lengthM } of routes) {
      const exit = exits.find(({ wire }) => wire === laidAs);
      for (const wire of along) {
        const run = job.runs.find(({ id }) => id === job.links.find((link) => link.id === wire)?.run);
        const rimM = board && exit ? (boardToRim(board, run?.route, exit)?.mostM ?? 0) : 0;
        // A wire between two boards lies on both.
        const before = ways.get(wire) ?? { boardM: 0, rimM: 0 };
        ways.set(wire, { boardM: before.boardM + lengthM, rimM: before.rimM + rimM });
      }
    }
  }
  return ways;
}

import { spacing } from '../line-styles.ts';
import {
  boxesMeet,
  boxRound,
  cornersOf,
  grown,
  type PaperBox,
  segmentMeetsBox,
  segmentsCross,
} from '../paper.ts';
import {
  type Candidate,
  farCandidates,
  type LabelRequest,
  leaderCandidates,
  nearCandidates,
} from './label-candidates.ts';
import { indexObstacles, type Obstacle } from './obstacle-index.ts';

export interface PlacementRequest {
  readonly labels: readonly LabelRequest[];
  readonly obstacles: readonly Obstacle[];
  /** Where labels may stand. */
  readonly room: PaperBox;
}

export interface PlacedLabel extends Candidate {
  readonly id: string;
}

export interface UnplacedLabel {
  readonly id: string;
  /** `no-room`: no place is free of parts and lines. `crowded`: other labels take them all. */
  readonly reason: 'no-room' | 'crowded';
}

/** Every label asked for is in one list or the other. */
export interface Placement {
  readonly placed: readonly PlacedLabel[];
  readonly unplaced: readonly UnplacedLabel[];
}

/** A candidate with the boxes by which most pairs are told apart at once. */
interface Spot {
  readonly candidate: Candidate;
  /** The text with the clear space round it. */
  readonly clear: PaperBox;
  /** Clear space and leader together. */
  readonly extent: PaperBox;
}

interface Seeker {
  readonly id: string;
  readonly spots: readonly Spot[];
  /** How often it was pushed out: the oftener, the dearer to push out again. */
  weight: number;
  taken: Spot | null;
}

const stepsPerLabel = 60;
/** So many steps a label without a better state, and the search gives up. */
const patiencePerLabel = 8;
const polishRounds = 6;

/**
 * Places labels so that no text meets another text, an obstacle or a leader, and no leaders cross.
 *
 * Candidates that meet an obstacle are dropped first; a label gets leader candidates besides, and places all over
 * the room if it may stand far and has found none. Then ejection
 * chains: the label with the fewest candidates takes the place that pushes out the least weight of others,
 * those queue again, and each time that a label is pushed out it grows heavier, which breaks circles. The
 * best state met is kept. A polish moves labels to cheaper free places. No randomness; bounded by steps.
 */
export function placeLabels({ labels, obstacles, room }: PlacementRequest): Placement {
  const index = indexObstacles(obstacles);
  const near = labels.map((label): Wish => ({ label, candidates: nearCandidates(label, index, room) }));
  const withLeaders = ({ label, candidates }: Wish): Wish => {
    return { label, candidates: [...candidates, ...leaderCandidates(label, index, room)] };
  };
  const hasEnough = ({ candidates }: Wish): boolean => candidates.length >= enoughNear;
  // Leaders cost most of the time and are seldom needed: first they are left to labels with hardly a place.
  const few = near.map((wish) => (hasEnough(wish) ? wish : withLeaders(wish)));
  const quick = placeWith(few);
  if (quick.unplaced.length === 0) return quick;
  const led = few.map((wish, nth) => (wish === near[nth] ? withLeaders(wish) : wish));
  return placedFar(led, placeWith(led), ({ label, candidates }) => {
    return { label, candidates: [...candidates, ...farCandidates(label, index, room)] };
  });
}

/** So often labels that found no place are let stand far; each time those that they pushed out join them. */
const farRounds = 3;

/** Lets labels without a place stand anywhere in the room, if they may. */
function placedFar(wishes: readonly Wish[], first: Placement, farther: (wish: Wish) => Wish): Placement {
  let [best, all] = [first, wishes];
  const far = new Set<string>();
  for (let round = 0; round < farRounds && best.unplaced.length > 0; round += 1) {
    const open = all.filter(
      ({ label }) =>
        label.far !== undefined && !far.has(label.id) && best.unplaced.some(({ id }) => id === label.id),
    );
    if (open.length === 0) return best;
    for (const { label } of open) far.add(label.id);
    all = all.map((wish) => (open.includes(wish) ? farther(wish) : wish));
    const tried = placeWith(all);
    if (tried.unplaced.length <= best.unplaced.length) best = tried;
  }
  return best;
}

/** So many places beside what it names, and a label is tried without a leader first. */
const enoughNear = 3;

/** A label with every place that it may take. */
interface Wish {
  readonly label: LabelRequest;
  readonly candidates: readonly Candidate[];
}

function placeWith(wishes: readonly Wish[]): Placement {
  const seekers = wishes.map(({ label, candidates }): Seeker => {
    const spots = candidates.toSorted((a, b) => a.cost - b.cost).map(spotOf);
    return { id: label.id, spots, weight: 1, taken: null };
  });
  settle(seekers.filter((seeker) => seeker.spots.length > 0));
  for (let round = 0; round < polishRounds && polish(seekers); round += 1);
  return {
    placed: seekers.flatMap(({ id, taken }) => (taken ? [{ id, ...taken.candidate }] : [])),
    unplaced: seekers.flatMap(({ id, taken, spots }) =>
      taken ? [] : [{ id, reason: spots.length === 0 ? ('no-room' as const) : ('crowded' as const) }],
    ),
  };
}

function spotOf(candidate: Candidate): Spot {
  const clear = grown(candidate.box, spacing.clearMm);
  const { leader } = candidate;
  return {
    candidate,
    clear,
    extent: leader ? boxRound([...cornersOf(clear), leader.from, leader.to]) : clear,
  };
}

/** True where two labels can't stand at these places together. */
function spotsClash(a: Spot, b: Spot): boolean {
  if (!boxesMeet(a.extent, b.extent)) return false;
  if (boxesMeet(a.candidate.box, b.clear)) return true;
  const { leader: leaderA } = a.candidate;
  const { leader: leaderB } = b.candidate;
  if (leaderA && segmentMeetsBox(leaderA, b.clear)) return true;
  if (leaderB && segmentMeetsBox(leaderB, a.clear)) return true;
  return leaderA !== null && leaderB !== null && segmentsCross(leaderA, leaderB);
}

function settle(seekers: readonly Seeker[]): void {
  const queue = [...seekers].sort((a, b) => a.spots.length - b.spots.length);
  let best: (Spot | null)[] = seekers.map(() => null);
  let fewestOpen = seekers.length;
  let patience = patiencePerLabel * seekers.length;
  for (let steps = stepsPerLabel * seekers.length; steps > 0 && patience > 0; steps -= 1) {
    const seeker = queue.shift();
    if (!seeker) return;
    queue.push(...takeSpot(seeker, seekers));
    patience -= 1;
    if (queue.length < fewestOpen) {
      fewestOpen = queue.length;
      patience = patiencePerLabel * seekers.length;
      best = seekers.map(({ taken }) => taken);
    }
  }
  seekers.forEach((seeker, nth) => {
    seeker.taken = best[nth] ?? null;
  });
}

/** Takes the spot that pushes out the least weight, then the cheapest; returns those pushed out. */
function takeSpot(seeker: Seeker, seekers: readonly Seeker[]): Seeker[] {
  const others = seekers.filter((other) => other !== seeker && other.taken !== null);
  let least = Infinity;
  let choice: Spot | null = null;
  for (const spot of seeker.spots) {
    const weight = pushedWeight(spot, others, least);
    if (weight < least) {
      least = weight;
      choice = spot;
    }
    // Sorted by cost: the first that pushes nobody out is the cheapest of its kind.
    if (weight === 0) break;
  }
  if (choice === null) return [];
  const chosen = choice;
  const pushed = others.filter(({ taken }) => taken !== null && spotsClash(chosen, taken));
  seeker.taken = chosen;
  for (const other of pushed) {
    other.taken = null;
    other.weight += 1;
  }
  return pushed;
}

/** The weight that a spot pushes out; stops counting where it is no less than the least so far. */
function pushedWeight(spot: Spot, others: readonly Seeker[], least: number): number {
  let weight = 0;
  for (const { taken, weight: own } of others) {
    if (taken !== null && spotsClash(spot, taken)) weight += own;
    if (weight >= least) return weight;
  }
  return weight;
}

/** Moves each label to its cheapest spot that is free; true where one moved. */
function polish(seekers: readonly Seeker[]): boolean {
  let moved = false;
  for (const seeker of seekers) {
    const others = seekers.filter((other) => other !== seeker && other.taken !== null);
    const free = seeker.spots.find((spot) => pushedWeight(spot, others, Infinity) === 0);
    if (free && free !== seeker.taken) {
      seeker.taken = free;
      moved = true;
    }
  }
  return moved;
}

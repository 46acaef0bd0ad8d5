import { type Candidate, type LabelRequest, leaderCandidates, nearCandidates } from './label-candidates.ts';
import { indexObstacles, type Obstacle } from './obstacle-index.ts';
import { boxesMeet, grown, type PaperBox, segmentMeetsBox, segmentsCross } from './paper.ts';
import { spacing } from './style.ts';

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

interface Seeker {
  readonly id: string;
  readonly candidates: readonly Candidate[];
  /** How often it was pushed out: the oftener, the dearer to push out again. */
  weight: number;
  taken: Candidate | null;
}

const stepsPerLabel = 60;
const polishRounds = 6;

/**
 * Places labels so that no text meets another text, an obstacle or a leader, and no leaders cross.
 *
 * Candidates that meet an obstacle are dropped first; a label gets leader candidates besides. Then ejection
 * chains: the label with the fewest candidates takes the place that pushes out the least weight of others,
 * those queue again, and each time that a label is pushed out it grows heavier, which breaks circles. The
 * best state met is kept. A polish moves labels to cheaper free places. No randomness; bounded by steps.
 */
export function placeLabels({ labels, obstacles, room }: PlacementRequest): Placement {
  const index = indexObstacles(obstacles);
  const seekers = labels.map((label): Seeker => {
    const candidates = [...nearCandidates(label, index, room), ...leaderCandidates(label, index, room)];
    return { id: label.id, candidates: candidates.sort((a, b) => a.cost - b.cost), weight: 1, taken: null };
  });
  settle(seekers.filter((seeker) => seeker.candidates.length > 0));
  for (let round = 0; round < polishRounds && polish(seekers); round += 1);
  return {
    placed: seekers.flatMap(({ id, taken }) => (taken ? [{ id, ...taken }] : [])),
    unplaced: seekers.flatMap(({ id, taken, candidates }) =>
      taken ? [] : [{ id, reason: candidates.length === 0 ? ('no-room' as const) : ('crowded' as const) }],
    ),
  };
}

/** True where two labels can't stand at these places together. */
export function candidatesClash(a: Candidate, b: Candidate): boolean {
  const roomOfB = grown(b.box, spacing.clearMm);
  if (boxesMeet(a.box, roomOfB)) return true;
  if (a.leader && segmentMeetsBox(a.leader, roomOfB)) return true;
  if (b.leader && segmentMeetsBox(b.leader, grown(a.box, spacing.clearMm))) return true;
  return a.leader !== null && b.leader !== null && segmentsCross(a.leader, b.leader);
}

function settle(seekers: readonly Seeker[]): void {
  const queue = [...seekers].sort((a, b) => a.candidates.length - b.candidates.length);
  let best: (Candidate | null)[] = seekers.map(() => null);
  let fewestOpen = seekers.length;
  for (let steps = stepsPerLabel * seekers.length; steps > 0; steps -= 1) {
    const seeker = queue.shift();
    if (!seeker) return;
    for (const pushed of takePlace(seeker, seekers)) queue.push(pushed);
    if (queue.length < fewestOpen) {
      fewestOpen = queue.length;
      best = seekers.map(({ taken }) => taken);
    }
  }
  seekers.forEach((seeker, nth) => {
    seeker.taken = best[nth] ?? null;
  });
}

/** Takes the place that pushes out the least weight, then the cheapest; returns those pushed out. */
function takePlace(seeker: Seeker, seekers: readonly Seeker[]): Seeker[] {
  const others = seekers.filter((other) => other !== seeker && other.taken !== null);
  let choice: { candidate: Candidate; pushed: Seeker[]; weight: number } | null = null;
  for (const candidate of seeker.candidates) {
    const pushed = others.filter(({ taken }) => taken !== null && candidatesClash(candidate, taken));
    const weight = pushed.reduce((sum, other) => sum + other.weight, 0);
    if (choice === null || weight < choice.weight) choice = { candidate, pushed, weight };
    // Sorted by cost: the first that pushes nobody out is the cheapest of its kind.
    if (weight === 0) break;
  }
  if (choice === null) return [];
  seeker.taken = choice.candidate;
  for (const other of choice.pushed) {
    other.taken = null;
    other.weight += 1;
  }
  return choice.pushed;
}

/** Moves each label to its cheapest place that is free; true where one moved. */
function polish(seekers: readonly Seeker[]): boolean {
  let moved = false;
  for (const seeker of seekers) {
    const others = seekers.filter((other) => other !== seeker && other.taken !== null);
    const free = seeker.candidates.find((candidate) =>
      others.every(({ taken }) => taken !== null && !candidatesClash(candidate, taken)),
    );
    if (free && free !== seeker.taken) {
      seeker.taken = free;
      moved = true;
    }
  }
  return moved;
}

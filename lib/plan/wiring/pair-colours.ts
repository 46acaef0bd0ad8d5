import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import { insulationColumn } from '../../model/tables/ampacity.ts';
import { longestLengthM } from '../../shelf/shelf-lengths.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import { candidate } from './cable-candidates.ts';
import { speakerConductors, speakerSigns } from './speaker-conductors.ts';

/** Base colours in the order in which pairs take them: what nine-conductor cable has used for long. */
const usualColours = ['WH', 'GY', 'GN', 'VT'];

interface ReelPair {
  readonly colour: string;
  readonly positive: string;
  readonly negative: string;
  readonly longestM: number;
}

/** A pair whose colours are open, with the reels that it may be cut from, the one that it would rather have first. */
interface OpenPair {
  readonly positive: SizedConductor;
  readonly negative: SizedConductor;
  readonly choices: readonly ReelPair[];
}

/**
 * Gives every pair for speakers or signal a base colour and its striped partner, so that plus and minus differ, and as
 * many pairs as the shelf has colours for. A pair that comes first takes the first colour in the usual order that leaves
 * a colour of its own to as many of the others; where there are fewer colours than pairs, the least used. Pairs whose
 * reel or colour the job gives stay as they are, and so do sizes without two colours.
 */
export function colourPairs(
  job: Job,
  sized: ReadonlyMap<string, SizedConductor>,
): ReadonlyMap<string, SizedConductor> {
  const coloured = new Map(sized);
  const uses = new Map<string, number>();
  const open = openPairs(job, sized);
  for (const [at, { positive, negative, choices }] of open.entries()) {
    const chosen = chooseReels(choices, open.slice(at + 1), uses);
    if (!chosen) continue;
    uses.set(chosen.colour, (uses.get(chosen.colour) ?? 0) + 1);
    coloured.set(positive.link.id, withReel(job, positive, chosen.positive));
    coloured.set(negative.link.id, withReel(job, negative, chosen.negative));
  }
  return coloured;
}

function openPairs(job: Job, sized: ReadonlyMap<string, SizedConductor>): readonly OpenPair[] {
  const roles = new Map([...sized].map(([id, { role }]) => [id, role]));
  return speakerConductors(job, speakerSigns(job, roles)).flatMap((pair): OpenPair[] => {
    const [positive, negative] = [sized.get(pair.positive), sized.get(pair.negative)];
    if (!positive || !negative || !isOpenPair(positive) || !isOpenPair(negative)) return [];
    if (positive.cable.size.areaMm2 !== negative.cable.size.areaMm2) return [];
    const isLong = ({ longestM }: ReelPair) => longestM >= positive.lengthM;
    const reels = reelPairs(job, positive, Math.max(positive.hottestC, negative.hottestC));
    const long = reels.filter(isLong);
    const choices = (long.length > 0 ? long : reels).toSorted(
      (a, b) => orderOf(a.colour) - orderOf(b.colour) || (a.colour < b.colour ? -1 : 1),
    );
    return choices.length > 0 ? [{ positive, negative, choices }] : [];
  });
}

/** The first colour that nothing has yet and that leaves as many of the others one of their own; else the least used. */
function chooseReels(
  choices: readonly ReelPair[],
  others: readonly OpenPair[],
  uses: ReadonlyMap<string, number>,
): ReelPair | undefined {
  const used = ({ colour }: ReelPair) => uses.get(colour) ?? 0;
  const taken = new Set(uses.keys());
  const most = withOwnColour(others, taken);
  const free = choices.filter((one) => used(one) === 0);
  const sparing = free.find(({ colour }) => withOwnColour(others, new Set([...taken, colour])) === most);
  return sparing ?? free[0] ?? choices.toSorted((a, b) => used(a) - used(b))[0];
}

/** How many pairs can have a colour each that no other has: the greatest matching, by augmenting ways (Kuhn). */
function withOwnColour(pairs: readonly OpenPair[], taken: ReadonlySet<string>): number {
  const ownerOf = new Map<string, number>();
  const place = (at: number, tried: Set<string>): boolean =>
    (pairs[at]?.choices ?? []).some(({ colour }) => {
      if (taken.has(colour) || tried.has(colour)) return false;
      tried.add(colour);
      const owner = ownerOf.get(colour);
      if (owner !== undefined && !place(owner, tried)) return false;
      ownerOf.set(colour, at);
      return true;
    });
  return pairs.filter((_, at) => place(at, new Set())).length;
}

/** True where the job leaves the reel open. A size that it gives still leaves the colour. */
function isOpenPair({ role, link: { given, cable } }: SizedConductor): boolean {
  return (
    (role === 'speaker' || role === 'signal') &&
    given !== null &&
    cable === null &&
    given.colour === undefined &&
    given.wire === undefined
  );
}

function orderOf(colour: string): number {
  const at = usualColours.indexOf(colour);
  return at < 0 ? usualColours.length : at;
}

function withReel(job: Job, conductor: SizedConductor, reel: string): SizedConductor {
  const part = job.parts[reel];
  if (part?.kind !== 'wire') return conductor;
  return { ...conductor, cable: candidate(reel, part, job.shop.stock[reel]) };
}

/**
 * Reels of one size and use that make a pair: a base colour and the same with a black stripe, or where there is none two
 * colours that differ, the minus in black where that is one of them. Of those whose insulation is for more than the
 * hottest ambient of their way, where two are.
 */
function reelPairs(job: Job, { role, cable: { size } }: SizedConductor, hottestC: number): ReelPair[] {
  const reels = partsOfKind(job.parts, 'wire').filter(
    ([, part]) => part.for.includes(role) && part.size.areaMm2 === size.areaMm2,
  );
  const lasts = ([, { insulation }]: Reel) =>
    (insulationColumn(insulation ?? job.rules['insulation-unmarked'].value) ?? 0) > hottestC;
  const lasting = pairsAmong(job, reels.filter(lasts));
  return lasting.length > 0 ? lasting : pairsAmong(job, reels);
}

function pairsAmong(job: Job, reels: readonly Reel[]): ReelPair[] {
  const pairOf = (positive: Reel, negative: Reel): ReelPair => ({
    colour: positive[1].colour,
    positive: positive[0],
    negative: negative[0],
    longestM: Math.min(...[positive, negative].map(([id]) => longestLengthM(job.shop.stock[id]))),
  });
  const striped = reels.flatMap((reel): ReelPair[] => {
    const partner = reels.find(([, part]) => part.colour === `${reel[1].colour}/BK`);
    return partner ? [pairOf(reel, partner)] : [];
  });
  if (striped.length > 0) return striped;
  const isBlack = ([, { colour }]: Reel) => colour === 'BK';
  const [minus] = reels.toSorted((a, b) => Number(isBlack(b)) - Number(isBlack(a)));
  return minus ? reels.flatMap((one) => (one[1].colour === minus[1].colour ? [] : [pairOf(one, minus)])) : [];
}

type Reel = readonly [id: string, part: PartOf<'wire'>];

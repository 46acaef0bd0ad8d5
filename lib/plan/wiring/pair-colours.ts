import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import { longestLengthM } from '../../shelf/shelf-lengths.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import { speakerPairs, speakerSigns } from './speaker-pairs.ts';

/** Base colours in the order in which pairs take them: what nine-conductor cable has used for long. */
const usualColours = ['WH', 'GY', 'GN', 'VT'];

interface ReelPair {
  readonly colour: string;
  readonly positive: string;
  readonly negative: string;
  readonly longestM: number;
}

/**
 * Gives every speaker pair a base colour and its striped partner, so that plus and minus differ, and neighbouring
 * pairs too. Pairs whose reel or colour the job gives stay as they are, and so do sizes without striped partners.
 */
export function colourPairs(
  job: Job,
  sized: ReadonlyMap<string, SizedConductor>,
): ReadonlyMap<string, SizedConductor> {
  const coloured = new Map(sized);
  const uses = new Map<string, number>();
  const roles = new Map([...sized].map(([id, { role }]) => [id, role]));
  for (const pair of speakerPairs(job, speakerSigns(job, roles))) {
    const [positive, negative] = [sized.get(pair.positive), sized.get(pair.negative)];
    if (!positive || !negative || !isOpenPair(positive) || !isOpenPair(negative)) continue;
    if (positive.cable.size.areaMm2 !== negative.cable.size.areaMm2) continue;
    const pairs = reelPairs(job, positive.cable.size.areaMm2);
    const [best] = pairs.toSorted((a, b) => {
      const long = (pair: ReelPair) => Number(pair.longestM >= positive.lengthM);
      const used = (pair: ReelPair) => uses.get(pair.colour) ?? 0;
      return (
        long(b) - long(a) ||
        used(a) - used(b) ||
        orderOf(a.colour) - orderOf(b.colour) ||
        (a.colour < b.colour ? -1 : 1)
      );
    });
    if (!best) continue;
    uses.set(best.colour, (uses.get(best.colour) ?? 0) + 1);
    coloured.set(positive.link.id, withReel(positive, best.positive));
    coloured.set(negative.link.id, withReel(negative, best.negative));
  }
  return coloured;
}

/** True where the job leaves the reel open. A size that it gives still leaves the colour. */
function isOpenPair({ role, link: { given, cable } }: SizedConductor): boolean {
  return (
    role === 'speaker' &&
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

function withReel(conductor: SizedConductor, part: string): SizedConductor {
  return { ...conductor, cable: { ...conductor.cable, part } };
}

/** Reels of one size that come as a base colour and the same with a black stripe. */
function reelPairs(job: Job, areaMm2: number): ReelPair[] {
  const reels = partsOfKind(job.parts, 'wire').filter(
    ([, part]) => part.for.includes('speaker') && part.size.areaMm2 === areaMm2,
  );
  return reels.flatMap(([positive, { colour }]): ReelPair[] => {
    const partner = reels.find(([, part]) => part.colour === `${colour}/BK`);
    if (!partner) return [];
    const longestM = Math.min(
      longestLengthM(job.shop.stock[positive]),
      longestLengthM(job.shop.stock[partner[0]]),
    );
    return [{ colour, positive, negative: partner[0], longestM }];
  });
}

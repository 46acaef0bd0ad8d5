import type { Job, Link } from '../../model/content/resolved-job.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import { uncut, unsized } from './opened-again.ts';

/** A job that leaves every size open that it has from the revision before: what it comes to then is what is asked for today. */
export function withOpenSizes(job: Job): Job {
  const { held } = job;
  if (!held) return job;
  const reels = new Set(held.reels);
  const links = job.links.map((link) => (reels.has(link.id) ? unsized(link) : link));
  return { ...job, held: { ...held, reels: [] }, links };
}

/**
 * A job in which a wire of the revision before that is thinner than what is asked for today, or of another metal, is cut
 * anew: neither its reel nor its length is that of the revision before.
 *
 * @param asked What each link comes to with its size left open.
 */
export function withFittingWires(job: Job, asked: ReadonlyMap<string, SizedConductor>): Job {
  const { held, parts } = job;
  if (!held) return job;
  const fits = ({ id, given }: Link): boolean => {
    const part = parts[given?.wire ?? ''];
    const now = asked.get(id)?.cable;
    if (part?.kind !== 'wire' || !now) return false;
    return part.material === now.material && part.size.areaMm2 >= now.size.areaMm2 * (1 - 1e-9);
  };
  const own = job.links.filter(({ id }) => held.reels.includes(id));
  const cutAnew = new Set(own.filter((link) => !fits(link)).map(({ id }) => id));
  const isKept = (id: string) => !cutAnew.has(id);
  const lengths = new Set(held.lengths);
  return {
    ...job,
    held: { ...held, reels: held.reels.filter(isKept), lengths: held.lengths.filter(isKept) },
    links: job.links.map((link) => {
      if (isKept(link.id)) return link;
      return lengths.has(link.id) ? uncut(unsized(link)) : unsized(link);
    }),
  };
}

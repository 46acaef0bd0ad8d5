import { type Device, type Job, type Link, terminalId } from '../../model/content/resolved-job.ts';
import { terminalsOf } from '../../model/kinds/kind.ts';

/** The lead inside a box, from one of its posts to the end of a coil, that came with the box and is no wire of the job. */
export interface BoxLead {
  readonly box: string;
  readonly speaker: string;
  /** The terminal of the box, and that of the speaker. */
  readonly post: string;
  readonly end: string;
}

type OfJob = Pick<Job, 'devices' | 'links'>;

/**
 * The leads inside the boxes of a job that bring posts: a pair of posts a coil where there are as many, else one pair to
 * the first coil, and its negative to the last one where the coils are linked in series. A box with several speakers
 * tells no lead.
 */
export function boxLeads(job: OfJob): readonly BoxLead[] {
  return job.devices.flatMap((box): readonly BoxLead[] => {
    if (box.spec?.kind !== 'enclosure' || box.seat === null) return [];
    if (box.spec['lead-inside'] === false) return [];
    const pluses = terminalsOf(box.spec.terminals, 'coil-positive');
    const minuses = terminalsOf(box.spec.terminals, 'coil-negative');
    const [speaker, second] = job.devices.filter(
      ({ seat, spec }) => seat === box.seat && spec?.kind === 'speaker',
    );
    if (!speaker || second || pluses.length === 0 || pluses.length !== minuses.length) return [];
    const coils = coilsOf(speaker);
    const lead = (post: string | undefined, end: string | undefined): BoxLead[] =>
      post === undefined || end === undefined ? [] : [{ box: box.id, speaker: speaker.id, post, end }];
    if (pluses.length === coils.length)
      return coils.flatMap(({ positive, negative }, at) => [
        ...lead(pluses[at], positive),
        ...lead(minuses[at], negative),
      ]);
    const last = isSeries(job, speaker) ? coils.at(-1) : coils[0];
    return [...lead(pluses[0], coils[0]?.positive), ...lead(minuses[0], last?.negative)];
  });
}

/** A lead of the job inside a box, from a post of it to the speaker that stands in it. */
export interface MadeBoxLead {
  readonly box: string;
  readonly speaker: string;
}

/** The box that a link lies in, and its speaker; null for any other link. */
export function madeBoxLead(
  { devices }: Pick<Job, 'devices'>,
  { from, to }: Pick<Link, 'from' | 'to'>,
): MadeBoxLead | null {
  const ends = [from, to].flatMap(({ device }) => devices.find(({ id }) => id === device) ?? []);
  const box = ends.find(({ spec }) => spec?.kind === 'enclosure');
  const speaker = ends.find(({ spec }) => spec?.kind === 'speaker');
  if (!box || !speaker || box.seat === null || box.seat !== speaker.seat) return null;
  return { box: box.id, speaker: speaker.id };
}

function coilsOf({ spec }: Device) {
  return spec?.kind === 'speaker' ? Object.values(spec.coils) : [];
}

/** True where a link leads from the negative of a coil to the positive of another one of the same speaker. */
function isSeries({ links }: OfJob, speaker: Device): boolean {
  const coils = coilsOf(speaker);
  return links.some(({ from, to }) => {
    if (from.device !== speaker.id || to.device !== speaker.id) return false;
    const names = [from.terminal, to.terminal];
    return (
      coils.some(({ positive }) => names.includes(positive)) &&
      coils.some(({ negative }) => names.includes(negative))
    );
  });
}

/** What the leads inside boxes join, by terminal ids. */
export function boxJoins(job: OfJob): readonly (readonly [string, string])[] {
  return boxLeads(job).map(({ box, speaker, post, end }) => [
    terminalId({ device: box, terminal: post }),
    terminalId({ device: speaker, terminal: end }),
  ]);
}

import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { Job, Link } from '../../model/content/resolved-job.ts';
import type { Stock } from '../../model/content/shop.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import type { ConductorRole } from '../../model/vocabulary.ts';
import type { CableCandidate } from '../../power/conductor/conductor-choice.ts';
import { longestLengthM } from '../../shelf/shelf-lengths.ts';

/** Every reel of the catalogue that a link may be cut from, with what is on the shelf of it. */
export function candidatesFor(job: Job, link: Link, role: ConductorRole): CableCandidate[] {
  const { given } = link;
  const reels = partsOfKind(job.parts, 'wire').filter(([id, part]) => isAskedFor(id, part, link, role));
  const candidates = reels.map(([id, part]) => candidate(id, part, job.shop.stock[id]));
  if (candidates.length > 0 || !given?.size) return candidates;
  // A size that the job asks for counts even where no reel of it is known; unmarked copper is the safe reading.
  return [{ part: '', size: given.size, material: 'copper', insulationC: null, stockM: 0 }];
}

function isAskedFor(id: string, part: PartOf<'wire'>, { given }: Link, role: ConductorRole): boolean {
  if (given?.wire !== undefined) return id === given.wire;
  if (!part.for.includes(role)) return false;
  if (given?.colour !== undefined && part.colour !== given.colour) return false;
  return given?.size === undefined || given.size.areaMm2 === part.size.areaMm2;
}

/** A reel of the catalogue as a cable to choose, with what is on the shelf of it. */
export function candidate(id: string, part: PartOf<'wire'>, stock: Stock | undefined): CableCandidate {
  return {
    part: id,
    size: part.size,
    material: part.material,
    insulationC: part.insulation ?? null,
    stockM: longestLengthM(stock),
    ...(part.measured === undefined ? {} : { measuredOhmPerM: part.measured }),
  };
}

/** True where the link says which conductor it is to be. */
export function isGiven({ given, fitted, cable }: Link): boolean {
  return fitted !== null || cable !== null || given?.wire !== undefined || given?.size !== undefined;
}

/** What a conductor that is not cut from a reel is: fitted by the vehicle's maker, or in a cable. */
export function fixedCandidate(
  { parts, rules }: Pick<Job, 'parts' | 'rules'>,
  link: Link,
): CableCandidate | null {
  if (link.fitted) {
    const { size, material } = link.fitted;
    return { part: '', size, material, insulationC: rules['insulation-fitted'].value };
  }
  if (!link.cable) return null;
  const part = parts[link.cable.part];
  const conductor = part?.kind === 'cable' ? part.conductors[link.cable.conductor] : undefined;
  if (part?.kind !== 'cable' || !conductor) return null;
  return {
    part: link.cable.part,
    size: conductor.size,
    material: 'copper',
    insulationC: part.insulation ?? null,
  };
}

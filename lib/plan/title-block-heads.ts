import { bodyId, type Job, type ReadJob } from '../model/content/resolved-job.ts';
import type { BuildPlan } from '../model/plan/index.ts';
import { untoldSide } from '../model/vocabulary.ts';

/** What the title blocks print of the job. The customer is private and stays out. */
export function jobHead({ file }: Pick<ReadJob, 'file'>): BuildPlan['job'] {
  return {
    id: file.id,
    title: file.title,
    revision: file.revision,
    status: file.status,
    issuedOn: file['issued-on'],
    drawnBy: file['drawn-by'] ?? null,
    approvedBy: file['approved-by'] ?? null,
    fabricator: file.fabricator ?? null,
    notes: [...file.notes],
    revisions: file.revisions.map(({ revision, date, what }) => ({ revision, date, what })),
  };
}

/** The shop, how it measures, and what it promises: an owner keeps what stood when the job was released. */
export function shopHead({ shop }: Pick<Job, 'shop'>): BuildPlan['shop'] {
  const { name, address, units, fraction, paper } = shop;
  return {
    ...{ name, address: [...address], units, fraction, paper },
    largerPaper: shop['larger-paper'] ?? null,
    siteUrl: shop['site-url'] ?? null,
    ...(!shop['stock-counted'] && { stockCounted: false }),
    warranty: [...shop['hand-over'].warranty],
    terms: [...shop['hand-over'].terms],
  };
}

/** The vehicle and what must be known of it before anyone reaches for a tool. */
export function vehicleHead({ vehicle, links }: Pick<Job, 'vehicle' | 'links'>): BuildPlan['vehicle'] {
  const ends = links.flatMap(({ origin, from, to }) => (origin === 'job' ? [from, to] : []));
  const used = new Set(ends.flatMap(({ device, terminal }) => (device === bodyId ? [terminal] : [])));
  return {
    id: vehicle.id,
    title: vehicle.title,
    cautions: [...vehicle.cautions],
    grounds: Object.entries(vehicle.grounds)
      .filter(([id]) => used.has(id))
      .map(([id, { zone, side }]) =>
        side === undefined ? { id, zone, side: untoldSide, sideOpen: true } : { id, zone, side },
      ),
  };
}

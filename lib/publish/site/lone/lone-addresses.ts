import { successions } from '../../pages/released-revisions.ts';
import { addresses } from '../addresses.ts';
import type { ShopSite } from '../shop-site.ts';

/** True where the site of one job has what lies at a path, such as `/guides/gain/index.html`. */
export function loneHas({ jobs, parts, vehicles, guides }: ShopSite, path: string): boolean {
  const address = path.replace(/index\.html$/, '');
  const known = [
    addresses.home,
    addresses.jobs,
    addresses.parts,
    addresses.vehicles,
    addresses.guides,
    addresses.findings,
    addresses.computations,
    addresses.search,
    ...jobs.flatMap((one) => successions(one).map(({ address: of }) => of)),
    ...jobs.flatMap(({ plan: { job }, revisions }) => [
      addresses.job(job.id),
      addresses.packet(job.id),
      addresses.worksheet(job.id),
      ...revisions.flatMap(({ revision }) => [
        addresses.revision(job.id, revision),
        addresses.revisionWorksheet(job.id, revision),
      ]),
    ]),
    ...Object.keys(parts).map(addresses.part),
    ...Object.keys(vehicles).map(addresses.vehicle),
    ...guides.map(({ slug }) => addresses.guide(slug)),
  ];
  return known.includes(address);
}

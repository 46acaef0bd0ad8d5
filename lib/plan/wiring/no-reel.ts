import { linkName } from '../../model/ports/pair-name.ts';
import { listed } from '../../model/printed/listed.ts';
import type { Remark } from '../../model/remark.ts';
import type { PlanBook } from '../plan-book.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';

/** True for what is told once for all conductors that lack the same reel. */
export function isNoReel({ rule }: Pick<Remark, 'rule'>): boolean {
  return rule === 'conductor-no-reel';
}

/** One remark for all conductors that lack the same reel, which names their links. */
export function remarkNoReels(sized: Iterable<SizedConductor>, book: PlanBook): void {
  const lacking = new Map<string, { readonly remark: Remark; readonly owners: SizedConductor[] }>();
  for (const own of sized)
    for (const remark of own.remarks.filter(isNoReel)) {
      const known = lacking.get(remark.message);
      if (known) known.owners.push(own);
      else lacking.set(remark.message, { remark, owners: [own] });
    }
  for (const { remark, owners } of lacking.values()) {
    const [first] = owners;
    if (!first) continue;
    const links = [...new Set(owners.map(({ link }) => linkName(link.id)))];
    const file = first.link.origin === 'vehicle' ? 'vehicle' : 'job';
    book.remark(
      {
        ...remark,
        of: owners.map(({ link }) => link.id),
        message: `${remark.message}: ${listed(links)} ${links.length === 1 ? 'needs' : 'need'} one`,
      },
      { path: first.link.path, file },
    );
  }
}

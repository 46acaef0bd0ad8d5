import type { Job } from '../../model/content/resolved-job.ts';
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
export function remarkNoReels(job: Job, sized: Iterable<SizedConductor>, book: PlanBook): void {
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
        remedy: [...leadLines(job, owners), remark.remedy].join('; '),
      },
      { path: first.link.path, file },
    );
  }
}

/** The finished lines by which line links lie in made leads of the catalogue; where it has none that plugs in there, that a cable is to be written; nothing for other links. */
function leadLines(job: Job, owners: readonly SizedConductor[]): readonly string[] {
  const signals = owners.filter(({ role, link }) => role === 'signal' && link.origin === 'job');
  const between = groupedBy(signals, ({ link }) => `${link.from.device}.${link.to.device}`);
  const leads = between.flatMap((own) => leadsFor(job, own));
  if (leads.length === 0)
    return signals.length === 0
      ? []
      : [
          'lay them in a cable: write cables: { NAME: { part: a cable of the catalogue } }, and cable: NAME with conductors: at each link',
        ];
  const cables = leads.map(({ name, part }) => `${name}: { part: ${part} }`);
  const links = leads.flatMap(({ name, lies }) =>
    lies.map(([link, conductor]) => `at ${link} cable: ${name}, conductors: [${conductor}]`),
  );
  return [`lay them in leads: write cables: { ${cables.join(', ')} }, and ${links.join(', ')}`];
}

interface Laid {
  readonly name: string;
  readonly part: string;
  readonly lies: readonly (readonly [link: string, conductor: string])[];
}

/** Links between two devices in the shortest lead of the catalogue that reaches, as many in each as it has conductors. */
function leadsFor(job: Job, own: readonly SizedConductor[]): readonly Laid[] {
  const [first] = own;
  if (!first) return [];
  const { from, to } = first.link;
  const joint = job.devices.find(({ id }) => id === from.device)?.facts.terminals[from.terminal]?.joint;
  const neededM = Math.max(...own.map(({ lengthM }) => lengthM));
  const made = Object.entries(job.parts)
    .flatMap(([part, spec]) =>
      spec.kind === 'cable' &&
      spec['made-length'] !== undefined &&
      spec.for.includes('signal') &&
      spec.plugs === joint &&
      !spec['y-lead'] &&
      !spec.filter
        ? [{ part, lengthM: spec['made-length'], conductors: Object.keys(spec.conductors) }]
        : [],
    )
    .toSorted((a, b) => a.lengthM - b.lengthM || (a.part < b.part ? -1 : 1));
  const lead = made.find(({ lengthM }) => lengthM >= neededM) ?? made.at(-1);
  if (!lead) return [];
  const count = Math.ceil(own.length / lead.conductors.length);
  return Array.from({ length: count }, (_, at): Laid => {
    const lies = own.slice(at * lead.conductors.length, (at + 1) * lead.conductors.length);
    return {
      name: `lead-${to.device}${count > 1 ? `-${at + 1}` : ''}`,
      part: lead.part,
      lies: lies.map(({ link }, index) => [linkName(link.id), lead.conductors[index] ?? ''] as const),
    };
  });
}

function groupedBy<T>(list: readonly T[], key: (one: T) => string): readonly (readonly T[])[] {
  return [...new Set(list.map(key))].map((name) => list.filter((one) => key(one) === name));
}

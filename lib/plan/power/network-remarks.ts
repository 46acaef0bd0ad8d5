import { bodyId } from '../../model/content/resolved-job.ts';
import type { NetworkFault } from '../../power/network/network-types.ts';
import type { PlanBook } from '../plan-book.ts';
import type { NetworkInput } from './operating-points.ts';
import { faultText, standsFor } from './short/fault-text.ts';

/** What makes the network of a job impossible to compute, and at which operating points. */
interface FoundFault {
  readonly fault: NetworkFault;
  readonly points: readonly string[];
}

/**
 * Writes down what makes the network of a job impossible to compute: a loop without resistance, two stiff sources in
 * parallel, a device without a ground. The place is that of the first link or device that it names. What is so at
 * several operating points is told once.
 */
export function remarkFaults(
  { job, circuit }: Pick<NetworkInput, 'job' | 'circuit'>,
  byPoint: readonly (readonly [point: string, faults: readonly NetworkFault[]])[],
  book: PlanBook,
): void {
  const referenceNode = circuit.primary?.negative ?? bodyId;
  for (const { fault, points } of joined(byPoint)) {
    const named = [...new Set(fault.elements.map(standsFor))].filter((id) => id !== bodyId);
    const subjects = [
      ...job.links.filter(({ id }) => named.includes(id)),
      ...job.devices.filter(({ id }) => named.some((name) => name === id || name.startsWith(`${id}.`))),
    ].toSorted((a, b) => Number(b.origin === 'job') - Number(a.origin === 'job'));
    const [subject] = subjects;
    const of = subjects.length > 0 ? subjects.map(({ id }) => id) : ['network'];
    book.remark(
      {
        rule: `network-${fault.kind}`,
        level: 'stop',
        of: [...of, ...points],
        message: faultText(fault, referenceNode),
        remedy: remedies[fault.kind],
      },
      subject ? { path: subject.path, file: subject.origin } : { path: '/links' },
    );
  }
}

function joined(byPoint: Parameters<typeof remarkFaults>[1]): FoundFault[] {
  const found = new Map<string, FoundFault>();
  for (const [point, faults] of byPoint)
    for (const fault of faults) {
      const { kind, nodes, elements } = fault;
      const key = [kind, ...(kind === 'floating' ? nodes : elements).toSorted()].join(' ');
      const before = found.get(key);
      found.set(key, { fault: before?.fault ?? fault, points: [...(before?.points ?? []), point] });
    }
  return [...found.values()];
}

const remedies: Readonly<Record<NetworkFault['kind'], string>> = {
  'duplicate-id': 'give each link and device a name of its own',
  'unknown-node': 'see that both ends of every link are wired through to a battery',
  'not-a-number': "correct the value in the part, or in the shop's rules",
  'negative-value': "correct the value in the part, or in the shop's rules",
  'joined-to-itself': 'lead the link to another terminal',
  'zero-resistance-loop': 'give the conductors of the loop their length, or take one of them out',
  'short-circuit': 'take out the link that joins the two poles of a source',
  'stiff-sources-in-parallel': "write the batteries' internal resistance in their parts, or keep them apart",
  'converter-impossible': "correct the charger's limit and efficiency in its part",
  floating:
    'lead the ground of every device and the negative post of every battery to the body, and each feed to a source',
};

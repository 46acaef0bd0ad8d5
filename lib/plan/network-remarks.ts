import { bodyId } from '../model/resolved-job.ts';
import type { NetworkFault } from '../power/network-types.ts';
import type { NetworkInput } from './operating-points.ts';
import type { PlanBook } from './plan-book.ts';

/**
 * Writes down what makes the network of a job impossible to compute: a loop without resistance, two stiff sources in
 * parallel, a device without a ground. The place is that of the first link or device that it names.
 */
export function remarkFaults(
  { job }: Pick<NetworkInput, 'job'>,
  faults: readonly NetworkFault[],
  book: PlanBook,
): void {
  for (const { kind, elements, message } of faults) {
    // Elements are called by what they stand for, with what they are of it behind a colon.
    const named = [...new Set(elements.map((id) => id.replace(/:.*$/, '')))].filter((id) => id !== bodyId);
    const subjects = [
      ...job.links.filter(({ id }) => named.includes(id)),
      ...job.devices.filter(({ id }) => named.some((name) => name === id || name.startsWith(`${id}.`))),
    ].toSorted((a, b) => Number(b.origin === 'job') - Number(a.origin === 'job'));
    const [subject] = subjects;
    book.remark(
      {
        rule: `network-${kind}`,
        level: 'stop',
        of: subjects.length > 0 ? subjects.map(({ id }) => id) : ['network'],
        message,
        source: "Kirchhoff's and Ohm's laws",
        remedy: remedies[kind],
      },
      subject ? { path: subject.path, file: subject.origin } : { path: '/links' },
    );
  }
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
  floating: 'lead the ground of the device to the body or a ground bar, and its feed to a fuse',
};

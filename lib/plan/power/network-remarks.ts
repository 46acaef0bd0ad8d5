import { bodyId } from '../../model/content/resolved-job.ts';
import type { NetworkFault } from '../../power/network/network-fault.ts';
import type { PlanBook } from '../plan-book.ts';
import { faultText, standsFor } from './network-fault-text.ts';
import type { NetworkInput } from './operating-points.ts';

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
    const named = [...new Set(fault.of.map(standsFor))].filter((id) => id !== bodyId);
    const subjects = [
      ...job.links.filter(({ id }) => named.includes(id)),
      ...job.devices.filter(({ id }) => named.some((name) => name === id || name.startsWith(`${id}.`))),
    ].toSorted((a, b) => Number(b.origin === 'job') - Number(a.origin === 'job'));
    const [subject] = subjects;
    const of = subjects.length > 0 ? subjects.map(({ id }) => id) : ['network'];
    book.remark(
      {
        rule: fault.fault,
        level: 'stop',
        of: [...of, ...points],
        message: faultText(fault, referenceNode),
        remedy: fault.remedy,
      },
      subject ? { path: subject.path, file: subject.origin } : { path: '/links' },
    );
  }
}

function joined(byPoint: Parameters<typeof remarkFaults>[1]): FoundFault[] {
  const found = new Map<string, FoundFault>();
  for (const [point, faults] of byPoint)
    for (const fault of faults) {
      const { fault: name, nodes, of } = fault;
      const key = [name, ...(name === 'network-floating' ? nodes : of).toSorted()].join(' ');
      const before = found.get(key);
      found.set(key, { fault: before?.fault ?? fault, points: [...(before?.points ?? []), point] });
    }
  return [...found.values()];
}

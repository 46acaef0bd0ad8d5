import type { Job, LinkEnd } from '../../lib/model/content/resolved-job.ts';
import { portLikeness } from '../../lib/model/ports/port-pattern.ts';

/** Both ends of every link of a job, like ports alike, whichever way round: what is joined to what. */
export function endsOf(job: Job, renamed: Readonly<Record<string, string>> = {}): readonly string[] {
  const nameOf = ({ device, terminal }: LinkEnd): string => {
    const found = job.devices.find(({ id }) => id === device);
    const name = renamed[device] ?? device;
    // The largest draw takes the largest port of a bar that is free: which that is depends on what else is on it.
    if (found?.facts.terminals[terminal]?.role === 'ground-bar') return `${name}: a port`;
    if (found?.spec?.kind !== 'distribution') return `${name}.${terminal}`;
    const form = found.spec['fused-ways'][terminal]?.['fuse-form'];
    return `${name}: ${portLikeness(found.facts.terminals[terminal], form)}`;
  };
  return job.links
    .filter(({ origin }) => origin === 'job')
    .map(({ from, to }) => [nameOf(from), nameOf(to)].toSorted().join(' - '))
    .toSorted();
}

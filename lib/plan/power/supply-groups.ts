import { type Job, linkEndOf } from '../../model/content/resolved-job.ts';
import type { ConductorRole, TerminalRole } from '../../model/vocabulary.ts';

/** A device that draws current, or a board with all that stands on it: its ground is held against its feed. */
export interface SupplyGroup {
  readonly kind: 'device' | 'board';
  readonly id: string;
  readonly inside: (device: string) => boolean;
}

/** A conductor of the job between two terminals. */
export interface SupplyWire {
  readonly id: string;
  readonly role: ConductorRole;
  readonly from: string;
  readonly to: string;
}

/** The devices of a job that draw current, then its boards. */
export function supplyGroups({ devices, boards }: Pick<Job, 'devices' | 'boards'>): SupplyGroup[] {
  const drawing = devices.filter(
    ({ spec, origin }) =>
      origin === 'job' && spec !== null && ['amplifier', 'processor', 'source-unit'].includes(spec.kind),
  );
  const boardOf = new Map(devices.map(({ id, board }) => [id, board]));
  return [
    ...drawing.map(({ id }): SupplyGroup => ({ kind: 'device', id, inside: (device) => device === id })),
    ...boards.map(
      ({ id }): SupplyGroup => ({ kind: 'board', id, inside: (device) => boardOf.get(device) === id }),
    ),
  ];
}

/** Wires between a group and the rest that feed it, or that take its current back. */
export function crossing<T extends SupplyWire>(
  job: Job,
  wires: readonly T[],
  role: 'power' | 'ground',
  { inside }: SupplyGroup,
): readonly T[] {
  const isInside = (terminal: string) => inside(linkEndOf(terminal).device);
  return wires.filter((wire) => {
    const [own, far] = isInside(wire.from) ? [wire.from, wire.to] : [wire.to, wire.from];
    if (wire.role !== role || !isInside(own) || isInside(far)) return false;
    return role === 'power'
      ? hasRole(job, own, ['feed-in', 'supply-positive'])
      : hasRole(job, far, ['body', 'source-negative', 'ground-bar']);
  });
}

function hasRole(
  { devices }: Pick<Job, 'devices'>,
  terminal: string,
  roles: readonly TerminalRole[],
): boolean {
  const end = linkEndOf(terminal);
  const role = devices.find(({ id }) => id === end.device)?.facts.terminals[end.terminal]?.role;
  return role !== undefined && roles.includes(role);
}

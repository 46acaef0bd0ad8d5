import { joinedNodes } from '../../audio/load/joined-nodes.ts';
import { unbridgedPairs } from '../../audio/load/unbridged-pairs.ts';
import { type Job, type Link, type LinkEnd, terminalId } from '../../model/content/resolved-job.ts';
import type { TerminalRole } from '../../model/vocabulary.ts';
import type { PlanBook } from '../plan-book.ts';
import { type DevicesById, terminalRole } from '../wiring/conductor-role.ts';
import type { CoilField, Output } from './output.ts';

/** Channels and coils whose wiring can't work for a reason that is told: what follows from it is not told again. */
export interface Miswired {
  readonly channels: ReadonlySet<string>;
  readonly coils: ReadonlySet<string>;
}

/**
 * Stops what is wired against the way that amplifiers work, where it is linked: a coil between channels that are no
 * bridge, and one that goes back over the body.
 */
export function remarkMiswired(
  job: Job,
  devices: DevicesById,
  outputs: readonly Output[],
  field: CoilField,
  book: PlanBook,
): Miswired {
  const found = [...unbridged(job, outputs, field, book), ...overBody(job, devices, outputs, field, book)];
  return {
    channels: new Set(found.flatMap(({ channels }) => channels)),
    coils: new Set(found.flatMap(({ coils }) => coils)),
  };
}

interface Told {
  readonly channels: readonly string[];
  readonly coils: readonly string[];
}

const endsOf = ({ device, spec }: Pick<Output, 'device' | 'spec'>) => ({
  positive: `${device.id}.${spec.positive}`,
  negative: `${device.id}.${spec.negative}`,
});

/** The link at a terminal whose other end is no part of the amplifier: what must change. */
function linkAt(job: Job, terminal: string): Link | undefined {
  return job.links.find(({ from, to }) => [from, to].some((end) => terminalId(end) === terminal));
}

function unbridged(job: Job, outputs: readonly Output[], field: CoilField, book: PlanBook): readonly Told[] {
  const amplifiers = [...new Set(outputs.map(({ device }) => device))];
  return amplifiers.flatMap((device) => {
    const own = outputs.filter((output) => output.device === device);
    const bridges = own[0]?.part.bridges ?? {};
    const pairs = unbridgedPairs({
      amplifier: device.id,
      outputs: own
        .filter(({ bridgedWith }) => bridgedWith === null)
        .map((output) => ({ channel: output.id, ...endsOf(output) })),
      bridges: Object.entries(bridges).map(([name, spec]) => ({
        channel: `${device.id}.${name}`,
        ...endsOf({ device, spec }),
      })),
      coils: field.terminals,
      joins: field.joins,
    });
    return pairs.map(({ channels, terminals, coils, fault }): Told => {
      const { fault: rule, subjects: of, message, remedy } = fault;
      const path = linkAt(job, terminals[1])?.path ?? device.path;
      book.remark({ rule, level: 'stop', of, message, remedy }, { path });
      return { channels, coils };
    });
  });
}

const coilRoles: readonly TerminalRole[] = ['coil-positive', 'coil-negative'];
const groundRoles: readonly TerminalRole[] = ['body', 'ground-bar', 'source-negative', 'supply-negative'];

function overBody(
  job: Job,
  devices: DevicesById,
  outputs: readonly Output[],
  field: CoilField,
  book: PlanBook,
): readonly Told[] {
  const has = (end: LinkEnd, roles: readonly TerminalRole[]) => roles.includes(terminalRole(devices, end));
  const groupOf = joinedNodes([
    ...field.joins,
    ...field.terminals.map(({ positive, negative }) => [positive, negative] as const),
  ]);
  return job.links.flatMap((link): Told[] => {
    const coilEnd = [link.from, link.to].find((end) => has(end, coilRoles));
    const ground = [link.from, link.to].find((end) => has(end, groundRoles));
    if (!coilEnd || !ground) return [];
    const group = groupOf(terminalId(coilEnd));
    const coils = field.terminals.filter(({ positive }) => groupOf(positive) === group);
    const driving = outputs.filter((output) =>
      Object.values(endsOf(output)).some((end) => groupOf(end) === group),
    );
    const [back] = driving.map((output) => endsOf(output).negative);
    book.remark(
      {
        rule: 'coil-to-body',
        level: 'stop',
        of: [
          ...driving.map(({ id }) => id),
          ...driving.map((output) => endsOf(output).negative),
          coilEnd.device,
          ...coils.map(({ coil }) => coil),
          link.id,
        ],
        message: `${terminalId(coilEnd)} goes to ${terminalId(ground)}: an amplifier drives its negative output too, and a coil that goes back over the body shorts it or stays silent`,
        remedy: `take it to ${back ?? 'the negative output of its channel'}, and to nothing else`,
      },
      { path: link.path },
    );
    return [{ channels: driving.map(({ id }) => id), coils: coils.map(({ coil }) => coil) }];
  });
}

import { joinedNodes } from '../../audio/load/joined-nodes.ts';
import { unbridgedPairs } from '../../audio/load/unbridged-pairs.ts';
import {
  type Job,
  type Link,
  type LinkEnd,
  linkEndOf,
  terminalId,
} from '../../model/content/resolved-job.ts';
import { reasonLeftOpen } from '../../model/ports/port-pattern.ts';
import type { TerminalRole } from '../../model/vocabulary.ts';
import type { PlanBook } from '../plan-book.ts';
import { type DevicesById, terminalRole } from '../wiring/conductor-role.ts';
import type { CoilField, Output } from './load/amplifier-output.ts';

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

/** The link between a terminal of the amplifier and one of the speakers: what must change. */
function linkBetween(job: Job, terminal: string, speakers: readonly string[]): Link | undefined {
  const at = job.links.filter(({ from, to }) => [from, to].some((end) => terminalId(end) === terminal));
  return at.find(({ from, to }) => [from, to].some(({ device }) => speakers.includes(device))) ?? at[0];
}

function unbridged(job: Job, outputs: readonly Output[], field: CoilField, book: PlanBook): readonly Told[] {
  const amplifiers = [...new Set(outputs.map(({ device }) => device))];
  return amplifiers.flatMap((device) => {
    const own = outputs.filter((output) => output.device === device);
    const bridges = own[0]?.part.bridges ?? {};
    const pairs = unbridgedPairs({
      amplifier: device.id,
      outputs: own.map((output) => ({ channel: output.id, ...endsOf(output) })),
      bridges: Object.entries(bridges).map(([name, spec]) => ({
        channel: `${device.id}.${name}`,
        ...endsOf({ device, spec }),
      })),
      coils: field.terminals,
      joins: field.joins,
    });
    return pairs.map(({ channels, terminals, coils, fault }): Told => {
      const { fault: rule, of, message, remedy } = fault;
      const path = linkBetween(job, terminals[1], of)?.path ?? device.path;
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
    const back = driving.flatMap((output) => waysBack(job, output, isTouched(groupOf, group)));
    book.remark(
      {
        rule: 'coil-to-body',
        level: 'stop',
        of: [
          ...driving.map(({ id }) => id),
          ...back.map(({ terminal }) => terminal),
          coilEnd.device,
          ...coils.map(({ coil }) => coil),
          link.id,
        ],
        message: `${terminalId(coilEnd)} goes to ${terminalId(ground)}: an amplifier drives its negative output too, and a coil that goes back over the body shorts it or stays silent`,
        remedy: `take it to ${back.map(({ text }) => text).join(', or to ') || 'the negative output of its channel'}, and to nothing else`,
      },
      { path: link.path },
    );
    return [{ channels: driving.map(({ id }) => id), coils: coils.map(({ coil }) => coil) }];
  });
}

const isTouched = (groupOf: (terminal: string) => string, group: string) => (terminal: string) =>
  groupOf(terminal) === group;

interface WayBack {
  readonly terminal: string;
  readonly text: string;
}

/**
 * Where the other end of a coil belongs that hangs on one terminal of an output: the other terminal of the output, or
 * that of a bridge which begins at the same terminal. What the job leaves open tells which is meant; where it does not,
 * both are named.
 */
function waysBack(job: Job, output: Output, touched: (terminal: string) => boolean): readonly WayBack[] {
  const { device, part } = output;
  const across = (ends: { readonly positive: string; readonly negative: string }) =>
    touched(ends.positive) ? ends.negative : touched(ends.negative) ? ends.positive : null;
  const single = across(endsOf(output));
  const bridges = Object.entries(part.bridges).flatMap(([name, spec]): WayBack[] => {
    const terminal = across(endsOf({ device, spec }));
    return terminal === null || terminal === single || isLinked(job, terminal)
      ? []
      : [{ terminal, text: `${terminal} (${name} bridged)` }];
  });
  const own = single === null ? [] : [{ terminal: single, text: single }];
  const isMeant = ({ terminal }: WayBack) => !isLeftOpen(job, terminal);
  const all = [...bridges, ...own];
  return all.some(isMeant) ? all.filter(isMeant) : all;
}

function isLinked({ links }: Pick<Job, 'links'>, terminal: string): boolean {
  return links.some(({ from, to }) => [from, to].some((end) => terminalId(end) === terminal));
}

function isLeftOpen(job: Job, terminal: string): boolean {
  const { device, terminal: name } = linkEndOf(terminal);
  return reasonLeftOpen(job.file['left-open'], device, name) !== undefined;
}

import {
  type Device,
  type Job,
  type Link,
  type LinkEnd,
  terminalId,
} from '../../model/content/resolved-job.ts';
import type { PlanFilter } from '../../model/plan/index.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import { type DevicesById, terminalRole } from '../wiring/conductor-role.ts';

/** The output that a signal input is linked to, whichever way round the link is written; a pair by its positive. */
export function feedOf(job: Job, input: LinkEnd): LinkEnd | null {
  return feedingLink(job, input)?.output ?? null;
}

interface FeedingLink {
  readonly output: LinkEnd;
  readonly link: Link;
}

function feedingLink(job: Job, input: LinkEnd): FeedingLink | null {
  const id = terminalId(input);
  const isInput = (end: LinkEnd) => terminalId(end) === id || terminalId(end) === `${id}+`;
  for (const link of job.links) {
    if (isInput(link.to)) return { output: link.from, link };
    if (isInput(link.from)) return { output: link.to, link };
  }
  return null;
}

/** The passive filter in the lead that ends at an input; null where there is none. */
export function filterInLead(job: Job, input: LinkEnd): PlanFilter | null {
  const cable = feedingLink(job, input)?.link.cable;
  const part = cable ? job.parts[cable.part] : undefined;
  if (!cable || part?.kind !== 'cable' || !part.filter) return null;
  const { corner, ...filter } = part.filter;
  return { where: `${cable.id}.${cable.conductor}`, ...filter, cornerHz: corner, inLead: true };
}

/** The inputs of a processor that one of its outputs plays. */
export interface PlayedInputs {
  readonly linked: readonly LinkEnd[];
  /** False where several are linked, and nothing says which of them it plays. */
  readonly isTold: boolean;
}

/** The linked inputs that `mix` names for an output of a processor; all that are linked where it names none. */
export function playedInputs(
  job: Job,
  devices: DevicesById,
  { id, facts, given }: Device,
  output: string,
): PlayedInputs {
  const names = given?.mix[output] ?? given?.mix[stemName(output)];
  const all = Object.keys(facts.terminals)
    .filter((name) =>
      ['signal-in', 'speaker-in-positive'].includes(
        terminalRole(devices, { device: id, terminal: name }) ?? '',
      ),
    )
    .map((name): LinkEnd => ({ device: id, terminal: name }));
  const played = names ? all.filter((end) => names.some((name) => isNamed(end, name))) : all;
  const linked = played.filter((end) => feedOf(job, end) !== null);
  return { linked, isTold: names !== undefined || linked.length < 2 };
}

/** True for a terminal, or for the positive of a pair, by its name. */
function isNamed(end: LinkEnd, name: string): boolean {
  return end.terminal === name || stemName(end.terminal) === name;
}

import { filterMenu } from '../../audio/filter/filter-offers.ts';
import {
  type Device,
  type Job,
  type Link,
  type LinkEnd,
  terminalId,
} from '../../model/content/resolved-job.ts';
import { terminalsOf } from '../../model/kinds/kind.ts';
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

/**
 * The linked inputs that `mix` names for an output of a processor. Where it names none: the input of the same number, if
 * the part neither sums nor has a menu for filters, as a converter of the level (common practice); else all that are
 * linked.
 */
export function playedInputs(job: Job, devices: DevicesById, device: Device, output: string): PlayedInputs {
  const { id, facts, given } = device;
  const names = given?.mix[output] ?? given?.mix[stemName(output)];
  const all = Object.keys(facts.terminals)
    .filter((name) =>
      ['signal-in', 'speaker-in-positive'].includes(
        terminalRole(devices, { device: id, terminal: name }) ?? '',
      ),
    )
    .map((name): LinkEnd => ({ device: id, terminal: name }));
  const fed = all.filter((end) => feedOf(job, end) !== null);
  if (names) return { linked: fed.filter((end) => names.some((name) => isNamed(end, name))), isTold: true };
  const own = throughConverter(devices, device, output, all, fed);
  return own ? { linked: [own], isTold: true } : { linked: fed, isTold: fed.length < 2 };
}

/** The linked input that a converter passes on to an output: that of the same number among those of its form. */
function throughConverter(
  devices: DevicesById,
  { spec, facts }: Device,
  output: string,
  all: readonly LinkEnd[],
  fed: readonly LinkEnd[],
): LinkEnd | null {
  if (spec?.kind !== 'processor' || spec.summing === true || filterMenu(spec)) return null;
  const outputs = terminalsOf(facts.terminals, 'signal-out');
  const role = fed[0] && terminalRole(devices, fed[0]);
  const alike = all.filter((end) => terminalRole(devices, end) === role);
  if (fed.some((end) => !alike.includes(end)) || alike.length !== outputs.length) return null;
  const own = alike[outputs.indexOf(output)];
  return own && fed.includes(own) ? own : null;
}

/** True for a terminal, or for the positive of a pair, by its name. */
function isNamed(end: LinkEnd, name: string): boolean {
  return end.terminal === name || stemName(end.terminal) === name;
}

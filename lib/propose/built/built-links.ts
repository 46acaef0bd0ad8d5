import type { BuiltJob } from '../../model/content/built.ts';
import { hasFields, type Proposal } from '../../model/content/proposal.ts';
import { bodyId, linkEndOf } from '../../model/content/resolved-job.ts';
import { type PartFacts, partFacts } from '../../model/kinds/index.ts';
import { linkName } from '../../model/ports/pair-name.ts';
import { isPortPattern, matchesPattern } from '../../model/ports/port-pattern.ts';
import type { Draft } from '../draft/draft.ts';

/** A link that a released revision proposed. */
export interface BuiltLink {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly cable: string | null;
  readonly proposal: Proposal;
}

/** A field of what a proposal says; null where it is no text. */
export function said({ value }: Proposal, field: string): string | null {
  const found = hasFields(value) ? value[field] : null;
  return typeof found === 'string' ? found : null;
}

/** Links among proposals. */
export function builtLinks(proposals: readonly Proposal[]): readonly BuiltLink[] {
  return proposals.flatMap((proposal): BuiltLink[] => {
    const [from, to, id] = [said(proposal, 'from'), said(proposal, 'to'), proposal.path[1]];
    if (from === null || to === null || id === undefined) return [];
    return [{ id, from, to, cable: said(proposal, 'cable'), proposal }];
  });
}

/** What of a released revision the ends of its links are looked up in. */
interface BuiltAround {
  readonly built: BuiltJob;
  /** Devices that it proposed. */
  readonly devices: ReadonlyMap<string, Proposal>;
}

/** True where a built link still joins what it joined, and nothing that the job says today speaks against it. */
export function fitsAtBothEnds(draft: Draft, link: BuiltLink, around: BuiltAround): boolean {
  return [link.from, link.to].every((end) => isFreeEnd(draft, end, around)) && !isAskedOtherwise(draft, link);
}

function isFreeEnd(draft: Draft, end: string, { built, devices }: BuiltAround): boolean {
  const { device: id, terminal } = linkEndOf(end);
  if (id === bodyId) return terminal in draft.around.vehicle.grounds;
  const device = draft.device(id);
  const proposed = devices.get(id);
  const part = proposed && draft.around.parts[said(proposed, 'part') ?? ''];
  const facts = device?.facts ?? (part && partFacts(part));
  const names = facts ? terminalsOf(facts, terminal) : [];
  if (names.length === 0) return false;
  if (!device) return true;
  const before = built.items[id];
  const hasMoved = before !== undefined && (before.board !== device.board || before.seat !== device.seat);
  const isOther = before !== undefined && !isJoinedAlike(draft, before.part, device.facts);
  return !hasMoved && !isOther && !names.some((name) => isTaken(draft, id, name, built));
}

/** True where a part is joined as another was: terminals of the same names and roles, so that each wire has its place. */
function isJoinedAlike({ around }: Draft, before: string | null, facts: PartFacts): boolean {
  const part = around.parts[before ?? ''];
  const rolesOf = ({ terminals }: PartFacts) =>
    Object.entries(terminals)
      .map(([name, { role }]) => `${name} ${role}`)
      .toSorted()
      .join('\n');
  return part !== undefined && rolesOf(partFacts(part)) === rolesOf(facts);
}

/** The terminals that a name stands for: itself, both of a pair, or all of a pattern. */
function terminalsOf({ terminals }: PartFacts, name: string): readonly string[] {
  if (name in terminals) return [name];
  if (isPortPattern(name)) return Object.keys(terminals).filter((one) => matchesPattern(name, one));
  const pair = [`${name}+`, `${name}-`];
  return pair.every((one) => one in terminals) ? pair : [];
}

/** True where the job leaves a terminal open, or links it today to what was not at it when it was built. */
function isTaken(draft: Draft, device: string, terminal: string, { wires }: BuiltJob): boolean {
  if (draft.isLeftOpen(device, terminal)) return true;
  if (draft.device(device)?.origin === 'vehicle') return false;
  const id = `${device}.${terminal}`;
  return draft.linksAt(device, terminal).some((link) => {
    const own = Object.entries(wires).filter(([wire]) => linkName(wire) === link);
    return !own.some(([, { from, to }]) => from === id || to === id);
  });
}

/** True where a key of a device says today where its links go: then the rules follow what it says. */
function isAskedOtherwise(draft: Draft, { from, to, proposal }: BuiltLink): boolean {
  const ends = [linkEndOf(from), linkEndOf(to)];
  return ends.some(({ device: id }) => {
    const device = draft.device(id);
    const given = device?.given;
    if (!given) return false;
    const board = draft.boards[device.board ?? ''];
    const ground = given.ground ?? board?.ground;
    const toBody = ends.find((end) => end.device === bodyId);
    if (proposal.rule === 'ground')
      return ground !== undefined && toBody !== undefined && toBody.terminal !== ground;
    if (proposal.rule === 'supply') return (given['fed-by'] ?? board?.['fed-by']) !== undefined;
    return given.channels !== undefined || given['driven-by'] !== undefined || given.signal !== undefined;
  });
}

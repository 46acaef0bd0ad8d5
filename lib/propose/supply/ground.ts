import { bodyId, linkEndOf } from '../../model/content/resolved-job.ts';
import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { type DraftDevice, terminalAt, terminalsWith } from '../draft/draft-device.ts';
import { likePorts, portName } from '../draft/like-ports.ts';
import { groundEnd } from './ground-points.ts';
import { compareShelved, standing } from './turn-on.ts';

/** A terminal that needs a ground lead. */
interface GroundNeed {
  readonly device: DraftDevice;
  readonly terminal: string;
  /** What comes back through it (A). */
  readonly currentA: number;
}

/** Ground leads of a board that share the stud of their point by lugs of their own; more go over a bar. */
const onOneStud = 2;

/**
 * Links every ground terminal that nothing grounds: up to two of a board straight to the ground point, more over a bar, so
 * that all of a board share one point. `drawA`: what a device draws.
 */
export function linkGrounds(draft: Draft, drawA: (device: DraftDevice) => number): void {
  const needs = groundNeeds(draft, drawA);
  const boards = new Map<string, GroundNeed[]>();
  for (const need of needs) {
    const key = need.device.board === null ? `alone ${need.device.id}` : `board ${need.device.board}`;
    boards.set(key, [...(boards.get(key) ?? []), need]);
  }
  for (const own of boards.values()) groundTogether(draft, own);
}

/** Ground terminals of devices, batteries and sensing relays, and the far ends of coils that are driven. */
function groundNeeds(draft: Draft, drawA: (device: DraftDevice) => number): readonly GroundNeed[] {
  return draft.own.flatMap((device): GroundNeed[] => {
    const grounds = terminalsWith(device, 'supply-negative', 'source-negative');
    const coils = terminalsWith(device, 'relay-coil');
    const driven = coils.some((name) => !draft.isFree(device.id, name));
    return [...grounds, ...(driven ? coils : [])]
      .filter((terminal) => draft.isFree(device.id, terminal) && !draft.isLeftOpen(device.id, terminal))
      .map((terminal) => ({ device, terminal, currentA: drawA(device) }));
  });
}

/** Each lead at the first bar there that takes its size; what none takes as though there were no bar. */
function groundTogether(draft: Draft, needs: readonly GroundNeed[]): void {
  const [first] = needs;
  if (!first) return;
  const bars = barsOf(draft, first.device);
  const barFor = (need: GroundNeed) => bars.find((bar) => takesLead(bar, need));
  for (const bar of bars) {
    const own = needs.filter((need) => barFor(need) === bar);
    if (own.length > 0) linkBar(draft, bar, own);
  }
  const left = needs.filter((need) => !barFor(need));
  if (left.length > onOneStud) {
    const bar = newBar(draft, left);
    if (bar) linkBar(draft, bar, left);
    return;
  }
  for (const { device, terminal } of left) {
    const end = groundEnd(draft, device);
    // What the place of one lacks is asked once.
    if (!end) return;
    draft.addLink(
      draft.freeName(`ground-${device.id}`, terminal.toLowerCase()),
      { from: `${device.id}.${terminal}`, to: end.to },
      { rule: 'ground', reason: end.reason, cp: true },
      device.id,
    );
  }
}

/** The ground bars of the job that stand where a device stands, with a free port. */
function barsOf(draft: Draft, { board, seat }: DraftDevice): readonly DraftDevice[] {
  return draft.own.filter(
    (one) =>
      one.board === board &&
      one.seat === seat &&
      terminalsWith(one, 'ground-bar').some((name) => draft.isFree(one.id, name)),
  );
}

/** True where some port of a bar takes the conductors of a terminal, free or not: too few ports is another matter. */
function takesLead(bar: DraftDevice, need: GroundNeed): boolean {
  return terminalsWith(bar, 'ground-bar').some((name) => portTakes(terminalAt(bar, name), need));
}

function portTakes(port: TerminalSpec | null | undefined, { device, terminal }: GroundNeed): boolean {
  const [takes, own] = [terminalAt(device, terminal)?.takes, port?.takes];
  return (
    !takes ||
    !own ||
    (own.from.areaMm2 <= takes.to.areaMm2 * 1.001 && takes.from.areaMm2 <= own.to.areaMm2 * 1.001)
  );
}

/** The smallest bar of the catalogue whose ports take all leads and the one to the body. */
function newBar(draft: Draft, needs: readonly GroundNeed[]): DraftDevice | null {
  const fitting = Object.entries(draft.around.parts).flatMap(([part, spec]) => {
    if (spec.kind !== 'distribution') return [];
    const ports = Object.keys(spec.terminals).filter((name) => spec.terminals[name]?.role === 'ground-bar');
    return ports.length > 0 && dealPorts(spec, ports, needs) ? [{ part, spec, ports }] : [];
  });
  const [best] = fitting.toSorted(
    (a, b) =>
      a.ports.length - b.ports.length || compareShelved(draft, a.part, b.part) || (a.part < b.part ? -1 : 1),
  );
  const [first] = needs;
  if (!best || !first) {
    draft.ask(
      ['devices', first?.device.id ?? ''],
      `no ground bar of the catalogue takes the leads of ${needs.map(({ device }) => device.id).join(', ')} and the one to the body`,
      'add one to the catalogue, or write the ground links',
    );
    return null;
  }
  const id = draft.freeName('ground-bar', first.device.board ?? first.device.id);
  const why: Why = {
    rule: 'ground',
    reason: `the smallest bar for ${needs.length} leads and the one to the body: one ground area for all`,
    cp: true,
  };
  draft.addDevice(
    id,
    { part: best.part, title: 'Ground bar', ...standing(first.device) },
    why,
    first.device.id,
  );
  return draft.device(id);
}

interface DealtPorts {
  readonly body: string;
  readonly ports: ReadonlyMap<GroundNeed, string>;
}

/** Ports of a bar: the largest for the lead to the body, then the largest draw the largest port; null where they do not suffice. */
function dealPorts(
  spec: PartOf<'distribution'>,
  free: readonly string[],
  needs: readonly GroundNeed[],
): DealtPorts | null {
  const largestMm2 = (name: string) => spec.terminals[name]?.takes?.to.areaMm2 ?? 0;
  const bySize = free.toSorted((a, b) => largestMm2(b) - largestMm2(a) || free.indexOf(a) - free.indexOf(b));
  const [body, ...rest] = bySize;
  if (body === undefined) return null;
  const left = new Set(rest);
  const ports = new Map<GroundNeed, string>();
  for (const need of needs.toSorted((a, b) => b.currentA - a.currentA)) {
    const port = [...left].find((name) => portTakes(spec.terminals[name], need));
    if (port === undefined) return null;
    ports.set(need, port);
    left.delete(port);
  }
  return { body, ports };
}

function linkBar(draft: Draft, bar: DraftDevice, needs: readonly GroundNeed[]): void {
  if (bar.spec.kind !== 'distribution') return;
  const all = terminalsWith(bar, 'ground-bar').filter(
    (name) => draft.isFree(bar.id, name) && !draft.isLeftOpen(bar.id, name),
  );
  const isGrounded = Object.values(draft.links).some(({ from, to }) => {
    const devices = [from, to].map((reference) => linkEndOf(reference).device);
    return devices.includes(bar.id) && devices.includes(bodyId);
  });
  const dealt = dealPorts(bar.spec, all, needs);
  if (!dealt) {
    draft.ask(
      ['devices', bar.id],
      `the free ports of ${bar.id} do not take the leads of ${needs.map(({ device }) => device.id).join(', ')}`,
      'use a bar with more ports, or write the ground links',
    );
    return;
  }
  const ports = all.filter((name) => name !== dealt.body);
  const alike = new Map(ports.map((name) => [name, likePorts(draft, bar, name, ports)] as const));
  const end = isGrounded ? null : groundEnd(draft, bar);
  if (end)
    draft.addLink(
      draft.freeName('ground-body', bar.id),
      { from: `${bar.id}.${dealt.body}`, to: end.to },
      { rule: 'ground', reason: end.reason, cp: true },
      bar.id,
    );
  for (const need of needs) {
    const port = dealt.ports.get(need) ?? '';
    draft.addLink(
      draft.freeName(`ground-${need.device.id}`, need.terminal.toLowerCase()),
      { from: `${need.device.id}.${need.terminal}`, to: portName(bar.id, alike.get(port) ?? [port]) },
      {
        rule: 'ground',
        reason: 'the largest draw on the largest port, like ports as the wires cross least',
        cp: true,
      },
      need.device.id,
    );
  }
}

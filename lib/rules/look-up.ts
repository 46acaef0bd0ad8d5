import { type Board, type Device, type Job, linkEndOf, type Run } from '../model/content/resolved-job.ts';
import { stretchesOf } from '../model/content/run-ways.ts';
import type { TerminalSpec } from '../model/kinds/fields/terminal-spec.ts';
import type { Part } from '../model/kinds/index.ts';
import { pointer } from '../model/place.ts';
import type { PlanFuse, PlanWire } from '../model/plan/index.ts';
import type { TerminalRole } from '../model/vocabulary.ts';
import type { Case, Spot } from './rule.ts';

/** The device of a terminal id: `amp` of `amp.B+`. */
export function deviceIdOf(terminal: string): string {
  return linkEndOf(terminal).device;
}

/** The name of a terminal within its device: `B+` of `amp.B+`. */
export function terminalNameOf(terminal: string): string {
  return linkEndOf(terminal).terminal;
}

/** A device of the job or its vehicle. */
export function deviceOf(job: Job, id: string): Device | undefined {
  return job.devices.find((device) => device.id === id);
}

/** The data of a terminal by its id, such as `amp.B+`. */
export function terminalSpecOf(job: Job, terminal: string): TerminalSpec | undefined {
  const terminals = deviceOf(job, deviceIdOf(terminal))?.facts.terminals;
  const name = terminalNameOf(terminal);
  return terminals && Object.hasOwn(terminals, name) ? terminals[name] : undefined;
}

/** True where a terminal has one of the roles. */
export function hasRole(job: Job, terminal: string, ...roles: readonly TerminalRole[]): boolean {
  const role = terminalSpecOf(job, terminal)?.role;
  return role !== undefined && roles.includes(role);
}

/** A part by its id; none where the id is null. */
export function partOf(job: Job, id: string | null): Part | undefined {
  return id !== null && Object.hasOwn(job.parts, id) ? job.parts[id] : undefined;
}

/** Where a device was written, or a value below it. */
export function deviceSpot(job: Job, id: string, ...below: readonly string[]): Spot {
  const device = deviceOf(job, id);
  if (!device) return { path: '' };
  return { path: `${device.path}${pointer(below)}`, file: device.origin === 'vehicle' ? 'vehicle' : 'job' };
}

/** Where the part of a device was written, or a value below it; the device itself where it is no part. */
export function partSpot(job: Job, id: string, ...below: readonly string[]): Spot {
  const part = deviceOf(job, id)?.part ?? null;
  return part === null ? deviceSpot(job, id) : catalogueSpot(part, ...below);
}

/** Where a part of the catalogue was written, or a value below it. */
export function catalogueSpot(part: string, ...below: readonly string[]): Spot {
  return { path: pointer(['parts', part, ...below]), file: 'part' };
}

/** Where the route of a run was measured; of several the first. */
export function routeSpot({ ways, routeId }: Run): Spot {
  return { path: pointer(['routes', ways[0]?.id ?? routeId]), file: 'vehicle' };
}

/** Where a stretch of a run was measured, or a value below it: a run may go by several routes. */
export function stretchSpot(
  { ways }: Pick<Run, 'ways'>,
  at: number,
  ...below: readonly string[]
): Required<Pick<Spot, 'path' | 'file'>> {
  const stretch = stretchesOf(ways)[at];
  const [route, own] = stretch ? [stretch.way.id, stretch.at] : ['', at];
  return { path: pointer(['routes', route, 'passes', own, ...below]), file: 'vehicle' };
}

/** Where the space of a board was measured, or a value below it. */
export function spaceSpot({ spaceId }: Board, ...below: readonly string[]): Spot {
  return { path: pointer(['spaces', spaceId, ...below]), file: 'vehicle' };
}

/** Where a ground point is told, or a value below it. */
export function groundSpot(point: string, ...below: readonly string[]): Spot {
  return { path: pointer(['grounds', point, ...below]), file: 'vehicle' };
}

/** Where the link of a wire was written. */
export function wireSpot({ job, plan }: Case, wire: string): Spot {
  const name = plan.wires.find(({ id }) => id === wire)?.link ?? wire;
  const link =
    job.links.find(({ id }) => id === wire) ?? job.links.find(({ id }) => id === name || id === `${name}.+`);
  if (!link) return { path: '/links' };
  return { path: link.path, file: link.origin === 'vehicle' ? 'vehicle' : 'job' };
}

/** Where the rating of a fuse was written, or its holder where it was left out. */
export function fuseSpot(job: Job, { item, way }: Pick<PlanFuse, 'item' | 'way'>): Spot {
  return way === '' ? deviceSpot(job, item, 'fuse') : deviceSpot(job, item, 'fuses', way);
}

/** Both terminals of a wire. */
export function endsOf(wire: PlanWire): readonly [string, string] {
  return [wire.from, wire.to];
}

/** False for a wire that no cable was found for, which is told once: nothing else can be said of it. */
export function hasSize({ size }: PlanWire): boolean {
  return size.areaMm2 > 0;
}

/** The wires that the job adds; those that the vehicle came with are its maker's affair. */
export function jobWires({ plan }: Case): readonly PlanWire[] {
  return plan.wires.filter(({ origin }) => origin === 'job');
}

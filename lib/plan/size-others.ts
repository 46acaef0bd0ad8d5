import type { ConductorRole } from '../model/vocabulary.ts';
import { terminalRole } from './conductor-role.ts';
import { type SizedConductor, sizeConductor } from './conductor-sizing.ts';
import { type PowerSizing, zonesOf } from './size-power.ts';

/**
 * Sizes every conductor that is no part of the 12 V network: speaker, signal, turn-on and control wires. A turn-on
 * wire carries what its source can give, which limits it: it needs no fuse of its own.
 */
export function sizeOthers(sizing: PowerSizing): ReadonlyMap<string, SizedConductor> {
  const { job, devices, circuit, lengths, least } = sizing;
  const sized = new Map<string, SizedConductor>();
  for (const link of job.links) {
    const role: ConductorRole | undefined = circuit.roles.get(link.id);
    if (!role || role === 'power' || role === 'ground') continue;
    const needed = role === 'turn-on' ? sourceLimitA(sizing, link.id) : 0;
    const { areaMm2, why } = least.of(link.id);
    const one = sizeConductor(job, devices, {
      link,
      role,
      lengthM: lengths(link.id).lengthM,
      zones: zonesOf(job, devices, link, lengths, circuit),
      neededA: needed,
      ratedA: needed,
      leastMm2: areaMm2,
      why: why || null,
    });
    least.raise(link.id, one.cable.size.areaMm2, why);
    sized.set(link.id, one);
  }
  return sized;
}

/** The most that the source of a turn-on wire gives, by its terminal; 0 where its maker does not tell. */
function sourceLimitA({ job, devices }: PowerSizing, id: string): number {
  const link = job.links.find((one) => one.id === id);
  const ends = link ? [link.from, link.to] : [];
  const limits = ends
    .filter((end) => terminalRole(devices, end) === 'turn-on-out')
    .map((end) => devices.get(end.device)?.facts.terminals[end.terminal]?.current ?? 0);
  return Math.max(0, ...limits);
}

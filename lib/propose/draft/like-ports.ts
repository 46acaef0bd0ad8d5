import { portLikeness } from '../../model/ports/port-pattern.ts';
import type { Draft } from './draft.ts';
import type { DraftDevice } from './draft-device.ts';

/** The ports of a device that may stand for one of them: no wire of a link is at them that names one outright. */
export function likePorts(
  draft: Draft,
  device: DraftDevice,
  port: string,
  among: readonly string[],
): readonly string[] {
  const form = (name: string) =>
    device.spec.kind === 'distribution' ? device.spec['fused-ways'][name]?.['fuse-form'] : undefined;
  const likeness = (name: string) => portLikeness(device.facts.terminals[name], form(name));
  return among.filter(
    (name) => likeness(name) === likeness(port) && (name === port || draft.isFree(device.id, name)),
  );
}

/** Ports as a link names them: any of several like ones, or the only one. */
export function portName(device: string, ports: readonly string[]): string {
  return `${device}.${ports.join('|')}`;
}

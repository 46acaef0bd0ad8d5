import type { Device, Job } from '../../../model/content/resolved-job.ts';
import { factsOfOutput } from '../../audio/signal-inputs.ts';

/** How far up each source of the vehicle stood where its voltage was read: outputs of one that differ are told one by one. */
export function sourcesAt(job: Job): readonly string[] {
  return job.devices.flatMap((device) => {
    if (device.origin !== 'vehicle') return [];
    const told = levelsRead(job, device);
    const only = onlyOne(told);
    if (only !== null) return [`${device.id} at ${only}`];
    return told.map(({ name, at }) => `${device.id}.${name} at ${at}`);
  });
}

/** How far up a source stood where its clean voltage was read, as its display says it; null where nobody told. */
export function cleanAt(job: Job, device: Device): string | null {
  const told = levelsRead(job, device);
  if (told.length === 0) return null;
  return onlyOne(told) ?? told.map(({ name, at }) => `${at} for ${name}`).join(', ');
}

interface LevelRead {
  readonly name: string;
  readonly at: string;
}

function levelsRead(job: Job, device: Device): readonly LevelRead[] {
  const { id, spec, origin } = device;
  if (spec?.kind !== 'source-unit') return [];
  const found = origin === 'vehicle' ? job.vehicle.fitted[id]?.outputs : {};
  const names = new Set(Object.keys({ ...spec.outputs, ...found }));
  return [...names].flatMap((name) => {
    const at = factsOfOutput(job, device, name)['clean-at'];
    return at === undefined ? [] : [{ name, at }];
  });
}

function onlyOne(told: readonly LevelRead[]): string | null {
  const [only, ...others] = new Set(told.map(({ at }) => at));
  return only !== undefined && others.length === 0 ? only : null;
}

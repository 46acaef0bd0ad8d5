import type { Job } from '../../../model/content/resolved-job.ts';
import { factsOfOutput } from '../../audio/signal-inputs.ts';

/** How far up each source of the vehicle stood where its voltage was read: outputs of one that differ are told one by one. */
export function sourcesAt(job: Job): readonly string[] {
  return job.devices.flatMap((device) => {
    const { id, spec, origin } = device;
    if (origin !== 'vehicle' || spec?.kind !== 'source-unit') return [];
    const names = new Set(Object.keys({ ...spec.outputs, ...job.vehicle.fitted[id]?.outputs }));
    const told = [...names].flatMap((name) => {
      const at = factsOfOutput(job, device, name)['clean-at'];
      return at === undefined ? [] : [{ name, at }];
    });
    const [only, ...others] = new Set(told.map(({ at }) => at));
    if (only !== undefined && others.length === 0) return [`${id} at ${only}`];
    return told.map(({ name, at }) => `${id}.${name} at ${at}`);
  });
}

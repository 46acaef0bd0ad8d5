import { terminalId } from '../../model/content/resolved-job.ts';
import type { ZoneKind } from '../../model/vocabulary.ts';
import { liveSide, reached } from '../live-side.ts';
import { deviceSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';

/** Zones that are open to the air outside the cabin. */
const outside: readonly ZoneKind[] = ['engine-bay', 'near-exhaust', 'underbody'];

/** Batteries with their chemistry and positive terminal. */
function batteries({ job }: Case) {
  return job.devices.flatMap((device) => {
    if (device.spec?.kind !== 'battery') return [];
    const terminal = Object.keys(device.facts.terminals).find(
      (name) => device.facts.terminals[name]?.role === 'source-positive',
    );
    return [
      {
        device,
        chemistry: device.spec.chemistry,
        positive: terminalId({ device: device.id, terminal: terminal ?? '' }),
      },
    ];
  });
}

const placement: Rule = {
  id: 'battery-in-wrong-zone',
  judge(about) {
    return batteries(about).flatMap(
      ({ device: { id, origin, zone }, chemistry }): Verdict<'battery-in-wrong-zone'>[] => {
        const vents = chemistry === 'flooded' && !outside.includes(zone);
        const cooks = chemistry === 'lithium' && (zone === 'engine-bay' || zone === 'near-exhaust');
        if (origin !== 'job' || (!vents && !cooks)) return [];
        return [
          {
            level: 'stop',
            of: [id, zone],
            message: vents
              ? `the flooded battery ${id} is in the ${zone}: it gives off explosive gas and acid mist there`
              : `the lithium battery ${id} is in the ${zone}, which is too hot for it`,
            remedy: vents
              ? 'take an absorbed glass mat battery, or put it where a sealed box vents to the outside'
              : 'put it in the cabin or cargo area',
            ...deviceSpot(about.job, id),
          },
        ];
      },
    );
  },
};

const mixed: Rule = {
  id: 'battery-chemistries-mixed',
  judge(about) {
    const all = batteries(about);
    const { edges } = liveSide(about);
    return all.flatMap((one, index) => {
      const joined = reached(edges, [one.positive], () => true);
      return all.slice(0, index).flatMap((other): Verdict<'battery-chemistries-mixed'>[] => {
        if (one.chemistry === other.chemistry || !joined.has(other.positive)) return [];
        if (one.device.origin === 'vehicle' && other.device.origin === 'vehicle') return [];
        const [own, far] = one.device.origin === 'job' ? [one, other] : [other, one];
        return [
          {
            level: 'stop',
            of: [own.device.id, far.device.id],
            message: `${own.device.id} (${own.chemistry}) is joined straight to ${far.device.id} (${far.chemistry}): they want different charging voltages`,
            remedy: 'take batteries of one chemistry, or put a charger between them',
            ...deviceSpot(about.job, own.device.id),
          },
        ];
      });
    });
  },
};

export const batteryRules: readonly Rule[] = [placement, mixed];

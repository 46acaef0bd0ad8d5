import type { Device, Job, Link, Run } from '../../model/content/resolved-job.ts';
import { leftAndRightSpeakers } from '../../plan/audio/left-and-right-speakers.ts';
import { liesOnWay } from '../../plan/wiring/joints.ts';
import { deviceOf } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

/** A device in the vehicle at the end of a link that goes by a run. */
interface Led {
  readonly device: Device;
  readonly link: Link;
  readonly run: Run;
}

/** Each device once a run: both conductors of a pair go one way. */
function ledDevices(job: Job): readonly Led[] {
  const seen = new Set<string>();
  return job.links.flatMap((link) => {
    const run = job.runs.find(({ id }) => id === link.run);
    if (!run) return [];
    const ends = [link.from, link.to].filter((end) => !liesOnWay(job, link, end));
    return ends.flatMap((end): Led[] => {
      const device = deviceOf(job, end.device);
      const isPlaced =
        device && (device.seat !== null || (device.origin === 'vehicle' && device.part !== null));
      const key = `${end.device} ${run.id}`;
      if (!isPlaced || seen.has(key)) return [];
      seen.add(key);
      return [{ device, link, run }];
    });
  });
}

const placeOf = ({ seat, id }: Device) => seat ?? id;
const isOpposite = (a: string, b: string) =>
  (a === 'left' && b === 'right') || (a === 'right' && b === 'left');

/** The verdict on a device whose place its route does not end at. */
function elsewhere({ device, run }: Led, ends: readonly string[]): Verdict<'route-ends-elsewhere'> {
  return {
    level: 'caution',
    of: [device.id, run.id],
    message: `the wires of ${device.id} go by ${run.routeId}, which ends at ${listed(ends)}, and it is in ${placeOf(device)}`,
    remedy: `take its links into the run that leads to ${placeOf(device)}, or write that place under ends: of the route`,
    path: run.path,
  };
}

/** A speaker whose route lies on the other side of the vehicle, where the route does not say where it ends. */
function acrossSides(led: readonly Led[], job: Job): readonly Verdict<'route-ends-elsewhere'>[] {
  const across = led.filter(
    ({ device, run }) =>
      device.spec?.kind === 'speaker' &&
      run.route.ends === undefined &&
      isOpposite(device.side, run.route.side),
  );
  const told = new Set<string>();
  return across.flatMap((one): Verdict<'route-ends-elsewhere'>[] => {
    const { device, run } = one;
    if (told.has(device.id)) return [];
    const pair = leftAndRightSpeakers(job).find(({ left, right }) => [left.id, right.id].includes(device.id));
    const fellow = across.find(
      (other) =>
        pair && other.device.id !== device.id && [pair.left.id, pair.right.id].includes(other.device.id),
    );
    for (const { device: each } of fellow ? [one, fellow] : [one]) told.add(each.id);
    const wayOut = `write ends: of the route ${run.routeId} in the vehicle's file, or use the one of its side`;
    if (!fellow)
      return [
        {
          level: 'note',
          of: [device.id, run.id],
          message: `${device.id} is on the ${device.side}, and its wires go by ${run.routeId} on the ${run.route.side}, which does not say where it ends`,
          remedy: wayOut,
          path: run.path,
        },
      ];
    return [
      {
        level: 'caution',
        of: [device.id, fellow.device.id, run.id, fellow.run.id],
        message: `the wires of ${device.id} on the ${device.side} go by ${run.routeId} on the ${run.route.side}, and those of ${fellow.device.id} on the ${fellow.device.side} by ${fellow.run.routeId} on the ${fellow.run.route.side}: the two are swapped`,
        remedy: `exchange their links between the runs ${run.id} and ${fellow.run.id}`,
        path: run.path,
      },
    ];
  });
}

const endsElsewhere: Rule = {
  id: 'route-ends-elsewhere',
  judge({ job }: Case) {
    const led = ledDevices(job);
    const stated = led.flatMap((one) => {
      const { ends } = one.run.route;
      return ends && !ends.includes(placeOf(one.device)) ? [elsewhere(one, ends)] : [];
    });
    return [...stated, ...acrossSides(led, job)];
  },
};

export const routeEndRules: readonly Rule[] = [endsElsewhere];

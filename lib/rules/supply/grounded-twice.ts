import { bodyId } from '../../model/content/resolved-job.ts';
import { deviceIdOf, endsOf, hasRole, jobWires, wireSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

/** A device of the job that is bolted to the body at more than one place: current goes round through the body. */
const groundedTwice: Rule = {
  id: 'device-grounded-twice',
  judge(about) {
    const { job } = about;
    return job.devices.flatMap(({ id, origin }): Verdict<'device-grounded-twice'>[] => {
      if (origin !== 'job') return [];
      const grounds = jobWires(about).flatMap((wire) => {
        const ends = endsOf(wire);
        const own = ends.find(
          (end) => deviceIdOf(end) === id && hasRole(job, end, 'supply-negative', 'ground-bar'),
        );
        const point = ends.find((end) => deviceIdOf(end) === bodyId);
        return own !== undefined && point !== undefined ? [{ wire, point }] : [];
      });
      const points = [...new Set(grounds.map(({ point }) => point))];
      const last = grounds.at(-1);
      if (points.length < 2 || !last) return [];
      return [
        {
          level: 'caution',
          of: [id, ...grounds.map(({ wire }) => wire.id)],
          message: `${id} is grounded at ${listed(points)}: what the body drops between them flows through ${id} and is heard`,
          value: points.length,
          limit: 1,
          remedy: `take every ground of ${id} to one point`,
          ...wireSpot(about, last.wire.id),
        },
      ];
    });
  },
};

export const groundedTwiceRules: readonly Rule[] = [groundedTwice];

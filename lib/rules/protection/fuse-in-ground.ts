import { liveSide, reached } from '../live-side.ts';
import { deviceOf, endsOf, fuseSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

const fuseInGround: Rule = {
  id: 'fuse-in-ground',
  judge(about) {
    const side = liveSide(about);
    const live = reached(side.edges, side.sources, () => true);
    return about.plan.power.fuses.flatMap((fuse): Verdict<'fuse-in-ground'>[] => {
      const ends = [fuse.from, fuse.to];
      const grounds = about.plan.wires.filter(
        (wire) => wire.role === 'ground' && endsOf(wire).some((end) => ends.includes(end)),
      );
      // A live one is a short, which has a rule of its own.
      if (grounds.length === 0 || ends.some((end) => live.has(end))) return [];
      if (deviceOf(about.job, fuse.item)?.origin !== 'job') return [];
      return [
        {
          level: 'stop',
          of: [fuse.id, ...grounds.map(({ id }) => id)],
          message: `the fuse ${fuse.id} stands in the ground ${listed(grounds.map(({ id }) => id))}: once it opens, the current goes back through signal shields`,
          remedy: 'lead the ground past it, and fuse the feed instead',
          ...fuseSpot(about.job, fuse),
        },
      ];
    });
  },
};

export const fuseInGroundRules: readonly Rule[] = [fuseInGround];

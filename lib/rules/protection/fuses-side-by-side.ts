import { terminalId } from '../../model/content/resolved-job.ts';
import { fuseCeilingA } from '../../model/kinds/fields/supply.ts';
import type { PlanFuse } from '../../model/plan/index.ts';
import { supplyOf } from '../../plan/power/device-loads.ts';
import { type LiveSide, liveSide, noFuse, reached } from '../live-side.ts';
import { deviceSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { amps, ampsDrawn, listed } from '../words.ts';

/** The fuses nearest to a terminal through which a source's current comes; none where a source reaches it bare. */
export function fusesAt({ plan }: Case, side: LiveSide, terminal: string): readonly PlanFuse[] {
  const near = reached(side.edges, [terminal], noFuse);
  if (side.sources.some((source) => near.has(source))) return [];
  const beyond = reached(side.edges, side.sources, ({ ends }) => !ends.some((end) => near.has(end)));
  const entering = side.edges.filter(
    ({ kind, ends: [a, b] }) =>
      kind === 'fuse' && ((near.has(a) && beyond.has(b)) || (near.has(b) && beyond.has(a))),
  );
  return entering.flatMap(({ id }) => plan.power.fuses.filter((fuse) => fuse.id === id));
}

const fusesOverCeiling: Rule = {
  id: 'fuses-over-ceiling',
  judge(about) {
    const side = liveSide(about);
    return about.job.devices.flatMap(({ id, spec, facts, origin }): Verdict<'fuses-over-ceiling'>[] => {
      const supply = supplyOf(spec);
      const ceilingA = supply ? fuseCeilingA(supply) : null;
      if (origin !== 'job' || ceilingA === null) return [];
      return Object.entries(facts.terminals).flatMap(([name, { role }]): Verdict<'fuses-over-ceiling'>[] => {
        if (role !== 'supply-positive') return [];
        const fuses = fusesAt(about, side, terminalId({ device: id, terminal: name }));
        const sumA = fuses.reduce((sum, { ratingA }) => sum + (ratingA ?? 0), 0);
        if (fuses.length < 2 || sumA <= ceilingA) return [];
        return [
          {
            level: 'stop',
            of: [id, ...fuses.map((fuse) => fuse.id)],
            message: `the fuses ${listed(fuses.map((fuse) => fuse.id))} stand side by side before ${id} and let ${ampsDrawn(sumA)} through together, above the ${amps(ceilingA)} that its maker allows`,
            value: sumA,
            limit: ceilingA,
            unit: 'A',
            remedy: `fit fuses that add to at most ${amps(ceilingA)}, or feed ${id} by one lead behind one fuse`,
            ...deviceSpot(about.job, id),
          },
        ];
      });
    });
  },
};

export const fusesSideBySideRules: readonly Rule[] = [fusesOverCeiling];

import type { PlanWire } from '../model/plan/index.ts';
import type { Run } from '../model/resolved-job.ts';
import { bundleDiameterM, outsideDiameterM } from '../power/bundle.ts';
import { isPowerFault } from '../power/traced.ts';
import { jobWires, partOf } from './look-up.ts';
import type { Case, Rule, Verdict } from './rule.ts';
import { commonPractice } from './source.ts';
import { counted, lengthIn } from './words.ts';

/** The wires that go by a run. */
function wiresIn(about: Case, run: Run): readonly PlanWire[] {
  return jobWires(about).filter((wire) => wire.run === run.id || run.links.includes(wire.link));
}

/** Diameter of one wire (m): of its part, else after its area. */
function wireDiameterM({ job }: Case, { part, size }: PlanWire): number | null {
  const spec = partOf(job, part);
  const own = spec?.kind === 'wire' ? spec['outside-diameter'] : undefined;
  if (own !== undefined) return own;
  const computed = outsideDiameterM(size.areaMm2);
  return isPowerFault(computed) ? null : computed.value;
}

/** Diameter (m) of the bundle of a run, a cable counted once; null where it has no wires. */
function bundleM(about: Case, run: Run): number | null {
  const wires = wiresIn(about, run);
  const cables = [...new Set(wires.flatMap(({ cable }) => cable ?? []))].flatMap((id) => {
    const part = partOf(about.job, about.plan.cables.find((cable) => cable.id === id)?.part ?? null);
    return part?.kind === 'cable' ? (part['outside-diameter'] ?? []) : [];
  });
  const loose = wires
    .filter(({ cable }) => cable === undefined)
    .flatMap((wire) => wireDiameterM(about, wire) ?? []);
  const bundle = bundleDiameterM([...loose, ...cables]);
  return isPowerFault(bundle) ? null : bundle.value;
}

const throughHole: Rule = {
  id: 'bundle-over-hole',
  asks: 'The bundle of a run goes through every hole on its way.',
  levels: ['caution'],
  ...commonPractice,
  judge(about) {
    const length = lengthIn(about.job);
    return about.job.runs.flatMap((run) => {
      const value = bundleM(about, run);
      return run.route.passes.flatMap((pass): Verdict[] => {
        const limit = pass['through-hole'];
        if (value === null || limit === undefined || value <= limit + 1e-9) return [];
        return [
          {
            level: 'caution',
            of: [run.id, pass.zone],
            message: `the bundle of ${run.id} is about ${length(value)} thick, and the hole into ${pass.zone} is ${length(limit)}`,
            value,
            limit,
            unit: 'm',
            remedy:
              'split the run over two holes, use another route, or enlarge the hole after a look at what lies behind it',
            ...commonPractice,
            path: run.path,
          },
        ];
      });
    });
  },
};

const coveringSmall: Rule = {
  id: 'bundle-over-covering',
  asks: 'The covering of a run goes over its bundle.',
  levels: ['caution'],
  ...commonPractice,
  judge(about) {
    const length = lengthIn(about.job);
    return about.job.runs.flatMap((run): Verdict[] => {
      const covering = partOf(about.job, run.covering);
      const value = bundleM(about, run);
      if (
        covering?.kind !== 'covering' ||
        covering.form === 'tape' ||
        value === null ||
        run.covering === null
      )
        return [];
      if (value <= covering.bore + 1e-9) return [];
      return [
        {
          level: 'caution',
          of: [run.id, run.covering],
          message: `the bundle of ${run.id} is about ${length(value)} thick, and ${run.covering} has a bore of ${length(covering.bore)}`,
          value,
          limit: covering.bore,
          unit: 'm',
          remedy: 'use a larger covering, or two',
          ...commonPractice,
          path: run.path,
        },
      ];
    });
  },
};

const grommets: Rule = {
  id: 'edge-without-grommet',
  asks: 'A grommet is on the pick list for each sharp edge that a run passes.',
  levels: ['caution'],
  ...commonPractice,
  judge(about) {
    const edged = about.job.runs
      .map((run) => ({ run, edges: run.route.passes.filter(({ edge }) => edge).length }))
      .filter(({ run, edges }) => edges > 0 && wiresIn(about, run).length > 0);
    const [first] = edged;
    const needed = edged.reduce((sum, { edges }) => sum + edges, 0);
    const picked = about.plan.pick
      .filter(({ kind }) => kind === 'grommet')
      .reduce((sum, { quantity }) => sum + quantity, 0);
    if (!first || picked >= needed) return [];
    return [
      {
        level: 'caution',
        of: edged.map(({ run }) => run.id),
        message: `the runs pass ${counted(needed, 'sharp edge')}, and the pick list has ${counted(picked, 'grommet')}`,
        value: picked,
        limit: needed,
        unit: 'piece',
        remedy: 'fit a grommet at each edge, or edge trim and loom where no hole is round',
        ...commonPractice,
        path: first.run.path,
      },
    ];
  },
};

export const runRules: readonly Rule[] = [grommets, throughHole, coveringSmall];

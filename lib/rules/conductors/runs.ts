import { routeLengthM } from '../../model/content/vehicle-route.ts';
import { catalogueSpot, partOf, routeSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { lengthIn } from '../words.ts';
import { plannedRuns } from './planned-runs.ts';

const coveringSmall: Rule = {
  id: 'bundle-over-covering',
  judge(about) {
    return plannedRuns(about).flatMap(
      ({ run, planned: { bundleM: value } }): Verdict<'bundle-over-covering'>[] => {
        const covering = partOf(about.job, run.covering);
        if (covering?.kind !== 'covering' || covering.form === 'tape' || run.covering === null) return [];
        if (value <= covering.bore + 1e-9) return [];
        const length = lengthIn(about.job, catalogueSpot(run.covering));
        return [
          {
            level: 'caution',
            of: [run.id, run.covering],
            message: `the bundle of ${run.id} is about ${length(value)} thick, and ${run.covering} has a bore of ${length(covering.bore)}`,
            value,
            limit: covering.bore,
            unit: 'm',
            remedy: 'use a larger covering, or two',
            path: run.path,
          },
        ];
      },
    );
  },
};

const lengthUnderRun: Rule = {
  id: 'length-under-run',
  judge(about) {
    return about.job.links.flatMap(({ id, path, given, cable, run: name }): Verdict<'length-under-run'>[] => {
      const run = about.job.runs.find((one) => one.id === name);
      const lead = partOf(about.job, cable?.part ?? null);
      const madeM = lead?.kind === 'cable' ? lead['made-length'] : undefined;
      const value = given?.length ?? madeM;
      // Of a pair one conductor speaks for both.
      if (!run || value === undefined || id.endsWith('.-')) return [];
      const limit = given?.branch ? given.branch.after + given.branch.leg : routeLengthM(run.route);
      if (value >= limit - 1e-9) return [];
      const made = catalogueSpot(cable?.part ?? '', 'made-length');
      const length = lengthIn(about.job, { path: `${path}/length` }, made, { path }, routeSpot(run));
      return [
        {
          level: 'stop',
          of: [id, run.id],
          message:
            given?.length === undefined
              ? `the lead ${cable?.id} of ${id} is made ${length(value)} long, and its way through the run ${run.id} alone is ${length(limit)}`
              : `${id} is written as ${length(value)} long, and its way through the run ${run.id} alone is ${length(limit)}`,
          value,
          limit,
          unit: 'm',
          remedy:
            given?.length === undefined
              ? 'name a longer lead'
              : 'leave length: out to have it measured, or measure the wire anew, tails and loops with it',
          path: given?.length === undefined ? path : `${path}/length`,
        },
      ];
    });
  },
};

export const runRules: readonly Rule[] = [lengthUnderRun, coveringSmall];

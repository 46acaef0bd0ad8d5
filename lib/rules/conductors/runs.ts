import type { Run } from '../../model/content/resolved-job.ts';
import { routeLengthM } from '../../model/content/vehicle-route.ts';
import type { PlanRun } from '../../model/plan/index.ts';
import { piecesOf } from '../../shelf/shelf-lengths.ts';
import { catalogueSpot, partOf, routeSpot } from '../look-up.ts';
import type { Case, Rule, Spot, Verdict } from '../rule.ts';
import { counted, lengthAskedIn, lengthIn, listed } from '../words.ts';

/** Runs of the job with what the plan made of them; a run without wires is none. */
function plannedRuns({ job, plan }: Case): readonly { readonly run: Run; readonly planned: PlanRun }[] {
  return job.runs.flatMap((run) => {
    const planned = plan.runs.find(({ id }) => id === run.id);
    return planned && planned.wires.length > 0 ? [{ run, planned }] : [];
  });
}

const throughHole: Rule = {
  id: 'bundle-over-hole',
  judge(about) {
    return plannedRuns(about).flatMap(({ run, planned: { bundleM: value } }) =>
      run.route.passes.flatMap((pass): Verdict<'bundle-over-hole'>[] => {
        const limit = pass['through-hole'];
        if (limit === undefined || value <= limit + 1e-9) return [];
        const length = lengthIn(about.job, routeSpot(run));
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
            path: run.path,
          },
        ];
      }),
    );
  },
};

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

const grommets: Rule = {
  id: 'edge-without-grommet',
  judge(about) {
    return plannedRuns(about).flatMap(({ run, planned }): Verdict<'edge-without-grommet'>[] => {
      const length = lengthIn(about.job, routeSpot(run));
      const edges = run.route.passes.filter(({ edge }) => edge);
      const fitted = planned.grommets.filter(({ part }) => part !== null).length;
      if (fitted >= edges.length) return [];
      const bare = planned.grommets.filter(({ part }) => part === null);
      const where = listed((bare.length > 0 ? bare : edges).map(({ zone }) => `the ${zone}`));
      const power = planned.wires.filter((id) => isPower(about, id));
      const isGrave = isChafed(about, planned);
      return [
        {
          level: isGrave ? 'stop' : 'caution',
          of: [run.id, ...(isGrave ? power : [])],
          message: `${run.id} passes ${counted(edges.length, 'sharp edge')} with ${counted(fitted, 'grommet')}: none of the catalogue fits its bundle of ${length(planned.bundleM)} at ${where}${isGrave ? `, and ${listed(power)} would chafe on sheet metal` : ''}`,
          value: planned.bundleM,
          unit: 'm',
          remedy: grommetRemedy(about, run, planned),
          ...edgeSpot(run, planned),
        },
      ];
    });
  },
};

/** The holes of a run, metres, that no grommet of the catalogue fits. */
const bareHoles = ({ grommets: fitted }: PlanRun): readonly number[] =>
  fitted.flatMap(({ part, holeM }) => (part === null && holeM !== null ? [holeM] : []));

/** Where the first hole that no grommet fits was measured; the run where there is no hole. */
function edgeSpot(run: Run, planned: PlanRun): Spot {
  const [holeM] = bareHoles(planned);
  const at = run.route.passes.findIndex(
    (pass) => pass.edge && holeM !== undefined && Math.abs((pass['through-hole'] ?? 0) - holeM) < 1e-9,
  );
  const { path, file } = routeSpot(run);
  return at < 0 ? { path: run.path } : { path: `${path}/passes/${at}/through-hole`, file };
}

/** The smallest grommet for a wider hole that a bundle goes through; one on the shelf before one that is not. */
function widerGrommet({ job }: Case, holeM: number, bundleM: number) {
  const shelved = (id: string): number => piecesOf(job.shop.stock[id]);
  const fitting = Object.entries(job.parts).flatMap(([id, part]) =>
    part.kind === 'grommet' && part.hole > holeM && part.bore >= bundleM - 1e-9
      ? [{ id, holeM: part.hole, stocked: shelved(id) }]
      : [],
  );
  const [best] = fitting.toSorted(
    (a, b) => Number(b.stocked > 0) - Number(a.stocked > 0) || a.holeM - b.holeM,
  );
  return best;
}

/** What to do about each edge without a grommet: open its hole for one of the catalogue, else add one. */
function grommetRemedy(about: Case, run: Run, planned: PlanRun): string {
  const holes = bareHoles(planned);
  if (holes.length === 0)
    return 'add a grommet that fits to the catalogue, or fit edge trim and loom where no hole is round';
  const length = lengthIn(about.job, routeSpot(run));
  const each = [...new Set(holes)].map((holeM) => {
    const wider = widerGrommet(about, holeM, planned.bundleM);
    const made = lengthIn(about.job, ...(wider ? [catalogueSpot(wider.id)] : []));
    return wider
      ? `open the hole of ${length(holeM)} to ${made(wider.holeM)} for ${wider.id} (${wider.stocked} in stock), after a look at what lies behind it, and write that as its through-hole:`
      : `add a grommet for a hole of ${length(holeM)} with a bore of ${lengthAskedIn(about.job, routeSpot(run))(planned.bundleM)} or more to the catalogue, where one is made`;
  });
  return `${each.join('; ')}; or split the run`;
}

/** True where power of a run goes through a hole in sheet metal that no grommet of the catalogue fits. */
export function isChafed(about: Case, { grommets: fitted, wires }: PlanRun): boolean {
  return (
    fitted.some(({ part, holeM }) => part === null && holeM !== null) &&
    wires.some((id) => isPower(about, id))
  );
}

/** True for a conductor that carries battery voltage to a device. */
function isPower({ plan }: Case, id: string): boolean {
  return plan.wires.some((wire) => wire.id === id && wire.role === 'power');
}

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

export const runRules: readonly Rule[] = [lengthUnderRun, grommets, throughHole, coveringSmall];

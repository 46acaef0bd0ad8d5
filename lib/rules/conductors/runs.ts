import type { Device, Job, Link, Run } from '../../model/content/resolved-job.ts';
import { stretchesOf } from '../../model/content/run-ways.ts';
import { hingesOf } from '../../model/content/vehicle-route.ts';
import { tapeText } from '../../model/quantity/tape-text.ts';
import { alongRunM, liesOnWay } from '../../plan/wiring/joints.ts';
import { boardToRim } from '../../plan/wiring/lengths/board-to-rim.ts';
import { hasGrommet } from '../../plan/wiring/runs/way-holes.ts';
import { catalogueSpot, deviceOf, partOf, routeSpot, stretchSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
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

/** What a wire has to cover at least, metres: its run or its two stretches of it, its way on the board, and from there to the rim. */
function leastLengthM(
  { job, plan }: Pick<Case, 'job' | 'plan'>,
  link: Link,
  run: Run,
): { readonly runM: number; readonly boardM: number } {
  const { id, given } = link;
  const runM = given?.branch ? given.branch.after + given.branch.leg : alongRunM(job, link, run);
  const lying = plan.boards.flatMap(({ id: name, routes, exits, datumInSpace }): readonly number[] => {
    const board = job.boards.find((one) => one.id === name);
    const exit = exits.find(({ wire }) => wire === id);
    const placed = board && { ...board, place: datumInSpace };
    const rimM = placed && exit ? (boardToRim(placed, run.route, exit)?.leastM ?? 0) : 0;
    return routes.filter(({ wire }) => wire === id).map(({ lengthM }) => lengthM + rimM);
  });
  return { runM, boardM: lying.reduce((sum, lengthM) => sum + lengthM, 0) };
}

const lengthUnderRun: Rule = {
  id: 'length-under-run',
  judge(about) {
    return about.job.links.flatMap((link): Verdict<'length-under-run'>[] => {
      const { id, path, given, cable, run: name } = link;
      const run = about.job.runs.find((one) => one.id === name);
      const lead = partOf(about.job, cable?.part ?? null);
      const madeM = lead?.kind === 'cable' ? lead['made-length'] : undefined;
      const value = given?.length ?? madeM;
      // Of a pair one conductor speaks for both.
      if (!run || value === undefined || id.endsWith('.-')) return [];
      const { runM, boardM } = leastLengthM(about, link, run);
      const limit = runM + boardM;
      if (value >= limit - 1e-9) return [];
      const made = catalogueSpot(cable?.part ?? '', 'made-length');
      const length = lengthIn(about.job, { path: `${path}/length` }, made, { path }, routeSpot(run));
      const way =
        boardM > 0
          ? `its way through the run ${run.id} and on the board is ${length(limit)}`
          : `its way through the run ${run.id} alone is ${length(limit)}`;
      const isWritten = given?.length !== undefined;
      return [
        {
          level: 'stop',
          of: [id, run.id],
          message: isWritten
            ? `${id} is written as ${length(value)} long, and ${way}`
            : `the lead ${cable?.id} of ${id} is made ${length(value)} long, and ${way}`,
          value,
          limit,
          unit: 'm',
          ...(isWritten
            ? longer(about.job, `${path}/length`, limit)
            : { remedy: `name a lead of ${leastText(about.job, limit)} or more` }),
          path: isWritten ? `${path}/length` : path,
        },
      ];
    });
  },
};

/** A length as a tape of the shop shows it, not below what is asked for. */
function leastText({ shop: { units, fraction } }: Pick<Job, 'shop'>, lengthM: number): string {
  const stepM = units === 'inch' ? 0.0254 / fraction : 0.001;
  return tapeText(Math.ceil(lengthM / stepM - 1e-9) * stepM, units);
}

/** A written length that is too short is left out, or written as long as its way at least. */
function longer(
  job: Pick<Job, 'shop'>,
  path: string,
  leastM: number,
): Pick<Verdict<'length-under-run'>, 'remedy' | 'advice'> {
  const value = leastText(job, leastM);
  return {
    remedy: `leave length: out to have it measured; or measure the wire anew, its loops with it, and write length: ${value} or more`,
    advice: [[{ path, value }]],
  };
}

/** True for a stretch that is told to begin with something that wires go through. */
const isLedThrough = (pass: Run['route']['passes'][number] | undefined): boolean =>
  pass !== undefined && (hasGrommet(pass) || pass['through-hole'] !== undefined);

/** Where a way comes to the hinge of a door and nobody told what it goes through there; null where somebody did. */
function bareHinge(job: Job, run: Run): { readonly at: number; readonly of: string | null } | null {
  const { passes } = run.route;
  // The sleeve of a hinge is a stretch of its own, of the door or before it.
  const at = hingesOf(run.route).find(
    (hinge) => !isLedThrough(passes[hinge]) && !isLedThrough(passes[hinge - 1]),
  );
  if (at !== undefined) return { at, of: null };
  // Of a way that ends before the door, its last stretch on that side may tell it.
  const isTold =
    passes.some(({ zone }) => zone === 'door') || isLedThrough(passes[0]) || isLedThrough(passes.at(-1));
  const [inDoor] = isTold ? [] : endDevices(job, run).filter(({ zone }) => zone === 'door');
  return inDoor ? { at: passes.length - 1, of: inDoor.seat ?? inDoor.id } : null;
}

/** The devices at the ends of the links of a run. */
function endDevices(job: Job, run: Run): readonly Device[] {
  return job.links
    .filter((link) => link.run === run.id)
    .flatMap((link) => [link.from, link.to].filter((end) => !liesOnWay(job, link, end)))
    .flatMap(({ device }) => deviceOf(job, device) ?? []);
}

/** A way into a door of which nobody told what it goes through there: a bare hole saws through a wire as the door moves. */
const doorWithoutSleeve: Rule = {
  id: 'door-without-sleeve',
  judge(about) {
    return plannedRuns(about).flatMap(({ run, planned }): Verdict<'door-without-sleeve'>[] => {
      const bare = planned.wires.length === 0 ? null : bareHinge(about.job, run);
      if (!bare) return [];
      const stretch = stretchesOf(run.ways)[bare.at];
      const route = stretch?.way.id ?? run.routeId;
      const where =
        bare.of === null
          ? `goes through the hinge of a door where ${route} comes to its stretch ${(stretch?.at ?? bare.at) + 1}`
          : `ends in the door ${bare.of}, of which ${route} has no stretch`;
      return [
        {
          level: 'caution',
          of: [run.id, route],
          message: `${run.id} ${where}, and neither sleeve nor grommet is told there`,
          remedy:
            "write own-grommet: true at the stretch that the vehicle's own sleeve begins, with its bore as through-hole:; where there is none, edge: true, for a grommet in both sheets",
          ...stretchSpot(run, bare.at),
        },
      ];
    });
  },
};

export const runRules: readonly Rule[] = [lengthUnderRun, coveringSmall, doorWithoutSleeve];

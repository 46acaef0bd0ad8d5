import type { Run } from '../../model/content/resolved-job.ts';
import type { PlanRun } from '../../model/plan/index.ts';
import { tapeText } from '../../model/quantity/tape-text.ts';
import type { Advice } from '../../model/remark.ts';
import {
  countsHole,
  hasGrommet,
  isToDrill,
  isUnmeasured,
  outsideInHoleM,
  sharingHole,
  type ThickRun,
} from '../../plan/wiring/runs/way-holes.ts';
import { piecesOf, stockWord } from '../../shelf/shelf-lengths.ts';
import { routeSpot, stretchSpot } from '../look-up.ts';
import type { Case, Rule, Spot, Verdict } from '../rule.ts';
import { counted, lengthAskedIn, lengthIn, listed } from '../words.ts';
import { bundleText, thickenedBy, thinnerText } from './bundle-words.ts';
import { type PlannedRun, plannedRuns } from './planned-runs.ts';

/** Lengths that differ by less are one. */
const sameM = 1e-9;

/** A stretch of a run that begins with a hole, a sharp edge or both. */
interface Crossing {
  readonly pass: Run['route']['passes'][number];
  readonly at: number;
  /** All that goes through there, of other runs too, coverings with it, metres. */
  readonly outsideM: number;
  /** Other runs that go through the same hole. */
  readonly beside: readonly string[];
}

function crossingsOf(about: Case, one: PlannedRun): readonly Crossing[] {
  const all = plannedRuns(about).map(thickOf);
  return one.run.route.passes.map((pass, at) => ({
    pass,
    at,
    outsideM: outsideInHoleM(about.job, thickOf(one), at, all),
    beside: sharingHole(thickOf(one), at, all).flatMap(({ run: { id } }) => (id === one.run.id ? [] : [id])),
  }));
}

function thickOf({ run, planned }: PlannedRun): ThickRun {
  const passes = run.route.passes.map((_, at) => ({
    covering: planned.passes?.[at]?.covering ?? run.covering,
  }));
  return { run, bundleM: planned.bundleM, passes };
}

/** True for the crossing at which what goes through a hole is told: of the first run of the job that does. */
function isTold(about: Case, { run }: PlannedRun, crossing: Crossing): boolean {
  return countsHole(about.job.runs, run.id, crossing);
}

/** A wider hole for a crossing: what is told to do, and the lines for it. */
interface WiderHole {
  readonly text: string;
  readonly advice: Advice;
}

/** The smallest grommet for a wider hole that a loom goes through; one on the shelf before one that is not. */
function widerGrommet({ job }: Case, holeM: number, outsideM: number) {
  const shelved = (id: string): number => piecesOf(job.shop.stock[id]);
  const fitting = Object.entries(job.parts).flatMap(([id, part]) =>
    part.kind === 'grommet' && part.hole > holeM && part.bore >= outsideM - sameM
      ? [{ id, holeM: part.hole, stocked: shelved(id) }]
      : [],
  );
  const [best] = fitting.toSorted(
    (a, b) => Number(b.stocked > 0) - Number(a.stocked > 0) || a.holeM - b.holeM,
  );
  return best;
}

/** The hole of the vehicle as it is once it was opened: no grommet of its own is left in it. */
function openedTo(about: Case, run: Run, { at, pass }: Crossing, holeM: number): Advice {
  const { path: below } = stretchSpot(run, at);
  return [
    { path: `${below}/through-hole`, file: 'vehicle', value: tapeText(holeM, about.job.shop.units) },
    ...(pass['own-grommet']
      ? [{ path: `${below}/own-grommet`, file: 'vehicle', value: false } as const]
      : []),
  ];
}

/** What is written for an opened hole: `through-hole: 28 mm`. */
function linesText(advice: Advice): string {
  return listed(
    advice.map(({ path, value }) => `${path.slice(path.lastIndexOf('/') + 1)}: ${String(value)}`),
  );
}

/** The hole of a sharp edge, opened for a grommet of the catalogue; null where none takes the loom. */
function forGrommet(about: Case, run: Run, crossing: Crossing, holeM: number): WiderHole | null {
  const wider = widerGrommet(about, holeM, crossing.outsideM);
  if (!wider) return null;
  const advice = openedTo(about, run, crossing, wider.holeM);
  const [hole] = advice;
  const length = lengthIn(about.job, routeSpot(run));
  const own = crossing.pass['own-grommet'] ? "take the vehicle's own grommet out, " : '';
  return {
    text: `${own}${isToDrill(crossing.pass) ? `drill ${String(hole?.value)} in place of ${length(holeM)}` : `open the hole of ${length(holeM)} to ${String(hole?.value)}`} for ${wider.id} (${wider.stocked} ${stockWord(about.job.shop)}), after a look at what lies behind it, and write ${linesText(advice)} there`,
    advice,
  };
}

/** A hole without an edge, opened as far as the loom asks for: to a whole step of the tape. */
function forLoom(about: Case, run: Run, crossing: Crossing, holeM: number): WiderHole {
  const { units, fraction } = about.job.shop;
  const stepM = units === 'inch' ? 0.0254 / fraction : 0.001;
  const widerM = Math.ceil(crossing.outsideM / stepM - sameM) * stepM;
  const advice = openedTo(about, run, crossing, widerM);
  const [hole] = advice;
  const length = lengthIn(about.job, routeSpot(run));
  return {
    text: `open the hole of ${length(holeM)} to ${String(hole?.value)} or more after a look at what lies behind it, and write ${linesText(advice)} there`,
    advice,
  };
}

const throughHole: Rule = {
  id: 'bundle-over-hole',
  judge(about) {
    return plannedRuns(about).flatMap((one) =>
      crossingsOf(about, one).flatMap((crossing): Verdict<'bundle-over-hole'>[] => {
        const { run } = one;
        const { pass, outsideM: value, beside } = crossing;
        const limit = pass['through-hole'];
        if (!isTold(about, one, crossing)) return [];
        if (limit === undefined || value <= limit + sameM) return [];
        const length = lengthIn(about.job, routeSpot(run));
        const covered = value > one.planned.bundleM + sameM ? ' with its covering' : '';
        const own = pass['own-grommet'] ? "the vehicle's own grommet" : 'the hole';
        const bundles =
          beside.length === 0 ? `bundle of ${run.id} is` : `bundles of ${listed([run.id, ...beside])} are`;
        const wider =
          forGrommet(about, run, crossing, limit) ??
          (hasGrommet(pass) ? null : forLoom(about, run, crossing, limit));
        return [
          {
            level: 'caution',
            of: [run.id, pass.zone, ...beside],
            message: `the ${bundles} about ${length(value)} thick${beside.length === 0 ? '' : ' together'}${covered}, and ${own} into ${pass.zone} is ${length(limit)}`,
            value,
            limit,
            unit: 'm',
            remedy: `${wider ? `${wider.text}; or ` : ''}${beside.length === 0 ? 'split the run over two holes' : 'lead one of the runs through another hole'}, or use another route`,
            ...(wider && { advice: [wider.advice] }),
            path: run.path,
          },
        ];
      }),
    );
  },
};

/** The crossings with a sharp edge that nothing of the vehicle or the catalogue guards. */
function bareCrossings(about: Case, one: PlannedRun): readonly Crossing[] {
  const edges = crossingsOf(about, one).filter(({ pass }) => hasGrommet(pass));
  const { grommets } = one.planned;
  // A plan that was frozen before its edges were measured tells of none of them.
  const bare =
    grommets.length === 0
      ? edges
      : edges.filter((_, at) => grommets[at]?.part === null && grommets[at]?.own !== true);
  return bare.filter((crossing) => isTold(about, one, crossing));
}

const edgeWithoutGrommet: Rule = {
  id: 'edge-without-grommet',
  judge: (about) =>
    plannedRuns(about).flatMap((one): Verdict<'edge-without-grommet'>[] => {
      const bare = bareCrossings(about, one);
      const { run, planned } = one;
      if (bare.length === 0) return [];
      const edges = run.route.passes.filter(hasGrommet).length;
      const length = lengthIn(about.job, routeSpot(run));
      const power = planned.wires.filter((id) => isPower(about, id));
      const isGrave = isChafed(about, planned);
      const value = Math.max(...bare.map(({ outsideM }) => outsideM));
      const where = listed(bare.map(({ pass: { zone } }) => `the ${zone}`));
      const covered = value > planned.bundleM + sameM ? ', with its covering,' : '';
      const thickened = thickenedBy(about, planned.wires);
      const first = thickened.map(({ message }) => `${message}. `).join('');
      return [
        {
          level: isGrave ? 'stop' : 'caution',
          of: [run.id, ...(isGrave ? power : [])],
          message: bare.every(({ pass }) => isUnmeasured(pass))
            ? `${run.id} goes through the vehicle's own grommet at ${where}, whose bore is not measured: whether its bundle of ${length(value)}${covered} (${bundleText(about, planned.wires)}) goes through can't be told`
            : `${first}${run.id} passes ${counted(edges, 'sharp edge')} with ${counted(edges - bare.length, 'grommet')}: none of ${bare.some(({ pass }) => pass['own-grommet']) ? 'the vehicle and ' : ''}the catalogue fits its bundle of ${length(value)}${covered} (${bundleText(about, planned.wires)}) at ${where}${isGrave ? `, and ${listed(power)} would chafe on sheet metal` : ''}`,
          value,
          unit: 'm',
          ...grommetRemedy(about, run, bare, {
            first: thickened.map(({ remedy }) => remedy),
            last: thinnerText(about, planned.wires),
          }),
          ...edgeSpot(run, bare),
        },
      ];
    }),
};

/** Where the first hole that no grommet fits was measured; the run where there is no hole. */
function edgeSpot(run: Run, bare: readonly Crossing[]): Spot {
  const first = bare.find(({ pass }) => pass['through-hole'] !== undefined);
  return first ? stretchSpot(run, first.at, 'through-hole') : { path: run.path };
}

/** What else mends a bundle that no grommet fits: before the holes are opened, and after it. */
interface RemediesBeside {
  readonly first: readonly string[];
  readonly last: string | null;
}

/** What to do about each edge without a grommet: open its hole for one of the catalogue, else add one. */
function grommetRemedy(about: Case, run: Run, bare: readonly Crossing[], { first, last }: RemediesBeside) {
  const wider: WiderHole[] = [];
  const texts = bare.map((crossing): string => {
    const holeM = crossing.pass['through-hole'];
    if (holeM === undefined)
      return crossing.pass['own-grommet']
        ? "measure the bore of the vehicle's own grommet and write it as through-hole: there"
        : 'add a grommet that fits to the catalogue, or fit edge trim and loom where no hole is round';
    const opened = forGrommet(about, run, crossing, holeM);
    if (opened) wider.push(opened);
    const asked = lengthAskedIn(about.job, routeSpot(run));
    return (
      opened?.text ??
      `add a grommet for a hole of ${lengthIn(about.job, routeSpot(run))(holeM)} with a bore of ${asked(crossing.outsideM)} or more to the catalogue, where one is made`
    );
  });
  const isHole = bare.some(({ pass }) => pass['through-hole'] !== undefined);
  return {
    remedy: `${first.map((text) => `${text}; or `).join('')}${[...new Set(texts)].join('; ')}${isHole ? '; or split the run' : ''}${last === null ? '' : `; or ${last}`}`,
    ...(wider.length === bare.length && { advice: [wider.flatMap(({ advice }) => advice)] }),
  };
}

/** True where power of a run goes through a hole in sheet metal that no grommet fits. */
export function isChafed(about: Case, { grommets, wires }: PlanRun): boolean {
  return (
    grommets.some(({ part, holeM, own }) => part === null && holeM !== null && own !== true) &&
    wires.some((id) => isPower(about, id))
  );
}

/** True for a conductor that carries battery voltage to a device. */
function isPower({ plan }: Case, id: string): boolean {
  return plan.wires.some((wire) => wire.id === id && wire.role === 'power');
}

export const grommetRules: readonly Rule[] = [edgeWithoutGrommet, throughHole];

import type { BuildPlan, DeviceDrop, OperatingPoint, PlanConductor } from '../../model/plan/index.ts';
import { printed } from '../../model/printed/index.ts';
import { lastingCurrentsA } from '../../plan/power/operating-points.ts';
import { namesOf, type PlanNames } from '../words/plan-names.ts';
import { none, writerFor } from '../words/written.ts';
import { conductorAlternatives } from './alternatives.ts';
import { builderSheet } from './sheet.ts';
import { dense, groupedTable, strong, type Table } from './table.ts';

/** Every conductor of the feed with what it must and may carry, and the voltage that each device is left. */
export interface ConductorTableSheet {
  readonly conductors: Table | null;
  /** What would be lawful where a given conductor does not carry its fuse. */
  readonly alternatives: Table | null;
  readonly drops: Table | null;
  /** Operating points that could not be solved, and drops that are not known, in words. */
  readonly unsolved: readonly string[];
}

const stateWords = {
  solved: 'Solved',
  'no-solution': 'no solution',
  'cut-out': 'a device cuts out',
} as const satisfies Record<OperatingPoint['state'], string>;

function conductorsTable(plan: BuildPlan, names: PlanNames): Table {
  const write = writerFor(plan.shop);
  const own = new Set(plan.wires.filter(({ origin }) => origin === 'vehicle').map(({ id }) => id));
  const isOwn = ({ id }: PlanConductor): boolean => own.has(id);
  const groups = [
    { title: null, things: plan.power.conductors.filter((one) => !isOwn(one)) },
    { title: 'Conductors that the vehicle came with', things: plan.power.conductors.filter(isOwn) },
  ];
  return groupedTable(
    'Conductors of the feed',
    groups,
    [
      { title: 'Wire', cell: (one) => (isOwn(one) ? none : strong(names.wire(one.id))) },
      { title: 'From', cell: (one) => one.from },
      { title: 'To', cell: (one) => one.to },
      {
        title: 'Size',
        leads: true,
        cell: (one) => strong(one.size.label),
      },
      { title: 'Length', kind: 'figure', cell: (one) => write.wire('wire', one.lengthM).text },
      {
        title: 'Must carry',
        kind: 'figure',
        cell: mustCarryText,
      },
      { title: 'May carry', kind: 'figure', cell: (one) => printed('current-allowed', one.ampacityA) },
      {
        title: 'Caution past',
        kind: 'figure',
        cell: (one) => (one.cautionA < one.ampacityA ? printed('current-allowed', one.cautionA) : none),
      },
      {
        title: 'Fuses',
        kind: 'words',
        cell: (one) => (one.fuses.length === 0 ? flowText(plan, one) : one.fuses.join(', ')),
      },
    ],
    (one) => one.id,
  );
}

/** What a conductor must carry; without a fuse before it nothing tells that. */
function mustCarryText({ fed, neededA }: PlanConductor): string | typeof none {
  if (!fed) return 'not fed';
  return neededA > 0 ? printed('current-carried', neededA) : none;
}

/** What flows at most through a conductor that has no fuse. */
function flowText(
  { power }: Pick<BuildPlan, 'power'>,
  { id, fed, neededA }: PlanConductor,
): string | typeof none {
  if (!fed || neededA > 0) return none;
  // The current of a coil is in no state that is solved, but for the noise of solving: it is not known.
  const mostA = Math.max(0, ...lastingCurrentsA(power.points, id));
  return `none: ${mostA < 1e-9 ? notKnown : `${printed('current-carried', mostA)} at most`}`;
}

const notKnown = 'not known';
const volts = (dropV: number | null) => (dropV === null ? notKnown : printed('voltage-lost', dropV));

interface PointDrop extends DeviceDrop {
  readonly pointTitle: string;
}

function dropsTable(plan: BuildPlan, names: PlanNames): Table {
  const titles = new Map(plan.power.points.map((point) => [point.name, point.title]));
  const drops: PointDrop[] = plan.power.drops.map((drop) => ({
    ...drop,
    pointTitle: titles.get(drop.point) ?? drop.point,
  }));
  const groups = [...new Set(drops.map(({ item }) => item))].map((item) => {
    const things = drops.filter((drop) => drop.item === item);
    const sources = [...new Set(things.map(({ source }) => names.item(source)))].join(', ');
    return { title: `${names.item(item)} (${item}), fed from ${sources}`, things };
  });
  return groupedTable(
    'Voltage and drop at each device',
    groups,
    [
      { title: 'Operating point', cell: (one) => one.pointTitle },
      {
        title: 'Voltage',
        kind: 'figure',
        leads: true,
        cell: (one) => strong(printed('voltage', one.voltageV)),
      },
      { title: 'Drop of feed', kind: 'figure', cell: (one) => volts(one.feedDropV) },
      { title: 'Drop of ground', kind: 'figure', cell: (one) => volts(one.groundDropV) },
      {
        title: 'Both',
        kind: 'figure',
        cell: (one) => (one.share === null ? notKnown : printed('share-lost', one.share * 100)),
      },
    ],
    (one) => one.item,
  );
}

function unsolvedText({ title, state, reason }: OperatingPoint): string[] {
  if (state === 'solved') return [];
  return [`${title}: ${stateWords[state]}${reason === undefined ? '' : `: ${reason}`}`];
}

/** Why the drop at a device is not known, once for all operating points. */
function unknownTexts({ power }: Pick<BuildPlan, 'power'>, names: PlanNames): string[] {
  const texts = power.drops.flatMap(({ item, unknown }) =>
    unknown === undefined ? [] : [`${names.item(item)} (${item}): ${unknown}`],
  );
  return [...new Set(texts)];
}

function conductorModel(plan: BuildPlan): ConductorTableSheet | null {
  const names = namesOf(plan);
  const { conductors, drops, points } = plan.power;
  const alternatives = conductorAlternatives(plan, names, writerFor(plan.shop));
  if (conductors.length + drops.length === 0) return null;
  return {
    conductors: conductors.length === 0 ? null : dense(conductorsTable(plan, names)),
    alternatives,
    drops: drops.length === 0 ? null : dropsTable(plan, names),
    unsolved: [...points.flatMap(unsolvedText), ...unknownTexts(plan, names)],
  };
}

export const conductorTable = builderSheet('conductor-table', 'Conductors and voltage drop', conductorModel);

import type { BuildPlan, PlanFuse, PlanMeasurement } from '../../../model/plan/index.ts';
import { printed } from '../../../model/printed/index.ts';
import { fuseForms } from '../../../model/tables/fuse-forms.ts';
import { namesOf, type PlanNames } from '../../words/plan-names.ts';
import { counted, joined, levelOrder, levelWords, spelled } from '../../words/words.ts';
import { writerFor } from '../../words/written.ts';
import { measuringOrder } from '../commissioning.ts';
import { notSafeText } from '../presets.ts';
import { limitsText, predictedText } from '../readings.ts';
import { builderSheet } from '../sheet.ts';
import { groupsBy } from '../table.ts';

/** What is looked for in five seconds, on one screen of a phone and on one card of paper. */
export interface QuickViewSheet {
  /** How the job stands: its findings by level, its readings. */
  readonly state: readonly string[];
  readonly parts: readonly QuickPart[];
}

/** One part of the quick view: a list of figures, each with what it is the figure of. */
interface QuickPart {
  readonly title: string;
  /** The sheet on which all of it stands. */
  readonly sheet: string;
  readonly groups: readonly QuickGroup[];
  /** What stands below the lines. */
  readonly rest: string;
}

/** Lines that have something in common, which is said once; empty where they have not. */
interface QuickGroup {
  readonly title: string;
  readonly lines: readonly QuickLine[];
}

interface QuickLine {
  /** The thing of the plan that it is about, by its id; null for several. */
  readonly subject: string | null;
  readonly figure: string;
  readonly name: string;
  readonly beside: string;
}

/** So many devices are named in one line. */
const mostNamed = 2;

/** Fuses of one form in one place together: where to put the hand is said once. */
function fusesPart(plan: BuildPlan, names: PlanNames): QuickPart {
  const write = writerFor(plan.shop);
  const boards = new Map(plan.boards.map(({ id, title }) => [id, title]));
  const places = new Map(
    plan.items.map(({ id, board, seatTitle, zone }) => [
      id,
      (board === null ? seatTitle : boards.get(board)) ?? spelled(zone),
    ]),
  );
  const line = (fuse: PlanFuse): QuickLine => ({
    subject: fuse.id,
    figure: fuse.ratingA === null ? 'none chosen' : printed('current-allowed', fuse.ratingA),
    name: [names.item(fuse.item), fuse.way].filter((text) => text !== '').join(', '),
    beside: [
      ...(fuse.source === null || fuse.distanceM === null
        ? []
        : [`${write.short('from-source', fuse.distanceM).text} from ${fuse.source}`]),
      ...(fuse.loads.length === 0 ? [] : [`feeds ${fedText(fuse.loads)}`]),
    ].join('; '),
  });
  return {
    title: 'Fuses',
    sheet: 'power-diagram',
    groups: groupsBy(plan.power.fuses, (fuse) => {
      return `${places.get(fuse.item) ?? fuse.item}: ${fuseForms[fuse.form].name}`;
    }).map(({ title, things }) => ({ title: title ?? '', lines: things.map(line) })),
    rest: '',
  };
}

/** Who is fed by a fuse: by name where they are few, by number where it is most of the job. */
function fedText(loads: readonly string[]): string {
  return loads.length > mostNamed ? counted(loads.length, 'device') : joined(loads);
}

/** A part whose lines have no more in common than its title. */
function plainPart(title: string, sheet: string, lines: readonly QuickLine[], rest = ''): QuickPart {
  return { title, sheet, groups: lines.length === 0 ? [] : [{ title: '', lines }], rest };
}

/** Ends of one torque together, device by device. */
function torquesPart(plan: BuildPlan): QuickPart {
  const ends = plan.wires
    .filter(({ origin }) => origin === 'job')
    .flatMap((wire) => wire.ends)
    .flatMap(({ terminal, torqueNm }) => (torqueNm === undefined ? [] : [{ terminal, torqueNm }]))
    .sort((a, b) => b.torqueNm - a.torqueNm);
  const lines = groupsBy(ends, ({ torqueNm }) => printed('torque', torqueNm)).map(({ title, things }) => ({
    subject: null,
    figure: title ?? '',
    name: byDevice(things.map(({ terminal }) => terminal)),
    beside: '',
  }));
  return plainPart('Torques', 'wire-ends', lines);
}

/** Terminals with the name of their device said once: `dist IN, OUT2; amp-sub B+`. */
function byDevice(terminals: readonly string[]): string {
  const parts = [...new Set(terminals)].map((id) => {
    const [device = id, ...terminal] = id.split('.');
    return { device, terminal: terminal.join('.') };
  });
  return groupsBy(parts, ({ device }) => device)
    .map(({ title, things }) => `${title} ${things.map(({ terminal }) => terminal).join(', ')}`)
    .join('; ');
}

/** Controls of one device in one state together, of those that are not safe the ones for which the same state is. */
function presetsPart(plan: BuildPlan): QuickPart {
  const lines = groupsBy(plan.controls, (one) => `${one.item}|${one.preset}|${notSafeText(one)}`).flatMap(
    ({ things }) => {
      const [first] = things;
      if (first === undefined) return [];
      const names = things.map(({ control }) => control).join(', ');
      return [
        {
          subject: things.length === 1 ? `${first.item}.${first.control}` : null,
          figure: first.preset,
          name: `${first.item} ${names}`,
          beside: notSafeText(first),
        },
      ];
    },
  );
  return plainPart('Presets before first power', 'presets', lines);
}

/** What each gain is set to, as the last state of its control says it. */
function gainsPart({ controls }: Pick<BuildPlan, 'controls'>): QuickPart {
  const lines = controls
    .filter(({ final }) => final.during === 'gains')
    .map(({ item, control, final }) => ({
      subject: `${item}.${control}`,
      figure: final.state ?? 'not known',
      name: `${item} ${control}`,
      beside: '',
    }));
  return plainPart('Gains', 'presets', lines);
}

/** So many readings are told as what comes next. */
const nextReadings = 3;

function measurePart({ measurements }: Pick<BuildPlan, 'measurements'>): QuickPart {
  const open = measuringOrder
    .flatMap((when) => measurements.filter((one) => one.when === when))
    .filter(({ asBuilt }) => asBuilt === undefined);
  const more = open.length - nextReadings;
  const lines = open.slice(0, nextReadings).map((one) => {
    const limits = limitsText(one);
    const isForetold = one.predicted !== null;
    return {
      subject: one.id,
      figure: isForetold ? predictedText(one) : limits,
      name: one.what,
      beside: isForetold && limits !== '' ? `right: ${limits}` : '',
    };
  });
  const rest = more > 0 ? `${counted(more, 'more reading')} after these.` : '';
  return plainPart('Measure next', 'commissioning', lines, rest);
}

/**
 * Findings by level, counted as in the index of jobs: what only follows from one is mended with it. And how far the record
 * of measurements has come.
 */
function stateOf({ findings, measurements }: Pick<BuildPlan, 'findings' | 'measurements'>): string[] {
  const levels = levelOrder.flatMap((level) => {
    const count = findings.filter((one) => one.level === level).length;
    return count === 0 ? [] : [counted(count, levelWords[level].toLowerCase())];
  });
  const isRead = ({ asBuilt }: PlanMeasurement): boolean => asBuilt !== undefined;
  const differing = measurements.filter(({ state }) => state === 'differs').length;
  return [
    levels.length === 0 ? 'No findings' : levels.join(', '),
    ...(measurements.length === 0
      ? []
      : [`${measurements.filter(isRead).length} of ${counted(measurements.length, 'reading')} taken`]),
    ...(differing === 0 ? [] : [`${differing} DIFFER${differing === 1 ? 'S' : ''}`]),
  ];
}

function quickViewModel(plan: BuildPlan): QuickViewSheet | null {
  const parts = [
    fusesPart(plan, namesOf(plan)),
    torquesPart(plan),
    presetsPart(plan),
    gainsPart(plan),
    measurePart(plan),
  ].filter(({ groups }) => groups.length > 0);
  return parts.length === 0 ? null : { state: stateOf(plan), parts };
}

export const quickView = builderSheet('quick-view', 'Quick view', quickViewModel);

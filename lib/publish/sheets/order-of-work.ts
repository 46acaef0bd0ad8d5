import type { BuildPlan, PlanStep } from '../../model/plan/index.ts';
import { printed } from '../../model/printed/index.ts';
import { type PhotoFigure, type PublishedPhoto, photoFigure } from '../site/published-photo.ts';
import { hoursText } from '../words/hours-text.ts';
import { counted, joined, spelled } from '../words/words.ts';
import { builderSheet } from './sheet.ts';

/** The steps in order: side by side for the hands at the board and those in the vehicle, then what is left for one. */
export interface OrderOfWorkSheet {
  readonly summary: string;
  /** What two people do at once; empty where there is work for one place alone. */
  readonly columns: readonly Column[];
  /** What begins once the work at the board is done. */
  readonly rest: Column | null;
  /** Photos of what no step does. */
  readonly photos: readonly PhotoFigure[];
}

interface Column {
  readonly title: string;
  readonly steps: readonly Step[];
}

interface Step {
  readonly id: string;
  readonly number: number;
  readonly layer: string;
  /** Where it is done, where its column does not say so; empty otherwise. */
  readonly place: string;
  readonly text: string;
  /** How it is known to be right. */
  readonly proof: string;
  readonly tools: string;
  readonly minutes: string;
  /** Numbers of the steps that come before it; why stands on the worksheet. */
  readonly after: string;
  readonly critical: boolean;
  readonly photos: readonly PhotoFigure[];
}

/** What takes both pairs of hands is done at the vehicle. */
const columnsOf = [
  { title: 'At the board', by: ['board'] },
  { title: 'In the vehicle', by: ['vehicle', 'both'] },
] as const satisfies readonly { readonly title: string; readonly by: readonly PlanStep['by'][] }[];

function placeOf({ by, place }: PlanStep, boards: number): string {
  if (by === 'both') return 'both together';
  return by === 'board' && boards > 1 ? place : '';
}

function stepModel(
  step: PlanStep,
  numbers: ReadonlyMap<string, number>,
  boards: number,
  photos: PhotosOfSteps,
): Step {
  const before = step.after.flatMap((id) => numbers.get(id) ?? []).sort((a, b) => a - b);
  return {
    id: step.id,
    number: numbers.get(step.id) ?? 0,
    layer: spelled(step.layer),
    place: placeOf(step, boards),
    text: step.text,
    proof: step.proof,
    tools: joined(step.tools),
    minutes: `${printed('time-taken', step.minutes)} from ${clock(step.startMinute)}`,
    after: before.length === 0 ? '' : `after ${joined(before.map(String))}`,
    critical: step.critical,
    photos: photos.get(step.id) ?? [],
  };
}

/** Hours and minutes from the start where two people work: steps of both columns that share them are done at once. */
function clock(minutes: number): string {
  return `${Math.floor(minutes / 60)}:${String(Math.round(minutes % 60)).padStart(2, '0')}`;
}

function orderModel(plan: BuildPlan, all: readonly PublishedPhoto[] = []): OrderOfWorkSheet | null {
  const { steps, schedule } = plan;
  if (steps.length === 0) return null;
  const numbers = new Map(steps.map((step, index) => [step.id, index + 1]));
  const { ofSteps, others } = photosOf(
    plan,
    all.filter(({ on }) => on.includes('sheets')),
  );
  return {
    photos: others,
    summary: `${counted(steps.length, 'step')}: ${hoursText(schedule.totalMinutes)} for one, ${hoursText(schedule.twoPersonMinutes)} for two side by side; the longest chain of steps takes ${hoursText(schedule.criticalMinutes)}. Tick each one when what stands below it is seen, and put your initials on the line below the box. From: when a step begins where two work. A star marks a step of that chain.`,
    ...columnsBeside(plan, (step) => stepModel(step, numbers, plan.boards.length, ofSteps)),
  };
}

type PhotosOfSteps = ReadonlyMap<string, readonly PhotoFigure[]>;

/** Photos by the step that they are of: the named one, else the first that installs the device or what stands in the place. */
function photosOf(
  { steps, items }: Pick<BuildPlan, 'steps' | 'items'>,
  photos: readonly PublishedPhoto[],
): { readonly ofSteps: PhotosOfSteps; readonly others: readonly PhotoFigure[] } {
  const stepOf = ({ of }: PublishedPhoto): string | null => {
    if (of === null) return null;
    if (of.kind === 'step') return steps.find(({ id }) => id === of.id)?.id ?? null;
    const meant = items.filter(({ id, seat }) => (of.kind === 'device' ? id : seat) === of.id);
    return steps.find(({ installs }) => meant.some(({ id }) => installs.includes(id)))?.id ?? null;
  };
  const placed = photos.map((photo) => ({ step: stepOf(photo), figure: photoFigure(photo) }));
  const ofSteps = new Map<string, PhotoFigure[]>();
  for (const { step, figure } of placed)
    if (step !== null) ofSteps.set(step, [...(ofSteps.get(step) ?? []), figure]);
  return { ofSteps, others: placed.filter(({ step }) => step === null).map(({ figure }) => figure) };
}

/** Splits the steps where the last one at the board ends: until then both columns have work, from then on one has. */
function columnsBeside(
  { steps }: Pick<BuildPlan, 'steps'>,
  modelOf: (step: PlanStep) => Step,
): Pick<OrderOfWorkSheet, 'columns' | 'rest'> {
  const boardEnd = Math.max(
    0,
    ...steps.filter(({ by }) => by === 'board').map(({ startMinute, minutes }) => startMinute + minutes),
  );
  const isBeside = ({ by, startMinute }: PlanStep) => by === 'board' || startMinute < boardEnd;
  const whole = columnsFor(steps, modelOf);
  if (whole.length < 2) return { columns: [], rest: whole[0] ?? null };
  const columns = columnsFor(steps.filter(isBeside), modelOf);
  // One place waits for the other from the start: nothing is done at once.
  if (columns.length < 2) return { columns: whole, rest: null };
  const rest = steps.filter((step) => !isBeside(step)).map(modelOf);
  return { columns, rest: rest.length === 0 ? null : { title: 'Then, in the vehicle', steps: rest } };
}

function columnsFor(steps: readonly PlanStep[], modelOf: (step: PlanStep) => Step): Column[] {
  return columnsOf
    .map(({ title, by }) => {
      const hands: readonly PlanStep['by'][] = by;
      return { title, steps: steps.filter((step) => hands.includes(step.by)).map(modelOf) };
    })
    .filter((column) => column.steps.length > 0);
}

export const orderOfWork = builderSheet('order-of-work', 'Order of work', orderModel, {
  cautions: ['battery', 'restraints'],
});

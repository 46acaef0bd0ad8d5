import type { Guide } from '../../model/content/guide.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import { everyFinding } from '../../model/finding.ts';
import { kinds, type Part } from '../../model/kinds/index.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import type { SearchRecord } from '../page/page.ts';
import { spelled, statusWords } from '../words/words.ts';

/** What search knows of a job: from its plan, which holds no private value. */
export function jobRecord(plan: BuildPlan): SearchRecord {
  const { job, vehicle, items, boards } = plan;
  const ours = items.filter((item) => item.origin === 'job');
  return {
    title: job.title,
    kind: 'Job',
    summary: `${vehicle.title}. Revision ${job.revision}, ${statusWords[job.status].toLowerCase()}.`,
    content: sentences([
      job.title,
      job.id,
      vehicle.title,
      ...ours.flatMap((item) => [item.title, item.partTitle, item.id]),
      ...boards.flatMap((board) => [board.title, board.spaceTitle, spelled(board.material), board.sheet]),
      ...job.revisions.map((one) => one.what),
      ...job.notes,
      ...everyFinding(plan.findings).map((one) => one.message),
    ]),
    vehicles: [vehicle.title],
    parts: unique(ours.map((item) => item.partTitle)),
    boardMaterials: unique(boards.map((board) => spelled(board.material))),
  };
}

/** What search knows of a part. */
export function partRecord(id: string, part: Part): SearchRecord {
  const { plural } = kinds[part.kind];
  return {
    title: part.title,
    kind: 'Part',
    summary: `${plural}.`,
    content: sentences([part.title, id, plural, part.notes ?? '']),
    vehicles: [],
    parts: [part.title],
    boardMaterials: part.kind === 'board-sheet' ? [spelled(part.material)] : [],
  };
}

/** What search knows of a vehicle. */
export function vehicleRecord(vehicle: Vehicle): SearchRecord {
  return {
    title: vehicle.title,
    kind: 'Vehicle',
    summary: Object.values(vehicle.spaces)
      .map((space) => space.title)
      .join(', '),
    content: sentences([
      vehicle.title,
      vehicle.id,
      ...Object.values(vehicle.spaces).map((space) => space.title),
      ...Object.values(vehicle.routes).map((route) => route.title),
      ...vehicle.cautions,
    ]),
    vehicles: [vehicle.title],
    parts: [],
    boardMaterials: [],
  };
}

/** What search knows of a guide. */
export function guideRecord(guide: Guide): SearchRecord {
  return {
    title: guide.title,
    kind: 'Guide',
    summary: guide.summary,
    content: sentences([guide.title, guide.summary, guide.body.replace(/[#*_`>|[\]]/g, ' ')]),
    vehicles: [],
    parts: [],
    boardMaterials: [],
  };
}

/** What search knows of a page that is made from a catalogue: a line for each of its entries. */
export function catalogueRecord(
  { title, summary }: Pick<Guide, 'title' | 'summary'>,
  lines: readonly string[],
): SearchRecord {
  return {
    title,
    kind: 'Guide',
    summary,
    content: sentences([title, summary, ...lines]),
    vehicles: [],
    parts: [],
    boardMaterials: [],
  };
}

function unique(names: readonly string[]): string[] {
  return [...new Set(names)].sort();
}

function sentences(texts: readonly string[]): string {
  return texts
    .map((text) => text.trim())
    .filter((text) => text !== '')
    .map((text) => (/[.!?]$/.test(text) ? text : `${text}.`))
    .join(' ');
}

import type { Guide } from '../../model/content/guide.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import { kinds, type Part } from '../../model/kinds/index.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';
import type { SearchRecord } from '../page/page.ts';
import { facetValues, noFacets, sheetOf, type Tape } from '../reference/facets.ts';
import type { JobFacts } from '../reference/job-facts.ts';
import { soldThicknessIn } from '../reference/outline-words.ts';
import { headed, statusWords } from '../words/words.ts';

/** What search knows of a job: from what the reader may know of it. */
export function jobRecord(facts: JobFacts, shop: Tape, picture: string | null): SearchRecord {
  const { job, vehicle, items = [], boards = [], wires = [], findings = [] } = facts;
  const ours = items.filter((item) => item.origin === 'job');
  const facets = facetValues(facts, shop);
  const status = job?.status && statusWords[job.status].toLowerCase();
  return {
    title: job?.title ?? '',
    kind: 'Job',
    summary: `${vehicle?.title ?? ''}. Revision ${job?.revision ?? ''}${status ? `, ${status}` : ''}.`,
    knownBy: told([vehicle?.title, ...boards.map(({ spaceTitle }) => spaceTitle)]),
    lines: told([
      vehicle?.title,
      ...boards.map((board) => boardLine(board, shop)),
      ...ours.map(({ title, partTitle }) => (title === partTitle ? title : `${title}: ${partTitle}`)),
      ...[facets.channels, facets['board-size']].map((values) => values.join(', ')),
      wireLine(wires),
      ...fuseLines(facts),
      ...(job?.revisions ?? []).map(({ what }) => what),
      ...(job?.notes ?? []),
      ...findings.flatMap(({ message, follows = [] }) => [message, ...follows.map((one) => one.message)]),
    ]),
    names: told([
      job?.id,
      job?.issuedOn,
      job?.fabricator ?? '',
      status,
      ...ours.flatMap(({ id, part }) => [id, part ?? '']),
      ...wires.map(({ label }) => label),
      ...boards.map(({ thicknessM }) => soldText(thicknessM)),
    ]),
    facets,
    picture,
  };
}

function boardLine(board: NonNullable<JobFacts['boards']>[number], shop: Tape): string {
  return told([board.title, board.spaceTitle, sheetOf(board, shop)]).join(', ');
}

function wireLine(wires: NonNullable<JobFacts['wires']>): string {
  const sizes = [...new Set(told(wires.map(({ size }) => size?.label)))];
  return sizes.length === 0 ? '' : `Wire: ${sizes.join(', ')}`;
}

function fuseLines({ power }: Pick<JobFacts, 'power'>): string[] {
  return (power?.fuses ?? []).flatMap(({ form, ratingA }) =>
    form === undefined || ratingA === undefined || ratingA === null
      ? []
      : [`${headed(fuseForms[form].name)} fuse, ${ratingA} A`],
  );
}

/** The thickness by which a sheet is sold, as a name to be found by. */
function soldText(thicknessM: number | undefined): string {
  const sold = thicknessM === undefined ? null : soldThicknessIn(thicknessM);
  return sold === null ? '' : `${sold} in`;
}

/** What search knows of a part. */
export function partRecord(id: string, part: Part): SearchRecord {
  const { plural } = kinds[part.kind];
  return {
    title: part.title,
    kind: 'Part',
    summary: `${plural}.`,
    knownBy: [],
    lines: told([plural, part.notes]),
    names: told([id, part.kind === 'board-sheet' ? soldText(part.thickness) : '']),
    facets: { ...noFacets, part: [part.title] },
    picture: null,
  };
}

/** What search knows of a vehicle. */
export function vehicleRecord(vehicle: Vehicle): SearchRecord {
  const spaces = Object.values(vehicle.spaces).map((space) => space.title);
  return {
    title: vehicle.title,
    kind: 'Vehicle',
    summary: spaces.join(', '),
    knownBy: [],
    lines: told([
      ...spaces,
      ...Object.values(vehicle.routes).map((route) => route.title),
      ...vehicle.cautions,
    ]),
    names: [vehicle.id],
    facets: { ...noFacets, vehicle: [vehicle.title], space: [...new Set(spaces)] },
    picture: null,
  };
}

/** What search knows of a guide. */
export function guideRecord(guide: Guide): SearchRecord {
  const paragraphs = guide.body.replace(/[#*_`>|[\]]/g, ' ').split(/\n{2,}/);
  return {
    title: guide.title,
    kind: 'Guide',
    summary: guide.summary,
    knownBy: [],
    lines: told([guide.summary, ...paragraphs]),
    names: [],
    facets: noFacets,
    picture: null,
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
    knownBy: [],
    lines: told([summary, ...lines]),
    names: [],
    facets: noFacets,
    picture: null,
  };
}

/** Texts that say something, without the room round them. */
function told(texts: readonly (string | undefined)[]): string[] {
  return texts.map((text) => (text ?? '').replace(/\s+/g, ' ').trim()).filter((text) => text !== '');
}

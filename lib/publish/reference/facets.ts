import type { BuildPlan } from '../../model/plan/index.ts';
import { printedLength } from '../../model/printed/lengths.ts';
import { lengthStyle } from '../../model/quantity/length-text.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';
import type { Units } from '../../model/vocabulary.ts';
import { counted, headed, spelled } from '../words/words.ts';
import type { JobFacts } from './job-facts.ts';
import { outlineWords, sizeWords } from './outline-words.ts';

/** What jobs are browsed and filtered by, in the order in which it is offered. */
export const facetIds = [
  'vehicle',
  'space',
  'part',
  'channels',
  'outline',
  'board-size',
  'sheet',
  'wire-size',
  'fuse-form',
  'fabricator',
  'year',
] as const;
export type FacetId = (typeof facetIds)[number];

/** How the shop measures. */
export type Tape = Pick<BuildPlan['shop'], 'units' | 'fraction'>;

/** One thing that jobs have in common or not. */
interface Facet {
  readonly title: string;
  /** What a job has of it, each once; none where it has none, or the reader may not know. */
  readonly of: (facts: JobFacts, shop: Tape) => readonly (string | undefined)[];
}

/** Every facet. One that is missing here does not compile. */
export const facets: { readonly [K in FacetId]: Facet } = {
  vehicle: { title: 'Vehicle', of: ({ vehicle }) => [vehicle?.title] },
  space: { title: 'Space', of: ({ boards = [] }) => boards.map(({ spaceTitle }) => spaceTitle) },
  part: {
    title: 'Part',
    of: ({ items = [] }) => items.filter(isOurs).map(({ partTitle }) => partTitle),
  },
  channels: {
    title: 'Amplifier channels in use',
    of: ({ audio }) => {
      const driven = (audio?.channels ?? []).filter(({ speakers = [] }) => speakers.length > 0).length;
      return driven === 0 ? [] : [counted(driven, 'channel')];
    },
  },
  outline: { title: 'Board outline', of: ({ boards = [] }) => boards.map(outlineOf) },
  'board-size': {
    title: 'Board fits within',
    of: ({ boards = [] }, { units }) => boards.map((board) => sizeOf(board, units)),
  },
  sheet: { title: 'Board sheet', of: ({ boards = [] }, shop) => boards.map((board) => sheetOf(board, shop)) },
  'wire-size': {
    title: 'Power wire',
    of: ({ wires = [] }) =>
      wires.filter((wire) => isOurs(wire) && wire.role === 'power').map(({ size }) => size?.label),
  },
  'fuse-form': {
    title: 'Fuse form',
    of: ({ power }) => (power?.fuses ?? []).map(({ form }) => form && headed(fuseForms[form].name)),
  },
  fabricator: { title: 'Fabricator', of: ({ job }) => [job?.fabricator ?? undefined] },
  year: { title: 'Year', of: ({ job }) => [job?.issuedOn?.slice(0, 4)] },
};

/** What a job has of each facet, in order, each value once. */
export type FacetValues = Readonly<Record<FacetId, readonly string[]>>;

/** The values of a job, for who may know so much of it. */
export function facetValues(facts: JobFacts, shop: Tape): FacetValues {
  return eachFacet((id) => {
    const all = facets[id].of(facts, shop);
    return [...new Set(all.filter((value) => value !== undefined && value.trim() !== ''))]
      .filter((value) => value !== undefined)
      .sort(inOrder);
  });
}

/** The values of what is no job. */
export const noFacets: FacetValues = eachFacet(() => []);

/** Something of every facet. */
export function eachFacet<T>(make: (id: FacetId) => T): Readonly<Record<FacetId, T>> {
  return {
    vehicle: make('vehicle'),
    space: make('space'),
    part: make('part'),
    channels: make('channels'),
    outline: make('outline'),
    'board-size': make('board-size'),
    sheet: make('sheet'),
    'wire-size': make('wire-size'),
    'fuse-form': make('fuse-form'),
    fabricator: make('fabricator'),
    year: make('year'),
  };
}

/** Conductor sizes above 1 AWG by their zeros, thickest first, then the others; all else by its letters, numbers by their value. */
export function inOrder(a: string, b: string): number {
  const [one, other] = [zerosOf(a), zerosOf(b)];
  return one === other ? compare(a, b) : other - one;
}

const { compare } = new Intl.Collator('en', { numeric: true });

function zerosOf(value: string): number {
  return Number(/^([1-4])\/0 AWG$/.exec(value)?.[1] ?? 0);
}

function isOurs({ origin }: { readonly origin?: 'job' | 'vehicle' | undefined }): boolean {
  return origin === 'job';
}

type Board = NonNullable<JobFacts['boards']>[number];

/** What the outline of a board is, in words; undefined where the reader may not know. */
export function outlineOf({ outline = [], cutouts = [], widthM, heightM }: Board): string | undefined {
  const corners = outline.flatMap(({ xM, yM, bulge }) =>
    xM === undefined || yM === undefined || bulge === undefined ? [] : [{ xM, yM, bulge }],
  );
  return corners.length === 0 || widthM === undefined || heightM === undefined
    ? undefined
    : outlineWords({ outline: corners, cutouts, widthM, heightM });
}

/** What a board fits within; undefined where the reader may not know. */
export function sizeOf({ widthM, heightM }: Board, units: Units): string | undefined {
  return widthM === undefined || heightM === undefined ? undefined : sizeWords({ widthM, heightM }, units);
}

/** What a board is cut from: `Birch plywood, 18 mm (11/16 in)`. */
export function sheetOf({ material, thicknessM }: Board, shop: Tape): string | undefined {
  if (material === undefined || thicknessM === undefined) return undefined;
  const { mm, fraction } = printedLength('made', thicknessM, lengthStyle(shop));
  return `${spelled(material)}, ${mm} (${fraction})`;
}

import type { BuildPlan, FuseAlternative, PlanConductor, PlanFuse } from '../../model/plan/index.ts';
import { printed } from '../../model/printed/index.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';
import type { PlanNames } from '../words/plan-names.ts';
import { headed, joined } from '../words/words.ts';
import { none, type Writer } from '../words/written.ts';
import { type Cell, strong, type Table, tableOf } from './table.ts';

interface InPlace extends FuseAlternative {
  readonly fuse: PlanFuse;
}

/** Fuses that no lawful rating was found for, or fewer of which lie on the shelf than the job needs. */
export function fusesLacking({ power: { fuses }, items }: Pick<BuildPlan, 'power' | 'items'>): PlanFuse[] {
  const ours = fuses.filter(({ item }) => items.find(({ id }) => id === item)?.origin !== 'vehicle');
  return ours.filter(
    ({ part, ratingA, stockQuantity }) =>
      ratingA === null || part === null || stockQuantity < ours.filter((other) => other.part === part).length,
  );
}

/** The lawful fuses that may stand in the place of each of some, side by side, with what each asks for. */
export function fuseAlternatives(caption: string, fuses: readonly PlanFuse[]): Table {
  const all: InPlace[] = fuses.flatMap((fuse) => fuse.alternatives.map((one) => ({ ...one, fuse })));
  return tableOf(
    caption,
    all,
    [
      { title: 'In place of', cell: ({ fuse }) => strong(fuse.id) },
      { title: 'Form', cell: ({ form }) => headed(fuseForms[form].name) },
      {
        title: 'Rating',
        kind: 'figure',
        leads: true,
        cell: ({ ratingA }) => printed('current-allowed', ratingA),
      },
      { title: 'Add', kind: 'words', cell: addCell },
      { title: 'Board area', kind: 'figure', cell: areaCell },
      { title: 'In stock', kind: 'figure', cell: ({ stockQuantity }) => String(stockQuantity) },
      { title: 'Note', kind: 'words', cell: ({ note }) => note },
    ],
    ({ fuse }) => fuse.id,
  );
}

/** Another form needs another holder; where the catalogue has none, that is said. */
function addCell({ form, fuse, parts }: InPlace): Cell {
  if (parts.length > 0) return { text: joined(parts) };
  return { text: form === fuse.form ? 'nothing' : 'a holder: none in the catalogue' };
}

function areaCell({ form, fuse, areaM2 }: InPlace): Cell {
  if (areaM2 > 0) return { text: printed('area-asked', areaM2 * 1e4) };
  return form === fuse.form ? { text: printed('area-asked', 0) } : none;
}

type ConductorAlternative = NonNullable<PlanConductor['alternatives']>[number];

/** The cables that would be lawful where a given conductor does not carry its fuse; null where all do. */
export function conductorAlternatives(
  { power: { conductors } }: Pick<BuildPlan, 'power'>,
  names: PlanNames,
  write: Writer,
): Table | null {
  const all = conductors.flatMap(({ id, size, alternatives = [] }) =>
    alternatives.map((one): ConductorAlternative & { wire: string; given: string } => ({
      ...one,
      wire: id,
      given: size.label,
    })),
  );
  if (all.length === 0) return null;
  return tableOf(
    'Conductors that would be lawful instead',
    all,
    [
      { title: 'In place of', cell: ({ wire, given }) => strong(names.wire(wire), given) },
      { title: 'Size', leads: true, cell: ({ size, part }) => ({ text: size.label, beside: part }) },
      { title: 'May carry', kind: 'figure', cell: ({ ampacityA }) => printed('current-allowed', ampacityA) },
      {
        title: 'Longest piece in stock',
        kind: 'figure',
        cell: ({ stockM }) => (stockM > 0 ? write.wire('length-left', stockM).text : 'none'),
      },
      { title: 'Note', kind: 'words', cell: ({ note }) => note },
    ],
    ({ wire }) => wire,
  );
}

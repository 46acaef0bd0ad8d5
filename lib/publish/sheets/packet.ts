import type { BuildPlan } from '../../model/plan/index.ts';
import { bodyShop, jumpStart } from '../hand-over-words.ts';
import type { Visible } from '../visible-to.ts';
import type { OpenSheet } from './sheet.ts';
import { blank, type ColumnOf, dense, room, strong, type Table, tableOf } from './table.ts';

/** What the customer takes home: what changed, how to treat it, what is warranted. */
export interface PacketSheet {
  readonly mainFuses: readonly string[];
  readonly functions: Table;
  readonly levels: readonly string[];
  readonly jumpStart: readonly string[];
  readonly bodyShop: readonly string[];
  readonly serials: Table;
  readonly readings: Table;
  readonly visits: Table;
  readonly signatures: readonly string[];
}

type Items = Visible<BuildPlan['items']>;

/** Where the fuses near a battery are: those that stand on no board. */
function mainFuses(items: Items): string[] {
  return items.flatMap(({ kind, origin, title, seatTitle }) =>
    kind === 'fuse-holder' &&
    origin === 'job' &&
    title !== undefined &&
    seatTitle !== undefined &&
    seatTitle !== null
      ? [`${title}: ${seatTitle.charAt(0).toLowerCase()}${seatTitle.slice(1)}`]
      : [],
  );
}

/** Equipment that was put in: what bears a serial number. */
function equipment(items: Items): string[] {
  const kinds: readonly (string | undefined)[] = [
    'amplifier',
    'processor',
    'source-unit',
    'speaker',
    'battery',
    'alternator',
  ];
  return items.flatMap(({ kind, origin, title, partTitle }) =>
    kinds.includes(kind) && origin === 'job' ? [`${title}: ${partTitle}`] : [],
  );
}

/** A table whose first column is printed and whose other columns are written by hand. */
function blankRows(
  caption: string,
  title: string,
  first: readonly string[],
  byHand: readonly ColumnOf<string>[],
): Table {
  return dense(tableOf(caption, first, [{ title, kind: 'words', cell: (text) => strong(text) }, ...byHand]));
}

const functions = [
  'Chimes and warnings',
  'Telephone, voice, navigation',
  'Factory radio and its display',
  'Cargo room, spare wheel, jack',
] as const;

const readings = [
  'Drop of the feed',
  'Drop of the ground',
  'Torque at the battery',
  'Torque at the ground point',
] as const;
const visits = ['Re-torque visit at 30 days', 'Return visit', 'Return visit'] as const;

function packetModel(plan: Visible<BuildPlan>): PacketSheet | null {
  const items = plan.items ?? [];
  const serials = equipment(items);
  if (serials.length === 0) return null;
  return {
    mainFuses: mainFuses(items),
    functions: blankRows('Functions of the vehicle that changed', 'Function', functions, [
      { title: 'As before', kind: 'tick' },
      room('What is different now'),
    ]),
    levels: ['Highest setting of the volume', 'Highest setting of the bass level', 'Set by'],
    jumpStart,
    bodyShop,
    serials: blankRows('Warranty record', 'Equipment', serials, [room('Serial number'), blank('Until')]),
    readings: blankRows('Readings', 'Reading', readings, [blank('At hand-over'), blank('At 30 days')]),
    visits: blankRows('Visits', 'Visit', visits, [blank('Date'), room('What was done, by whom')]),
    signatures: ['Customer', 'Date', 'For the shop', 'Date'],
  };
}

export const packet: OpenSheet<PacketSheet> = {
  id: 'packet',
  title: 'Hand-over',
  audiences: ['customer', 'shop'],
  cautions: ['hearing'],
  openTo: 'everyone',
  model: packetModel,
};

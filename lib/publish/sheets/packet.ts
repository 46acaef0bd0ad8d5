import type { BuildPlan } from '../../model/plan/index.ts';
import { bodyShop, jumpStart } from '../hand-over-words.ts';
import type { Visible } from '../visible-to.ts';
import type { OpenSheet } from './sheet.ts';
import { blank, dense, strong, type Table, tableOf } from './table.ts';

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

function blankRows(
  first: readonly string[],
  title: string,
  blanks: readonly string[],
  caption: string,
): Table {
  return dense(
    tableOf(caption, first, [
      { title, cell: (text) => strong(text) },
      ...blanks.map((name) => blank<string>(name)),
    ]),
  );
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
    functions: blankRows(
      functions,
      'Function',
      ['As before', 'What is different now'],
      'Functions of the vehicle that changed',
    ),
    levels: ['Highest setting of the volume', 'Highest setting of the bass level', 'Set by'],
    jumpStart,
    bodyShop,
    serials: blankRows(serials, 'Equipment', ['Serial number', 'Warranted until'], 'Warranty record'),
    readings: blankRows(readings, 'Reading', ['At hand-over', 'At 30 days'], 'Readings'),
    visits: blankRows(visits, 'Visit', ['Date', 'What was done', 'By'], 'Visits'),
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

import type { BuildPlan } from '../../model/plan/index.ts';
import type { HandOver, MainFuse } from '../packet/hand-over.ts';
import { bodyShop, jumpStart } from '../packet/hand-over-words.ts';
import type { Visible } from '../site/visible-to.ts';
import type { OpenSheet } from './sheet.ts';
import { blank, type ColumnOf, dense, room, strong, type Table, tableOf } from './table.ts';

/** What the customer takes home; or why it is not made yet. */
export interface PacketSheet {
  readonly refused: readonly string[];
  readonly packet: Packet | null;
}

/** What changed in the vehicle, how to treat it, what is warranted. */
export interface Packet {
  /** The rating and the place of each: what is put back where one was taken out. */
  readonly mainFuses: Table | null;
  readonly functions: Table;
  readonly levels: readonly string[];
  readonly jumpStart: readonly string[];
  readonly bodyShop: readonly string[];
  readonly serials: Table;
  readonly readings: Table;
  readonly visits: Table;
  readonly signatures: readonly string[];
}

function mainFusesTable(fuses: readonly MainFuse[]): Table | null {
  if (fuses.length === 0) return null;
  return dense(
    tableOf('Main fuse: the rating that is put back, and where it stands', fuses, [
      { title: 'Fuse', kind: 'words', cell: ({ name }) => strong(name) },
      { title: 'Rating', kind: 'figure', leads: true, cell: ({ rating }) => strong(rating) },
      { title: 'Form', cell: ({ form }) => form },
      { title: 'Place', kind: 'words', cell: ({ place }) => place },
    ]),
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
function packetModel(_: Visible<BuildPlan>, handOver: HandOver): PacketSheet | null {
  const { refused, equipment } = handOver;
  if (equipment.length === 0) return null;
  return { refused, packet: refused.length > 0 ? null : packetOf(handOver) };
}

/** The serial number as the job writes it, or room for it. */
function serialsTable(equipment: HandOver['equipment']): Table {
  return dense(
    tableOf('Warranty record', equipment, [
      { title: 'Equipment', kind: 'words', cell: ({ name }) => strong(name) },
      { ...room('Serial number'), cell: ({ serial }) => serial ?? '' },
      blank('Until'),
    ]),
  );
}

function packetOf({ mainFuses, hasBoards, equipment, retorqueDays, highestV }: HandOver): Packet {
  const days = `${retorqueDays} days`;
  return {
    mainFuses: mainFusesTable(mainFuses),
    functions: blankRows('Functions of the vehicle that changed', 'Function', functions, [
      { title: 'As before', kind: 'tick' },
      room('What is different now'),
    ]),
    levels: ['Highest setting of the volume', 'Highest setting of the bass level', 'Set by'],
    jumpStart: jumpStart(highestV, mainFuses.length > 0),
    bodyShop: bodyShop({ hasMainFuse: mainFuses.length > 0, hasBoards }),
    serials: serialsTable(equipment),
    readings: blankRows('Readings', 'Reading', readings, [blank('At hand-over'), blank(`At ${days}`)]),
    visits: blankRows(
      'Visits',
      'Visit',
      [`Re-torque visit at ${days}`, 'Return visit', 'Return visit'],
      [blank('Date'), room('What was done, by whom')],
    ),
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

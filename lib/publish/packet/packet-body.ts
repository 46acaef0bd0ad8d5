import { packetDrawings } from '../../draw/packet/index.ts';
import { numberedFuses } from '../../draw/packet/numbered-fuses.ts';
import { type PacketDrawing, packetSvg } from '../../draw/packet/packet-drawing.ts';
import type { JobHandOver } from '../../model/content/job.ts';
import type { ShopHandOver } from '../../model/content/shop.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { blank, type Fact, fact, room, strong, type Table, tableOf } from '../sheets/table.ts';
import { type PhotoFigure, type PublishedPhoto, photoFigure } from '../site/published-photo.ts';
import { shippedMetrics } from '../site/shipped-metrics.ts';
import { careWords } from './care-words.ts';
import type { HandOver } from './hand-over.ts';
import { jumpStartWords } from './jump-start-words.ts';
import { levelWords } from './level-control-words.ts';
import { cardTable, fusesTable, mainsOf } from './packet-fuses.ts';
import { picturesToken } from './packet-pictures.ts';
import { readingsTable, settingsTable, tonesTable } from './packet-settings.ts';
import { isOfEquipment, isOfItem, type PutIn, putInOf } from './put-in.ts';
import { type ServiceWords, serviceWords } from './service-words.ts';
import { whenItStops } from './when-it-stops.ts';

/** A drawing as the packet holds it. */
export interface PacketFigure {
  readonly id: string;
  readonly title: string;
  readonly svg: string;
  /** What found no place on it: told beside it. */
  readonly unplaced: readonly string[];
}

/** What an owner takes home, in the order in which it is read. */
export interface Packet {
  readonly putIn: readonly PutIn[];
  /** Photos of what is neither equipment nor a fuse: steps, places. */
  readonly photos: readonly PhotoFigure[];
  /** Stands where the pictures of the finished boards are put in. */
  readonly pictures: string;
  readonly vehicle: PacketFigure;
  readonly boards: readonly PacketFigure[];
  readonly oneLine: PacketFigure | null;
  readonly levels: PacketFigure | null;
  readonly fuses: Table | null;
  /** The fuses once more, on a card for the glove box. */
  readonly card: Table | null;
  /** Photos of what holds a fuse. */
  readonly fusePhotos: readonly PhotoFigure[];
  readonly tones: Table | null;
  readonly settings: Table | null;
  readonly readings: Table | null;
  readonly level: readonly string[];
  readonly highest: readonly Fact[];
  readonly stops: readonly string[];
  readonly care: readonly string[];
  readonly warranty: readonly string[];
  readonly terms: readonly string[];
  readonly serials: Table;
  readonly visits: Table;
  /** What works otherwise than before, as the job writes it. */
  readonly changed: readonly string[];
  readonly functions: Table;
  readonly jumpStart: readonly string[];
  readonly service: ServiceWords;
  readonly telephone: string | null;
  readonly signatures: readonly string[];
}

/** What a packet is made from beside its plan. */
export interface PacketInput {
  readonly plan: BuildPlan;
  readonly handOver: HandOver;
  readonly shop: ShopHandOver;
  /** What the job writes for its owner; null where it could not be read. */
  readonly job: JobHandOver | null;
  readonly photos: readonly PublishedPhoto[];
}

export function packetBody({ plan, handOver, shop, job, photos }: PacketInput): Packet {
  const fuses = numberedFuses(plan);
  const mains = mainsOf(fuses);
  const drawn = packetDrawings(plan, shippedMetrics(), fuses);
  const shown = photos.filter(({ on }) => on.includes('packet'));
  const apart = shown.filter(({ of }) => !isOfEquipment(plan, of));
  const isOfFuse = ({ of }: PublishedPhoto) => fuses.some(({ holder }) => isOfItem(of, holder));
  return {
    putIn: putInOf(plan, shown),
    photos: apart.filter((photo) => !isOfFuse(photo)).map(photoFigure),
    pictures: picturesToken,
    vehicle: figureOf(drawn.vehicle),
    boards: drawn.boards.map(figureOf),
    oneLine: drawn.oneLine && figureOf(drawn.oneLine),
    levels: drawn.levels && figureOf(drawn.levels),
    fuses: fusesTable(plan, fuses),
    card: cardTable(plan, fuses),
    fusePhotos: apart.filter(isOfFuse).map(photoFigure),
    tones: tonesTable(plan),
    settings: settingsTable(plan),
    readings: readingsTable(plan),
    level: levelWords(plan),
    highest: [
      fact('Highest setting of the volume', job?.['highest-volume'] ?? ''),
      fact('Highest setting of the bass level', job?.['highest-bass'] ?? ''),
    ],
    stops: whenItStops(fuses.length > 0),
    care: [...careWords(plan, handOver.retorqueDays), ...shop.care],
    warranty: plan.shop.warranty ?? shop.warranty,
    terms: plan.shop.terms ?? shop.terms,
    serials: serialsTable(handOver.equipment),
    visits: visitsTable(handOver.retorqueDays),
    changed: job?.['functions-changed'] ?? [],
    functions: functionsTable(),
    jumpStart: jumpStartWords(mains, handOver.highestV),
    service: serviceWords(plan, mains),
    telephone: shop.telephone ?? null,
    signatures: ['Owner', 'Date', 'For the shop', 'Date'],
  };
}

function figureOf(drawing: PacketDrawing): PacketFigure {
  const { id, title, unplaced } = drawing;
  return { id, title, svg: packetSvg(drawing), unplaced };
}

/** The serial number as the job writes it, or room for it. */
function serialsTable(equipment: HandOver['equipment']): Table {
  return tableOf('Warranty record', equipment, [
    { title: 'Equipment', kind: 'words', cell: ({ name }) => strong(name) },
    { ...room('Serial number'), cell: ({ serial }) => serial ?? '' },
    blank('Until'),
  ]);
}

function visitsTable(days: number): Table {
  return tableOf(
    'Visits',
    [`After ${days} days: power joints tightened again`, 'Next visit', 'Next visit'],
    [
      { title: 'Visit', kind: 'words', cell: (text) => strong(text) },
      blank('Date'),
      room('What was done, by whom'),
    ],
  );
}

/** Functions that a system of this kind may change: looked at together at hand-over. */
const functions = [
  'Chimes and warnings',
  'Telephone, voice, navigation',
  'Factory radio and its display',
  'Cargo room, spare wheel, jack',
] as const;

function functionsTable(): Table {
  return tableOf('Looked at together at hand-over', functions, [
    { title: 'Function', kind: 'words', cell: (text) => strong(text) },
    { title: 'As before', kind: 'tick' },
    room('What is different now'),
  ]);
}

import { outputFactsSchema } from '../content/integration.ts';
import { vehicleSchema } from '../content/vehicle.ts';
import { extent, id, text } from '../fields.ts';
import { vehicleSideSchema, zoneKindSchema } from '../vocabulary.ts';
import { type AskedTable, column, optionalColumn } from './asked-table.ts';

/** A stop of the walk round a vehicle. */
export interface Station {
  readonly id: string;
  readonly title: string;
  readonly tables: readonly AskedTable[];
}

const vehicle = vehicleSchema.shape;
const space = vehicle.spaces.valueType.shape;
const place = vehicle.places.unwrap().valueType.shape;
const ground = vehicle.grounds.valueType.shape;
const link = vehicle.links.unwrap().valueType.shape;
const pass = vehicle.routes.valueType.shape.passes.element.shape;
const obstacle = space.obstacles.unwrap().valueType.shape;
const reachable = space['keep-reachable'].unwrap().valueType.shape;
const point = space['sound-points'].valueType.shape;
const opening = space.openings.unwrap().element.shape;
const output = outputFactsSchema.shape;
const bound = space.bounds.unwrap().shape;

const zone = (example: string) => column('zone', 'zone', zoneKindSchema, example);
const side = (example: string) => column('side', 'side', vehicleSideSchema, example);

const itself: Station = {
  id: 'vehicle',
  title: 'The vehicle itself',
  tables: [
    {
      key: 'title',
      asks: 'What the vehicle is called on the sheets: kind, doors, year',
      by: 'eye',
      columns: [column('title', 'title', vehicle.title, 'Estate car, five doors')],
      rows: 1,
    },
    {
      key: 'supply',
      asks: 'What it is driven by',
      by: 'eye',
      columns: [optionalColumn('supply', 'supply', vehicle.supply, 'combustion')],
      rows: 1,
    },
    {
      key: 'system-voltage',
      asks: 'Nominal voltage of its supply',
      by: 'eye',
      columns: [optionalColumn('system-voltage', 'voltage', vehicle['system-voltage'], '12 V')],
      rows: 1,
    },
    {
      key: 'caution',
      asks: 'What must be known before a tool is taken: airbags, tank, lines, high voltage, and where',
      by: 'eye',
      columns: [
        column(
          'caution',
          'caution',
          vehicle.cautions.unwrap().element,
          'Curtain airbags along both roof rails.',
        ),
      ],
      rows: 4,
    },
  ],
};

/** Reached next: what the vehicle came with, where a ground may go, and the readings of a meter. */
const underTheHood: Station = {
  id: 'came-with',
  title: 'What the vehicle came with',
  tables: [
    {
      key: 'fitted',
      asks: 'Batteries, alternator, source unit: what each is called here, and where it is',
      by: 'eye',
      hint: 'Names that are usual: starter-battery, alternator, source-unit.',
      columns: [
        column('name', 'name', id, 'starter-battery'),
        column('part', 'part of the catalogue', id, 'battery-flooded-60'),
        zone('engine-bay'),
        side('left'),
      ],
      rows: 4,
    },
    {
      key: 'ground',
      asks: 'Ground points: studs and bolts of the bare body',
      by: 'eye',
      hint: 'That of the battery, and one near each board. Tell what else the bolt holds.',
      columns: [
        column('name', 'name', id, 'crossmember-left'),
        zone('under-carpet'),
        side('left'),
        column('stud', 'stud', ground.stud, 'M8'),
        optionalColumn('insert', 'goes into', ground.insert, 'rivet-nut'),
        optionalColumn('holds', 'holds', ground.holds, 'nothing-else'),
      ],
      rows: 4,
    },
    {
      key: 'cable',
      asks: 'Heavy cables of the vehicle: what charges and grounds its battery',
      by: 'tape',
      hint: 'From terminal to terminal; a ground point is body. with its name.',
      columns: [
        column('from', 'from', link.from, 'starter-battery.NEG'),
        column('to', 'to', link.to, 'body.engine'),
        column('size', 'size', link.size, '2 AWG'),
        column('length', 'length', link.length, '20 in'),
      ],
      rows: 4,
    },
    {
      key: 'vehicle-load',
      asks: 'What the vehicle itself draws: lights, heater and fan on, engine idling',
      by: 'meter',
      columns: [optionalColumn('vehicle-load', 'current', vehicle['vehicle-load'], '40 A')],
      rows: 1,
    },
    {
      key: 'charging-voltage',
      asks: 'Voltage at the alternator, warm, loads on',
      by: 'meter',
      columns: [optionalColumn('charging-voltage', 'voltage', vehicle['charging-voltage'], '14.2 V')],
      rows: 1,
    },
  ],
};

const dash: Station = {
  id: 'source',
  title: 'Outputs of the source unit, at its plug',
  tables: [
    {
      key: 'output',
      asks: 'What comes out of each output that may be used',
      by: 'meter',
      hint: 'Several alike in one row: OUT1..4 are OUT1 to OUT4.',
      columns: [
        column('name', 'output', text('OUT1'), 'OUT1..4'),
        optionalColumn('from', 'lowest frequency', output.bandwidth.unwrap().shape.from, '20 Hz'),
        optionalColumn('to', 'highest frequency', output.bandwidth.unwrap().shape.to, '20 kHz'),
        optionalColumn('clean-voltage', 'greatest clean voltage', output['clean-voltage'], '3.8 V'),
        optionalColumn('offset', 'offset to ground', output.offset, '0 V'),
        optionalColumn('polarity', 'polarity', output.polarity, 'normal'),
      ],
      rows: 6,
    },
    {
      key: 'source-does',
      asks: 'What the source unit does to them',
      by: 'meter',
      columns: [
        optionalColumn('equalising', 'equalising', output.equalising, 'none'),
        optionalColumn('load-sensing', 'off without a speaker', output['load-sensing'], 'no'),
        optionalColumn('noise-cancelling', 'noise cancelling', output['noise-cancelling'], 'no'),
        optionalColumn('chimes', 'chimes and warnings', output.chimes, 'no'),
      ],
      rows: 1,
    },
  ],
};

const spaces: Station = {
  id: 'space',
  title: 'Spaces for boards',
  tables: [
    {
      key: 'space',
      asks: 'Where a board may go, seen from the side that it is mounted from',
      by: 'tape',
      hint: 'Right and up tell where the right-hand side and the upper edge of the board point in the vehicle.',
      columns: [
        column('name', 'name', id, 'under-left-seat'),
        column('title', 'title', space.title, 'Floor under the left front seat'),
        zone('under-carpet'),
        side('left'),
        column('width', 'width', extent, '20 in'),
        column('height', 'height', extent, '15 in'),
        column('depth', 'free depth', space.depth, '4 1/2 in'),
        column('right', 'right', space.right, 'right'),
        column('upward', 'up', space.upward, 'front'),
        optionalColumn('air', 'air', space.air, '22 L'),
        optionalColumn('wet', 'wet', space.wet, 'no'),
        optionalColumn('beside-subwoofer', 'beside a subwoofer', space['beside-subwoofer'], 'no'),
      ],
      rows: 2,
    },
    {
      key: 'bounds',
      asks: 'What bounds it on each side: a wall, or open, so that a hand comes in',
      by: 'eye',
      within: 'space',
      columns: (['left', 'right', 'top', 'bottom', 'front'] as const).map((edge) =>
        optionalColumn(edge, edge, bound[edge], edge === 'front' ? 'open' : 'wall'),
      ),
      rows: 2,
    },
    {
      key: 'opening',
      asks: 'Openings from it to the air of the vehicle',
      by: 'tape',
      within: 'space',
      columns: [
        column('width', 'width', opening.width, '17 in'),
        column('height', 'height', opening.height, '3 in'),
      ],
      rows: 3,
    },
    {
      key: 'obstacle',
      asks: 'What stands out in it, from its lower left corner',
      by: 'tape',
      within: 'space',
      columns: [
        column('what', 'what', obstacle.what, 'seat wiring plug'),
        column('x', 'from the left', obstacle.x, '1/2 in'),
        column('y', 'from below', obstacle.y, '0 in'),
        column('width', 'width', obstacle.width, '3 in'),
        column('height', 'height', obstacle.height, '3/4 in'),
        column('stands-out', 'stands out', obstacle['stands-out'], '1 1/4 in'),
      ],
      rows: 4,
    },
    {
      key: 'point',
      asks: 'Points that are sound enough to hold a board, from its lower left corner',
      by: 'tape',
      within: 'space',
      hint: 'Look behind each: tank, line, airbag.',
      columns: [
        column('name', 'name', id, 'rear-outer'),
        column('x', 'from the left', point.x, '2 1/2 in'),
        column('y', 'from below', point.y, '2 1/2 in'),
        column('stud', 'stud', point.stud, 'M6'),
        column('behind', 'behind it', point.behind, 'nothing'),
        column('what', 'what it is', point.what, 'M6 rivet nut in the crossmember'),
        optionalColumn('free-depth', 'free depth behind', point['free-depth'], '1 1/2 in'),
      ],
      rows: 6,
    },
    {
      key: 'reachable',
      asks: 'What must stay reachable with the board in: jack, spare wheel, service plug',
      by: 'tape',
      within: 'space',
      columns: [
        column('what', 'what', reachable.what, 'cover of the jack'),
        column('x', 'from the left', reachable.x, '2 in'),
        column('y', 'from below', reachable.y, '1 in'),
        column('width', 'width', reachable.width, '6 in'),
        column('height', 'height', reachable.height, '4 in'),
        column('before', 'room before it', reachable.before, '3 in'),
        optionalColumn('must', 'demanded', reachable.must, 'yes'),
      ],
      rows: 2,
    },
  ],
};

const places: Station = {
  id: 'place',
  title: 'Places for speakers, boxes and fuses',
  tables: [
    {
      key: 'place',
      asks: 'Where something may stand that is on no board; one beside the battery for the main fuse',
      by: 'tape',
      hint: 'The distance is from the head of the listener; the row is that of the seats that a speaker plays to.',
      columns: [
        column('title', 'title', place.title, 'Left door'),
        zone('cabin'),
        side('left'),
        optionalColumn('depth', 'free depth', place.depth, '2 1/2 in'),
        optionalColumn('distance', 'distance', place.distance, '38 in'),
        optionalColumn('row', 'row', place.row, 'front'),
      ],
      rows: 8,
    },
  ],
};

const ways: Station = {
  id: 'way',
  title: 'Ways for wires',
  tables: [
    {
      key: 'way',
      asks: 'Ways for wires, laid with a cord: from where, to which edge of a space, through what',
      by: 'tape',
      hint:
        'From and to are places, fitted devices or ground points, several parted by blanks, or the edge of a space. Each ' +
        'stretch tells its zone and length, then edge for a sharp edge and hole with its width where it goes through one.',
      columns: [
        column('from', 'from', text('starter-battery'), 'starter-battery beside-the-battery'),
        column('to', 'to', text('left edge'), 'left edge'),
        side('left'),
        column('passes', 'stretches', text('sill 36 in'), 'engine-bay 30 in, bulkhead 6 in edge hole 20 mm', {
          rest: true,
        }),
      ],
      rows: 10,
    },
  ],
};

/**
 * The walk round a vehicle with a tape and a meter: what is asked at each stop, in the order in which one comes by it.
 * The blank survey sheet has these tables, and `rackleaf new vehicle` asks these questions, in this order.
 */
export const walk: readonly Station[] = [itself, underTheHood, dash, spaces, places, ways];

/** What one stretch of a way tells. */
export const stretchFields = { zone: pass.zone, length: pass.length, hole: pass['through-hole'] };

import { vehicleSchema } from '../content/vehicle.ts';
import { text } from '../fields.ts';
import { column, optionalColumn } from './asked-table.ts';
import { type Station, side, zone } from './station.ts';

const place = vehicleSchema.shape.places.unwrap().valueType.shape;
const pass = vehicleSchema.shape.routes.valueType.shape.passes.element.shape;

/** Where speakers, boxes and fuses may stand. */
export const places: Station = {
  id: 'place',
  title: 'Places for speakers, boxes and fuses',
  tables: [
    {
      key: 'place',
      asks: 'Where something may stand that is on no board; one beside the battery for the main fuse',
      by: 'tape',
      hint:
        'The distance is from the head of the listener; the row is that of the seats that a speaker plays to. Where ways for ' +
        'wires part is a place too, such as Left kick panel, cabin, left.',
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

/** How wires go through the vehicle. */
export const ways: Station = {
  id: 'way',
  title: 'Ways for wires',
  tables: [
    {
      key: 'way',
      asks: 'Ways for wires, laid with a cord: from where, to which edge of a space, through what',
      by: 'tape',
      hint:
        'From is the end where the cord begins, to the one where it ends; each is a place, a fitted device or a ground point, ' +
        'several parted by blanks, or the edge of a space. The cord is held to the terminals of what stands at an end, and to ' +
        'the rim of the space. The stretches follow each other from the first end on: zone and length, then edge for a sharp ' +
        'edge, hole with its width where a hole is there, drill with its width and what lies behind where one is to be drilled, ' +
        'grommet with its bore where one sits in it already. A blind plug is none yet: where it is to be taken out for a grommet, ' +
        'write edge hole and the width of its hole; where it is to be cut and stay, grommet and the bore that the cut gets. What is there and not measured yet is left open: grommet ?. A door ' +
        'is a zone of its own, its sleeve a stretch of it: cabin 7 in, door 5 in grommet 18 mm, door 16 in. What several ways ' +
        'share, such as bulkhead and sill, is one row: it ends in a place where they part, and each goes on from there in a ' +
        'row of its own, with its own stretches alone.',
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

/** What one stretch of a way tells. */
export const stretchFields = {
  zone: pass.zone,
  length: pass.length,
  hole: pass['through-hole'],
  behind: pass.behind,
};

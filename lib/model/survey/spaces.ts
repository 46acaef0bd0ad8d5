import { vehicleSchema } from '../content/vehicle.ts';
import { extent, id } from '../fields.ts';
import { column, optionalColumn } from './asked-table.ts';
import { type Station, side, zone } from './station.ts';

const space = vehicleSchema.shape.spaces.valueType.shape;
const obstacle = space.obstacles.unwrap().valueType.shape;
const reachable = space['keep-reachable'].unwrap().valueType.shape;
const point = space['sound-points'].valueType.shape;
const opening = space.openings.unwrap().element.shape;
const fan = space.fan.unwrap().shape;
const bound = space.bounds.unwrap().shape;

/** Where boards may go. */
export const spaces: Station = {
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
      asks: 'What bounds it on each side as it is driven: a wall, or open, so that a hand comes in; in front also a lid, which comes off for service',
      by: 'eye',
      within: 'space',
      oneEach: true,
      columns: (['left', 'right', 'top', 'bottom', 'front'] as const).map((edge) =>
        optionalColumn(edge, edge, bound[edge], edge === 'front' ? 'lid' : 'wall'),
      ),
      rows: 2,
    },
    {
      key: 'opening',
      asks: 'Openings from it to the air of the vehicle',
      by: 'tape',
      seldom: 'none',
      within: 'space',
      columns: [
        column('width', 'width', opening.width, '17 in'),
        column('height', 'height', opening.height, '3 in'),
      ],
      rows: 3,
    },
    {
      key: 'fan',
      asks: 'A fan that blows through it already: how much air it moves',
      by: 'eye',
      seldom: 'none; one that a job adds is a device of that job, of the kind fan',
      within: 'space',
      columns: [column('air', 'moves', fan.air, '30 m3/h')],
      rows: 2,
    },
    {
      key: 'obstacle',
      asks: 'What stands out in it, from its lower left corner',
      by: 'tape',
      seldom: 'nothing',
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
        column('what', 'what it is', point.what, 'M6 rivet nut'),
        optionalColumn('free-depth', 'free depth behind', point['free-depth'], '1 1/2 in'),
        optionalColumn('there', 'there already', point.there, 'yes'),
      ],
      rows: 6,
    },
    {
      key: 'reachable',
      asks: 'What must stay reachable with the board in: jack, spare wheel, service plug',
      by: 'tape',
      seldom: 'nothing',
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

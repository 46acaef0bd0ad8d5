import { about, aboutContent, entry } from '../../case.ts';
import { space } from '../../changes.ts';
import type { FiringCase, RuleCases } from '../../rule-case.ts';

type Space = ReturnType<typeof space>;

const inSpace = (change: (space: Space) => void) => () =>
  aboutContent((content) => {
    change(space(content));
  });

/** The space is 800 mm by 500 mm and 200 mm deep: 80 L, 1.32 m2. */
const differs = (name: string, keys: string, change: (space: Space) => void, says: RegExp): FiringCase => ({
  name,
  about: inSpace(change),
  level: 'caution',
  subject: `well.${keys.split('/').at(-1)}`,
  file: 'vehicle.yaml',
  path: `/spaces/well/${keys}`,
  says,
});
const obstacle = (at: Partial<NonNullable<Space['obstacles']>[string]>) => (own: Space) => {
  own.obstacles = {
    seam: {
      x: '0 mm',
      y: '0 mm',
      width: '50 mm',
      height: '50 mm',
      'stands-out': '30 mm',
      what: 'seam',
      ...at,
    },
  };
};

const jack = (x: string) => (own: Space) => {
  own['keep-reachable'] = {
    jack: { x, y: '0 mm', width: '50 mm', height: '50 mm', before: '100 mm', what: 'cover of the jack' },
  };
};

/** The left sill reaches the space at an edge. */
const reached =
  (
    edge: 'left' | 'right' | 'top' | 'bottom',
    axes: Pick<Space, 'right' | 'upward'>,
    side: 'left' | 'middle' = 'left',
  ) =>
  () =>
    aboutContent((content) => {
      Object.assign(space(content), axes);
      Object.assign(entry(content.vehicle.routes, 'left-sill'), { side, reaches: { space: 'well', edge } });
    });

export const vehicleDataCases = {
  'space-seen-from-behind': {
    fires: [
      {
        name: 'a wall of the left side that is seen from the left',
        about: inSpace((own) => {
          own.right = 'rear';
        }),
        level: 'caution',
        subject: 'well',
        file: 'vehicle.yaml',
        path: '/spaces/well/right',
        says: /comes out mirrored/,
      },
      {
        name: 'the same on the right',
        about: inSpace((own) => {
          Object.assign(own, { side: 'right', right: 'front' });
        }),
        level: 'caution',
        subject: 'well',
        file: 'vehicle.yaml',
        says: /lies on the right/,
      },
    ],
    quiet: [
      { name: 'a wall of the left side, the front on the right hand', about: () => about() },
      {
        name: 'a floor, seen from above',
        about: inSpace((own) => {
          Object.assign(own, { right: 'right', upward: 'front' });
        }),
      },
      {
        name: 'a bulkhead across the vehicle',
        about: inSpace((own) => {
          Object.assign(own, { side: 'middle', right: 'right' });
        }),
      },
    ],
  },
  // ISO 8855: on a wall that is seen towards the rear the left of the vehicle is on the right hand.
  'edge-on-other-side': {
    fires: [
      {
        name: 'a rear wall that is mounted from before it: the left is on the right hand',
        about: reached('left', { right: 'left', upward: 'up' }),
        level: 'caution',
        subject: 'well',
        file: 'vehicle.yaml',
        path: '/routes/left-sill/reaches/edge',
        says: /left-sill runs along the left .* at its left edge, which lies on the right of the vehicle/,
        toDo: /write edge: right/,
      },
      {
        name: 'a bulkhead that is mounted from behind it, at its right edge',
        about: reached('right', { right: 'right', upward: 'up' }),
        level: 'caution',
        subject: 'well',
        file: 'vehicle.yaml',
        toDo: /write edge: left/,
      },
      {
        name: 'a floor that is seen with the left of the vehicle above',
        about: reached('bottom', { right: 'front', upward: 'left' }),
        level: 'caution',
        subject: 'well',
        file: 'vehicle.yaml',
        toDo: /write edge: top/,
      },
    ],
    quiet: [
      {
        name: 'a rear wall that is mounted from before it, at its right edge',
        about: reached('right', { right: 'left', upward: 'up' }),
      },
      { name: 'a bulkhead at its left edge', about: reached('left', { right: 'right', upward: 'up' }) },
      { name: 'from below', about: reached('bottom', { right: 'left', upward: 'up' }) },
      {
        name: 'a side wall, whose edges lie to the front and the rear',
        about: reached('left', { right: 'front', upward: 'up' }),
      },
      {
        name: 'a way through the middle of the vehicle',
        about: reached('left', { right: 'left', upward: 'up' }, 'middle'),
      },
    ],
  },
  'space-measures-differ': {
    fires: [
      differs(
        'a tenth of its air',
        'air',
        (own) => {
          own.air = '8 L';
        },
        /8 L of air.*hold 80 L/,
      ),
      differs(
        'cubic metres for litres',
        'air',
        (own) => {
          own.air = '60 m3';
        },
        /hold 80 L/,
      ),
      differs(
        'cm2 for m2',
        'surface',
        (own) => {
          own.surface = '0.39 m2';
        },
        /0.39 m2 of wall.*have 1.32 m2/,
      ),
      differs(
        'cm2 for m2, the other way',
        'surface',
        (own) => {
          own.surface = '53 m2';
        },
        /53 m2 of wall/,
      ),
      differs(
        'an obstacle past the right edge',
        'obstacles/seam',
        obstacle({ x: '760 mm' }),
        /past the outline of well/,
      ),
      differs(
        'a jack past the right edge',
        'keep-reachable/jack',
        jack('760 mm'),
        /what must stay reachable, jack, reaches/,
      ),
      differs(
        'an obstacle before the left edge',
        'obstacles/seam',
        obstacle({ x: '-10 mm' }),
        /past the outline/,
      ),
      differs(
        'an obstacle that is higher than the space is deep',
        'obstacles/seam',
        obstacle({ 'stands-out': '300 mm' }),
        /past the depth of well/,
      ),
    ],
    quiet: [
      { name: 'a jack within the outline', about: inSpace(jack('700 mm')) },
      { name: 'air of 60 L', about: () => about() },
      {
        name: 'air of a whole cargo area',
        about: inSpace((own) => {
          own.air = '4.7 m3';
        }),
      },
      {
        name: 'walls of 0.4 m2',
        about: inSpace((own) => {
          own.surface = '0.4 m2';
        }),
      },
      { name: 'an obstacle at the edge', about: inSpace(obstacle({ x: '750 mm', 'stands-out': '200 mm' })) },
    ],
  },
} satisfies RuleCases;

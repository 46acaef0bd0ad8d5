import { about, aboutContent } from '../../case.ts';
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

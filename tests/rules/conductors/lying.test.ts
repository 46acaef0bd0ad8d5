import { describe, expect, test } from 'vitest';
import { ambientRules } from '../../../lib/model/zone-ambient.ts';
import { about, aboutContent, entry, one, partIn } from '../case.ts';
import { run, setBoard, wire } from '../changes.ts';
import type { Written } from '../content.ts';
import { found } from '../found.ts';
import { sized } from '../plan.ts';
import { route } from '../plan-board.ts';

describe('signal beside power on a board', () => {
  const routes = (signal: readonly (readonly [number, number])[]) =>
    found(
      'power-near-signal-on-board',
      setBoard({
        routes: [
          route('amp-feed', 'power', [-0.15, 0.2], [0.15, 0.2]),
          route('signal-1', 'signal', ...signal),
        ],
      }),
    );

  test('is told with the distance and the limit of the house rule, wherever the datum of the board lies', () => {
    const limit = about().job.rules['power-signal-distance'].value;
    expect(
      routes([
        [-0.15, 0.15],
        [0.15, 0.15],
      ]),
    ).toEqual([
      expect.objectContaining({
        of: ['signal-1', 'amp-feed', 'main'],
        value: expect.closeTo(0.05, 9),
        limit,
        unit: 'm',
      }),
    ]);
  });

  test('is told without a distance where it only crosses aslant', () => {
    const [told, ...more] = routes([
      [-0.05, 0.1],
      [0.05, 0.3],
    ]);
    expect(more).toEqual([]);
    expect(told?.message).toMatch(/aslant/);
    expect(told).not.toHaveProperty('value');
    expect(told).not.toHaveProperty('limit');
  });
});

test('a lead in a cable fails where the insulation of the cable does', () => {
  const made = (marked: boolean) =>
    about({
      content: (content) => {
        const { parts } = content;
        parts.trunk = { ...entry(parts, 'nine-wire') };
        if (!marked && 'insulation' in parts.trunk) delete parts.trunk.insulation;
      },
      plan: (plan) => {
        Object.assign(wire(plan, 'radio-rem'), {
          cable: 'lead',
          zones: [{ zone: 'engine-bay', lengthM: 1, edge: false }],
        });
        plan.cables = [
          { id: 'other', part: 'clad', lengthM: 1, conductors: [] },
          { id: 'lead', part: 'trunk', lengthM: 1, conductors: [] },
        ];
      },
    });
  const { rules } = about().job;
  const limit = rules[ambientRules['engine-bay']].value;
  // Marked 80 C; what bears no mark counts as the house rule says.
  expect(found('insulation-at-ambient', made(true))).toEqual([
    expect.objectContaining({ of: ['radio-rem', 'engine-bay'], value: 80, limit }),
  ]);
  expect(found('insulation-at-ambient', made(false))).toEqual([
    expect.objectContaining({
      of: ['radio-rem', 'engine-bay'],
      value: rules['insulation-unmarked'].value,
      limit,
    }),
  ]);
});

describe('an edge that no grommet fits', () => {
  const remedy = (stock: Readonly<Record<string, number>>) => {
    const [told] = found(
      'edge-without-grommet',
      about({
        content: ({ shop, vehicle, parts }) => {
          const pass = one(entry(vehicle.routes, 'left-sill').passes, ({ zone }) => zone === 'sill');
          Object.assign(pass, { edge: true, 'through-hole': '20 mm' });
          const rubber = { kind: 'grommet', title: 'Grommet', bore: '28 mm', panel: '1.5 mm' } as const;
          parts.wide = { ...rubber, hole: '32 mm' };
          parts.wider = { ...rubber, hole: '38 mm' };
          parts.narrow = { ...rubber, hole: '30 mm', bore: '8 mm' };
          shop.stock = Object.fromEntries(Object.entries(stock).map(([id, pieces]) => [id, { pieces }]));
        },
        plan: (plan) => {
          run(plan).wires = ['main'];
          run(plan).grommets = [{ zone: 'sill', holeM: 0.02, part: null }];
        },
      }),
    );
    return told?.remedy;
  };

  test('is opened for the smallest one that the bundle goes through, and first for one that is on the shelf', () => {
    expect(remedy({})).toMatch(/ for wide \(0 in stock\)/);
    expect(remedy({ wide: 1, wider: 4 })).toMatch(/ for wide \(1 in stock\)/);
    expect(remedy({ wider: 4 })).toMatch(/ for wider \(4 in stock\)/);
    expect(remedy({ narrow: 4 })).toMatch(/ for wide \(0 in stock\)/);
  });
});

describe('the bundle at an edge', () => {
  const at = (shortOf: boolean) =>
    found(
      'edge-without-grommet',
      about({
        content: ({ vehicle, shop }) => {
          const pass = one(entry(vehicle.routes, 'left-sill').passes, ({ zone }) => zone === 'sill');
          Object.assign(pass, { edge: true, 'through-hole': '20 mm' });
          shop.stock = { 'red-8': { reels: ['3 ft'] } };
        },
        plan: (plan) => {
          run(plan).wires = ['main', 'radio-signal'];
          run(plan).grommets = [{ zone: 'sill', holeM: 0.02, part: null }];
          const size = { label: '8 AWG', awg: '8', areaMm2: 8.37 };
          const main = one(plan.power.conductors, ({ id }) => id === 'main');
          if (shortOf) main.shortOf = { part: 'red-8', size };
        },
      }),
    )[0];

  test('is told with its conductors and their sizes, the thickest first', () => {
    expect(at(false)?.message).toMatch(
      /^left passes .* fits its bundle of .* \(main \S+ AWG, radio-signal \S+ AWG\)/,
    );
    expect(at(false)?.remedy).not.toContain('order');
  });

  test('is told to be thick for want of a reel first', () => {
    expect(at(true)?.message).toMatch(
      /^main is .* since no length of red-8 on the shelf is long enough \(8 AWG would do\).* the longest there is 3 ft .*\. left passes /,
    );
    expect(at(true)?.remedy).toMatch(/^order red-8 for main, .*; or add a grommet/);
  });
});

describe('an edge that something guards', () => {
  const edges = (own: boolean) =>
    found(
      'edge-without-grommet',
      about({
        content: ({ vehicle }) => {
          for (const pass of entry(vehicle.routes, 'left-sill').passes) pass.edge = true;
          Object.assign(entry(vehicle.routes, 'left-sill').passes[0] ?? {}, { 'through-hole': '20 mm' });
        },
        plan: (plan) => {
          run(plan).wires = ['main'];
          run(plan).grommets = [
            { zone: 'engine-bay', holeM: 0.02, part: null, ...(own && { own }) },
            { zone: 'sill', holeM: null, part: null },
          ];
        },
      }),
    );

  // What has no hole is guarded by trim; power in a bare hole is chafed through.
  test('counts among the grommets, and chafes nothing, where it is the own one of the vehicle', () => {
    expect(edges(true)).toEqual([expect.objectContaining({ level: 'caution' })]);
    expect(edges(true)[0]?.message).toMatch(/passes 2 sharp edges with 1 grommet:/);
    expect(edges(false)).toEqual([expect.objectContaining({ level: 'stop' })]);
    expect(edges(false)[0]?.message).toMatch(/passes 2 sharp edges with 0 grommets:/);
  });
});

describe('a length that is shorter than its way', () => {
  const told = (units: 'inch' | 'millimetre', change: (content: Written) => void) =>
    found(
      'length-under-run',
      aboutContent((content) => {
        content.shop.units = units;
        change(content);
      }),
    );
  const written = (length: string) => (content: Written) => {
    entry(content.job.links, 'main').length = length;
  };

  // 1 m of engine bay and 3 m of sill. 4 m are 157.48 in: 157 1/2 in is the next sixteenth.
  test('is answered with the next mark of the tape that is no shorter', () => {
    const [inches] = told('inch', written('3.99 m'));
    expect(inches).toMatchObject({ value: 3.99, limit: 4 });
    expect(inches?.advice).toEqual([[{ path: '/links/main/length', value: '157 1/2 in' }]]);
    expect(inches?.remedy).toMatch(/ and write length: 157 1\/2 in or more$/);
    const [millimetres] = told('millimetre', written('3.99 m'));
    expect(millimetres?.advice).toEqual([[{ path: '/links/main/length', value: '4000 mm' }]]);
    expect(told('inch', written('4 m'))).toEqual([]);
  });

  test('of a lead that is made so is answered with a longer lead', () => {
    const made = (length: string) => (content: Written) => {
      partIn(content, 'nine-wire', 'cable')['made-length'] = length;
      content.job.cables = { phono: { part: 'nine-wire' } };
      Object.assign(entry(content.job.links, 'radio-signal'), { cable: 'phono', conductors: ['white'] });
    };
    const [short] = told('millimetre', made('2.9 m'));
    expect(short).toMatchObject({ path: '/links/radio-signal', remedy: 'name a lead of 3000 mm or more' });
    expect(told('millimetre', made('3 m'))).toEqual([]);
  });
});

describe('a spare conductor', () => {
  const told = (turnOnRun: string | null) => {
    const [found1] = found(
      'cable-conductor-spare',
      about({
        plan: (plan) => {
          Object.assign(wire(plan, 'radio-signal'), { cable: 'trunk', run: 'front' });
          Object.assign(wire(plan, 'radio-rem'), { run: turnOnRun });
          plan.cables = [
            {
              ...{ id: 'trunk', part: 'nine-wire', lengthM: 3 },
              conductors: [
                { name: 'white', colour: 'WH', size: sized('18'), wire: 'radio-signal' },
                { name: 'blue', colour: 'BU', size: sized('18'), wire: null },
              ],
            },
          ];
        },
      }),
    );
    return found1?.remedy;
  };

  test('is offered to the turn-on lead that lies beside it, and to none in another run', () => {
    expect(told('front')).toMatch(/^use one for radio-rem; cut spare ends back/);
    expect(told('rear')).toMatch(/^cut spare ends back/);
    expect(told(null)).toMatch(/^cut spare ends back/);
  });
});

test('only a fuse is passed by: a relay whose contact is open protects nothing anyway', () => {
  const told = found(
    'fuse-bypassed',
    aboutContent(({ job }) => {
      job.devices.relay = { part: 'relay', in: 'bay' };
      job.links['relay-feed'] = { from: 'battery.POS', to: 'relay.30', length: '6 in' };
      entry(job.links, 'amp-feed').from = 'battery.POS';
    }),
  );
  expect(told).toEqual([]);
});

test('a ground point of the body is no device that a route must end at', () => {
  const told = found(
    'route-ends-elsewhere',
    aboutContent(({ job, vehicle }) => {
      entry(vehicle.routes, 'right-sill').ends = ['dash', 'boot'];
      job.runs = { ...job.runs, right: { route: 'right-sill', links: ['radio-signal', 'radio-ground'] } };
    }),
  );
  expect(told).toEqual([]);
});

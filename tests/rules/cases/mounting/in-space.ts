import type { PlanPlacement } from '../../../../lib/model/plan/index.ts';
import type { Case } from '../../../../lib/rules/rule.ts';
import { about, entry, partIn } from '../../case.ts';
import { board, space } from '../../changes.ts';
import type { Written } from '../../content.ts';
import type { RuleCases } from '../../rule-case.ts';

type Rooms = PlanPlacement['keepClear'];

/**
 * The amplifier, 100 by 100 by 50 mm, on the board of 12 mm in its space of 800 by 500 by 200 mm, the datum in the low
 * corner: its right stands at 110 mm from the left wall.
 */
const placed = (
  at: Partial<PlanPlacement>,
  content: (content: Written) => void = () => {},
  more: (made: ReturnType<typeof board>) => void = () => {},
): Case =>
  about({
    content,
    plan: (plan) => {
      board(plan).placements = [
        {
          ...{
            item: 'amp',
            xM: 0.01,
            yM: 0.1,
            turnDeg: 0,
            widthM: 0.1,
            depthM: 0.1,
            heightM: 0.05,
            raisedM: 0,
          },
          ...{ keepClear: [], chosen: 'given', ...at },
        },
      ];
      more(board(plan));
    },
  });

const hand = (side: 'left' | 'right' | 'top' | 'bottom'): Rooms => [
  { kind: 'control', side, depthM: 0.0762 },
];
const driver = (side: 'left' | 'right' | 'top' | 'bottom', kind: 'tool' | 'connector' = 'tool'): Rooms => [
  { kind, side, depthM: kind === 'tool' ? 0.1524 : 0.0508 },
];
type Bounds = NonNullable<Written['vehicle']['spaces'][string]['bounds']>;
const bounded = (bounds: Bounds) => (content: Written) => {
  space(content).bounds = bounds;
};
/** A block so far from the left, standing out by so much, at the height of the amplifier. */
const block = (x: string, out: string) => (content: Written) => {
  space(content).obstacles = {
    hinge: { x, y: '120 mm', width: '40 mm', height: '60 mm', 'stands-out': out, what: 'hinge' },
  };
};
const knobOnFace = (bounds: Bounds) => (content: Written) => {
  partIn(content, 'two-channel', 'amplifier').controls = {
    LEVEL: { what: 'gain', form: 'knob', panel: 'face', safe: 'down', why: 'it is loud' },
  };
  bounded(bounds)(content);
};

/** The cover of a jack, 100 by 80 mm, in the low corner of the space; so much room is needed before it. */
const jack = (before: string, must: boolean) => (content: Written) => {
  space(content)['keep-reachable'] = {
    jack: {
      x: '100 mm',
      y: '100 mm',
      width: '100 mm',
      height: '80 mm',
      before,
      must,
      what: 'cover of the jack',
    },
  };
};
const corner = (xM: number, yM: number) => ({ xM, yM, bulge: 0 });
const windowed = (fromM: number, toM: number) => (made: ReturnType<typeof board>) => {
  made.cutouts = [[corner(fromM, fromM), corner(fromM, toM), corner(toM, toM), corner(toM, fromM)]];
};

const spare = (must: boolean) => ({ 'spare-wheel': { must, what: 'spare wheel' } });
/** The boot, with the subwoofer and its box, over the spare wheel. */
const overSpare = (must: boolean): Case =>
  about({
    content: ({ vehicle }) => {
      entry(vehicle.places, 'boot')['lies-over'] = spare(must);
    },
  });

/** The amplifier without holes for screws, held as told. */
const held = (how?: 'strap' | 'tape' | 'bracket', mass = '1 kg', holes = false) =>
  placed({}, (content) => {
    const part = partIn(content, 'two-channel', 'amplifier');
    part.mass = mass;
    part['mounting-holes'] = holes ? [{ x: '5 mm', y: '5 mm', diameter: '5 mm' }] : [];
    const amp = entry(content.job.devices, 'amp');
    if (how !== undefined) amp.held = how;
  });

/** The same amplifier at a place of the vehicle. */
const loose = (how?: 'strap' | 'tape', mass = '1 kg', holes = false) =>
  about({
    content: (content) => {
      const part = partIn(content, 'two-channel', 'amplifier');
      part.mass = mass;
      part['mounting-holes'] = holes ? [{ x: '5 mm', y: '5 mm', diameter: '5 mm' }] : [];
      const amp = entry(content.job.devices, 'amp');
      delete amp.on;
      delete amp.at;
      amp.in = 'boot';
      if (how !== undefined) amp.held = how;
    },
  });

const bracketed = () =>
  placed({}, (content) => {
    partIn(content, 'two-channel', 'amplifier')['bracket-holes'] = [
      { x: '-8 mm', y: '50 mm', diameter: '5 mm' },
    ];
    entry(content.job.devices, 'amp').held = 'bracket';
  });

/** Air that the maker of the amplifier asks for over it. */
const airOver = (face: string, bounds: Bounds) =>
  placed({}, (content) => {
    partIn(content, 'two-channel', 'amplifier').air = { face };
    bounded(bounds)(content);
  });

/** The box of the subwoofer in the boot, and the subwoofer in it, held as told. */
const boxed =
  (box?: 'strap' | 'hook-and-loop', sub?: 'bracket', mass = '12 kg') =>
  (): Case =>
    about({
      content: (content) => {
        partIn(content, 'vented', 'enclosure').mass = mass;
        const { devices } = content.job;
        delete entry(devices, 'box').held;
        if (box !== undefined) entry(devices, 'box').held = box;
        if (sub !== undefined) entry(devices, 'sub').held = sub;
      },
    });

export const inSpaceCases = {
  // Common practice, no source: 3 in (76.2 mm) for a hand. The left wall stands 10 mm from the amplifier.
  'control-before-wall': {
    fires: [
      {
        name: '10 mm to a wall',
        about: () => placed({ keepClear: hand('left') }, bounded({ left: 'wall' })),
        level: 'stop',
        subject: 'amp',
        path: '/devices/amp/at',
        says: /10 mm .* are free on the left of amp up to the left wall of well; a hand needs .*3 in/,
      },
      {
        name: '10 mm to an edge of which nothing is told',
        about: () => placed({ keepClear: hand('left') }),
        level: 'caution',
        subject: 'amp',
      },
      {
        name: 'a knob at the top, 60 mm below the ceiling',
        about: () => placed({ yM: 0.34, keepClear: hand('top') }, bounded({ top: 'wall' })),
        level: 'stop',
        subject: 'amp',
      },
      {
        name: 'a hinge 70 mm before it',
        about: () => placed({ keepClear: hand('right') }, block('180 mm', '40 mm')),
        level: 'stop',
        subject: 'amp',
        says: /up to hinge/,
      },
      {
        name: 'a knob on the face, 188 mm less 50 mm of the space left, under a seat 62 mm away',
        about: () => placed({ heightM: 0.126 }, knobOnFace({ front: 'wall' })),
        level: 'stop',
        subject: 'amp',
        says: /62 mm .* are free before the face/,
      },
    ],
    quiet: [
      {
        name: 'the edge is open',
        about: () => placed({ keepClear: hand('left') }, bounded({ left: 'open' })),
      },
      {
        name: '77 mm to the wall',
        about: () => placed({ xM: 0.077, keepClear: hand('left') }, bounded({ left: 'wall' })),
      },
      { name: 'the knob on the other side', about: () => placed({ keepClear: hand('right') }) },
      {
        name: 'a hinge that is lower than the board',
        about: () => placed({ keepClear: hand('right') }, block('180 mm', '12 mm')),
      },
      {
        name: 'a hinge 80 mm away',
        about: () => placed({ keepClear: hand('right') }, block('190 mm', '40 mm')),
      },
      {
        name: 'a knob on the face where trim comes off',
        about: () => placed({ heightM: 0.126 }, knobOnFace({})),
      },
      {
        name: 'the same behind a lid, which is off in service',
        about: () => placed({ heightM: 0.126 }, knobOnFace({ front: 'lid' })),
      },
      {
        name: 'the same with 80 mm before it',
        about: () => placed({ heightM: 0.108 }, knobOnFace({ front: 'wall' })),
      },
    ],
  },
  // Common practice, no source: 6 in straight for set screws, 2 in for plugs.
  'tool-room-before-wall': {
    fires: [
      {
        name: 'set screws 100 mm from a wall',
        about: () => placed({ xM: 0.1, keepClear: driver('left') }, bounded({ left: 'wall' })),
        level: 'caution',
        subject: 'amp',
        says: /a straight tool needs .*6 in/,
      },
      {
        name: 'set screws that lack less than a whole millimetre: what lacks can be read',
        about: () => placed({ xM: 0.1515, keepClear: driver('left') }, bounded({ left: 'wall' })),
        level: 'caution',
        subject: 'amp',
        says: /151 mm .* are free .* a straight tool needs .*152 mm/,
      },
      {
        name: 'set screws that lack a fifth of a millimetre',
        about: () => placed({ xM: 0.1522, keepClear: driver('left') }, bounded({ left: 'wall' })),
        level: 'caution',
        subject: 'amp',
        says: /152\.2 mm .* are free .* a straight tool needs .*152\.4 mm/,
      },
      {
        name: 'plugs 10 mm from it',
        about: () => placed({ keepClear: driver('left', 'connector') }),
        level: 'caution',
        subject: 'amp',
        says: /plugs and bends need .*2 in/,
        toDo: /or tighten it on the bench/,
      },
      {
        name: 'set screws that take wires from the vehicle, which are joined once the board is in',
        about: () => placed({ yM: 0.1, keepClear: driver('bottom') }, bounded({ bottom: 'wall' })),
        level: 'caution',
        subject: 'amp',
        toDo: /^turn or move amp; .* are joined there once main is in, so that the bench is no way out: or bring them to a joint/,
      },
    ],
    quiet: [
      {
        name: 'plugs 51 mm from it',
        about: () => placed({ xM: 0.051, keepClear: driver('left', 'connector') }),
      },
      {
        name: 'an open edge',
        about: () => placed({ keepClear: driver('left') }, bounded({ left: 'open' })),
      },
      {
        name: 'with controls there the side is told once',
        about: () => placed({ keepClear: [...hand('left'), ...driver('left')] }),
      },
    ],
  },
  // The vehicle's file: what has to be reached, and the room before it. The board stands on its plane, 12 mm thick.
  'area-covered': {
    fires: [
      {
        name: 'a jack that must be reached, behind the board',
        about: () => placed({ xM: 0.35 }, jack('150 mm', true)),
        level: 'stop',
        subject: 'jack',
        path: '/boards/main',
        says: /main covers 100 % of jack in well, which must stay reachable/,
      },
      {
        name: 'one that should be',
        about: () => placed({ xM: 0.35 }, jack('150 mm', false)),
        level: 'caution',
        subject: 'jack',
      },
      {
        name: 'a window over half of it',
        about: () => placed({ xM: 0.35 }, jack('150 mm', true), windowed(0.15, 0.25)),
        level: 'stop',
        subject: 'jack',
      },
      {
        name: 'a window over all of it, and the amplifier over the window',
        about: () => placed({ xM: 0.1 }, jack('150 mm', true), windowed(0.09, 0.21)),
        level: 'stop',
        subject: 'jack',
        path: '/devices/amp/at',
        says: /amp covers/,
      },
      {
        name: 'a box over the spare wheel',
        about: () => overSpare(true),
        level: 'stop',
        subject: 'spare-wheel',
        path: '/devices/sub/in',
        says: /sub and box stand in boot, which lies over spare-wheel/,
      },
      {
        name: 'one that is wished to be free',
        about: () => overSpare(false),
        level: 'caution',
        subject: 'spare-wheel',
      },
    ],
    quiet: [
      {
        name: 'a window over all of it',
        about: () => placed({ xM: 0.35 }, jack('150 mm', true), windowed(0.09, 0.21)),
      },
      {
        name: 'the amplifier raised above what it takes',
        about: () => placed({ xM: 0.1, raisedM: 0.14 }, jack('150 mm', true), windowed(0.09, 0.21)),
      },
      { name: 'nothing to be reached', about: () => about() },
      {
        name: 'a spare wheel below a place where nothing stands',
        about: () =>
          about({
            content: ({ vehicle }) => {
              vehicle.places = {
                ...vehicle.places,
                floor: { title: 'Floor', zone: 'cargo', side: 'right', 'lies-over': spare(true) },
              };
            },
          }),
      },
      {
        name: 'a board beside it',
        about: () =>
          placed({ xM: 0.35 }, jack('150 mm', true), (made) => {
            made.datumInSpace = { xM: 0.21, yM: 0 };
          }),
      },
    ],
  },
  // Common practice, no source: tape alone holds 250 g.
  // Common practice, no source: a box is bolted or strapped; tape holds 0.25 kg.
  'box-not-held': {
    fires: [
      {
        name: 'a box that nothing is told to hold',
        about: boxed(),
        level: 'caution',
        subject: 'box',
        says: /nothing says what holds box, .* at boot/,
        toDo: /write held: strap, bracket or clamp at box/,
      },
      {
        name: 'a box that hook-and-loop holds',
        about: boxed('hook-and-loop'),
        level: 'caution',
        subject: 'box',
        says: /is held at boot by hook-and-loop alone/,
      },
    ],
    quiet: [
      { name: 'a box with a strap over it', about: boxed('strap') },
      { name: 'told at the speaker in it', about: boxed(undefined, 'bracket') },
      { name: 'a box of 0.2 kg', about: boxed(undefined, undefined, '200 g') },
    ],
  },
  'part-not-held': {
    fires: [
      {
        name: 'no holes, and nothing said',
        about: () => held(),
        level: 'caution',
        subject: 'amp',
        path: '/devices/amp',
        says: /no mounting holes/,
      },
      {
        name: '1 kg on tape',
        about: () => held('tape'),
        level: 'caution',
        subject: 'amp',
        says: /by tape alone/,
      },
      {
        name: 'a bracket whose screws go nobody knows where',
        about: () => held('bracket'),
        level: 'caution',
        subject: 'amp',
        says: /by a bracket, and nothing says where its screws go/,
      },
      { name: '0.26 kg on tape', about: () => held('tape', '0.26 kg'), level: 'caution', subject: 'amp' },
      {
        name: 'no holes, and nothing said, off the board',
        about: () => loose(),
        level: 'caution',
        subject: 'amp',
        says: /nothing says what holds its 1 kg at boot$/,
      },
      {
        name: 'tape off the board',
        about: () => loose('tape'),
        level: 'caution',
        subject: 'amp',
        says: /at boot by tape alone/,
      },
    ],
    quiet: [
      { name: 'a strap', about: () => held('strap') },
      { name: 'a strap off the board', about: () => loose('strap') },
      { name: '0.25 kg off the board', about: () => loose(undefined, '0.25 kg') },
      { name: 'holes off the board', about: () => loose(undefined, '1 kg', true) },
      { name: '0.25 kg on tape', about: () => held('tape', '0.25 kg') },
      { name: 'holes', about: () => held(undefined, '1 kg', true) },
      { name: 'a bracket, and where it is screwed down', about: () => bracketed() },
    ],
  },
  // The face stands at 50 mm before the board; the board of 12 mm stands before the depth of 200 mm of the space.
  'air-over-short': {
    fires: [
      {
        name: '1 mm less than its maker asks for',
        about: () => airOver('139 mm', {}),
        level: 'caution',
        subject: 'amp',
        path: '/devices/amp/at',
        says: /over amp, .*138 mm.* are free up to the front of well; its maker asks for .*139 mm/,
      },
      {
        name: 'a wall in front',
        about: () => airOver('139 mm', { front: 'wall' }),
        level: 'caution',
        subject: 'amp',
      },
      {
        name: 'a lid that is shut in use',
        about: () => airOver('139 mm', { front: 'lid' }),
        level: 'caution',
        subject: 'amp',
      },
    ],
    quiet: [
      { name: 'just what its maker asks for', about: () => airOver('138 mm', {}) },
      { name: 'a front that is open', about: () => airOver('250 mm', { front: 'open' }) },
      { name: 'a maker who asks for none', about: () => placed({}) },
    ],
  },
} satisfies RuleCases;

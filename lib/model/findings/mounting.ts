import type { FindingEntry } from './entry.ts';
import { commonPractice, defaultSource, geometry, partData } from './source.ts';

/** How a board is held, what is behind it, and where the vehicle has room for it. */
export const mountingFindings = {
  'no-place-for-board': {
    asks: 'A board that leaves its place open has a free one in its space.',
    levels: ['stop'],
    ...geometry,
  },
  'space-too-small': {
    asks: 'A board with its parts goes into the outline of its space.',
    levels: ['stop', 'caution'],
    ...commonPractice,
  },
  'space-too-shallow': {
    asks: 'A board with its parts goes into the depth of its space.',
    levels: ['stop', 'caution'],
    ...commonPractice,
  },
  'obstacle-in-the-way': {
    asks: 'A board with its parts keeps clear of what is in its space.',
    levels: ['stop', 'caution'],
    ...commonPractice,
  },
  'held-by-trim': {
    asks: 'A board is fixed to sound points and not held by trim or carpet alone.',
    levels: ['stop'],
    ...commonPractice,
  },
  'board-not-held': {
    asks: 'The fixings hold a board against being tipped or turned.',
    levels: ['stop'],
    ...commonPractice,
  },
  'fixings-too-weak': {
    asks: 'The fixings bear the board with its parts in a crash.',
    levels: ['stop'],
    ...defaultSource('retention'),
  },
  'first-mode-low': {
    asks: 'The first natural frequency of the loaded board is at least {first-mode}, beside a subwoofer {first-mode-bass}.',
    levels: ['stop', 'caution', 'note'],
    ...defaultSource('first-mode'),
  },
  'retention-low': {
    asks: 'The fixings of a board hold {retention} times its weight forward.',
    levels: ['caution', 'note'],
    ...defaultSource('retention'),
  },
  'board-creeps': {
    asks: 'A board that lies does not come to sag more than {sag-creep} as its sheet creeps.',
    levels: ['caution'],
    ...defaultSource('sag-creep'),
  },
  'height-not-in-stock': {
    asks: 'Each height that a board or a part stands at is made of sheet, spacers or packing in stock.',
    levels: ['caution'],
    ...commonPractice,
  },
  'rib-off-board': {
    asks: 'A rib lies on the board along its whole length, and over no cut-out.',
    levels: ['stop'],
    ...geometry,
  },
  'rib-in-the-way': {
    asks: 'A rib keeps off fixings and their spacers, open holes, parts on its face and other ribs.',
    levels: ['stop', 'caution'],
    ...commonPractice,
  },
  'rib-without-room': {
    asks: 'Between a rib and the panel behind, or the front of the space, are {rib-clearance}.',
    levels: ['stop', 'caution'],
    ...commonPractice,
  },
  'rib-not-made': {
    asks: 'The section of a rib is whole layers of its sheet, on edge or flat.',
    levels: ['stop'],
    ...geometry,
  },
  'rib-not-fastened': {
    asks: 'A rib has screws that bite {rib-screw-bite} and stay inside it, and glue where it is glued.',
    levels: ['caution'],
    ...commonPractice,
  },
  'hole-before-hazard': {
    asks: 'Behind each drilled hole is no tank, no line and no airbag.',
    levels: ['stop', 'caution'],
    ...commonPractice,
  },
  'fixing-too-long': {
    asks: 'A fixing does not reach past the free depth behind its point.',
    levels: ['stop'],
    ...commonPractice,
  },
  'fixing-misfits-point': {
    asks: 'A fixing has the thread of its sound point, and is a bolt or a screw for it.',
    levels: ['stop'],
    ...partData,
  },
  'point-not-made': {
    asks: 'A sound point or ground point that is still to be made has a rivet nut of the catalogue, with its thread, its hole and room behind the panel.',
    levels: ['stop'],
    ...partData,
  },
  'fixing-too-short': {
    asks: 'A bolt reaches through board and spacer, and {thread-engagement} of its diameters deep into its thread; under {thread-engagement-limit} it stops.',
    levels: ['stop', 'caution'],
    ...defaultSource('thread-engagement'),
  },
  'head-pulls-through': {
    asks: 'The head or washer of a screw is wider than the hole that it holds by.',
    levels: ['stop', 'caution'],
    ...partData,
  },
  'part-screw-unfit': {
    asks: 'A screw that is named for the parts of a board bites {screw-bite} in it, and does not reach past what is free behind it.',
    levels: ['caution'],
    ...defaultSource('screw-bite'),
  },
  'part-screw-through': {
    asks: 'A screw that holds a part bites {screw-bite} in the board and ends {screw-skin} short of its far face.',
    levels: ['note', 'caution'],
    ...defaultSource('screw-skin'),
  },
  'board-on-rubber': {
    asks: 'A board whose figures are to hold stands on hard spacers: on bushes of rubber it swings lower and is not tightened by torque.',
    levels: ['note'],
    ...commonPractice,
  },
  'part-not-held': {
    asks: 'A part has holes for screws, or it is written what holds it, and on a board where that is screwed down; a heavy one is not stuck on alone.',
    levels: ['caution'],
    ...commonPractice,
  },
  'box-not-held': {
    asks: 'It is written what holds an enclosure at its place, and tape or hook-and-loop alone holds at most {stuck-mass}.',
    levels: ['caution'],
    ...defaultSource('stuck-mass'),
  },
  'area-covered': {
    asks: 'What has to be reached in a vehicle (jack, spare wheel, service plug, fuses, drains) is reached with the board in.',
    levels: ['stop', 'caution'],
    source: "the vehicle's measures",
  },
  'control-before-wall': {
    asks: 'A hand comes to each control with the board in its space.',
    levels: ['stop', 'caution'],
    ...defaultSource('tool-room-knob'),
  },
  'tool-room-before-wall': {
    asks: 'Tools, plugs and bends have their room with the board in its space.',
    levels: ['caution'],
    ...defaultSource('tool-room-set-screw'),
  },
  'place-too-small': {
    asks: 'What stands in one place of the vehicle goes into it, alone and together.',
    levels: ['stop', 'caution'],
    source: "the vehicle's measures",
  },
  'speaker-too-deep': {
    asks: 'A speaker goes into the depth of its place.',
    levels: ['stop', 'caution'],
    source: "the vehicle's measures",
  },
  'fibreboard-in-wet-zone': {
    asks: 'Fibreboard in a wet zone is sealed.',
    levels: ['caution'],
    ...commonPractice,
  },
  'board-low-in-wet-zone': {
    asks: 'A board in a wet zone is raised {wet-raise} off its panel, with drip loops and the drain clear.',
    levels: ['caution', 'note'],
    ...defaultSource('wet-raise'),
  },
  'amplifier-upside-down': {
    asks: 'No amplifier hangs upside down.',
    levels: ['caution'],
    ...commonPractice,
  },
  'air-too-warm': {
    asks: 'The air round a device stays below what its maker allows, or {most-ambient} where that is silent, with the losses of everything in its space.',
    levels: ['stop', 'caution'],
    restsOnDraw: true,
    ...defaultSource('most-ambient'),
  },
  'fan-not-fitted': {
    asks: 'A fan that the air of a space is counted with is in the vehicle already, or among the devices of the job with its supply.',
    levels: ['stop'],
    ...commonPractice,
  },
  'fan-cools-nothing': {
    asks: 'A fan of a job moves the air of a space that has a board.',
    levels: ['caution'],
    ...commonPractice,
  },
  'sheet-too-warm': {
    asks: 'A board is of a sheet that stands the warmth of its zone, and of the air of its space.',
    levels: ['stop', 'caution'],
    source: "the part's own data",
  },
} as const satisfies Readonly<Record<string, FindingEntry>>;

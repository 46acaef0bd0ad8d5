import type { FindingEntry } from './entry.ts';
import { commonPractice, geometry, partData, shopStock } from './source.ts';

/** Where parts stand on a board, and the ways of the wires between them. */
export const layoutFindings = {
  'placement-of-nothing': {
    asks: 'Each placement is of a part that is mounted on the board.',
    levels: ['stop'],
    ...geometry,
  },
  'board-too-small-for-parts': {
    asks: 'What stands on a board, proposed parts too, has less area than the board.',
    levels: ['stop'],
    ...geometry,
  },
  'item-does-not-fit': {
    asks: 'Each part has a place on its board.',
    levels: ['stop'],
    ...geometry,
  },
  'no-sheet-for-rails': {
    asks: 'The stock gives the rails of the parts that are raised over others.',
    levels: ['stop'],
    ...shopStock,
  },
  'item-outside-board': {
    asks: 'A part stands within the outline of its board.',
    levels: ['stop'],
    ...geometry,
  },
  'item-over-opening': {
    asks: 'A part that lies on the board stands over no opening of it.',
    levels: ['caution'],
    ...geometry,
  },
  'item-over-hole': {
    asks: 'A part that lies on the board stands over no hole of it.',
    levels: ['caution'],
    ...geometry,
  },
  'item-over-fixing': {
    asks: 'A part that lies on the board stands over no head of a fixing.',
    levels: ['caution'],
    ...commonPractice,
  },
  'mounting-hole-off-board': {
    asks: 'There is board behind each mounting hole of a part.',
    levels: ['stop'],
    ...geometry,
  },
  'items-overlap': {
    asks: 'No two parts stand in each other.',
    levels: ['stop'],
    ...geometry,
  },
  'part-gap-short': {
    asks: 'Between two parts is the room that they ask for.',
    levels: ['caution'],
    ...commonPractice,
  },
  'air-gap-short': {
    asks: 'A part that is cooled by air has its room for it, beside it and above.',
    levels: ['caution'],
    ...commonPractice,
  },
  'air-over-short': {
    asks: 'Over a part stays the air that its maker asks for, up to the front of its space.',
    levels: ['caution'],
    ...partData,
  },
  'control-covered': {
    asks: 'A hand or a straight tool comes to each control.',
    levels: ['stop'],
    ...commonPractice,
  },
  'control-under-part': {
    asks: 'No part stands over the room in front of the controls of another.',
    levels: ['caution'],
    ...commonPractice,
  },
  'face-covered': {
    asks: 'A face that has to be reached is open.',
    levels: ['stop'],
    ...geometry,
  },
  'bend-room-short': {
    asks: 'Plugs and bends have their room before a terminal.',
    levels: ['caution'],
    ...commonPractice,
  },
  'signal-end-faces-wrong-side': {
    asks: 'The signal end of a part faces the side that signal comes from.',
    levels: ['caution'],
    ...commonPractice,
  },
  'power-end-faces-wrong-side': {
    asks: 'The power end of a part faces the side that power comes from.',
    levels: ['caution'],
    ...commonPractice,
  },
  'wire-without-way': {
    asks: 'Each wire of a board has a way between parts, fixings and other wires.',
    levels: ['stop'],
    ...geometry,
  },
  'bend-too-tight': {
    asks: 'No bend on the way of a wire is tighter than {bend-diameters} outside diameters; one below {bend-diameters-limit} kinks it, and stops.',
    levels: ['stop', 'caution'],
    ...commonPractice,
  },
  'length-short-of-way': {
    asks: 'A wire whose length is given reaches along its way on the board.',
    levels: ['stop'],
    ...geometry,
  },
} as const satisfies Readonly<Record<string, FindingEntry>>;

import type { FindingEntry } from './entry.ts';
import { commonPractice, defaultSource, geometry } from './source.ts';

/** The outline as written, its cuts and holes, the sheet that it comes out of. */
export const boardFindings = {
  'outline-edge-without-length': {
    asks: 'No edge of the base shape is without length.',
    levels: ['stop'],
    ...geometry,
  },
  'outline-crosses-itself': {
    asks: 'The edges of the base shape meet at its corners only.',
    levels: ['stop'],
    ...geometry,
  },
  'outline-without-area': {
    asks: 'The base shape encloses an area.',
    levels: ['stop'],
    ...geometry,
  },
  'cut-without-size': {
    asks: 'Each size of a cut is above zero.',
    levels: ['stop'],
    ...geometry,
  },
  'cut-without-place': {
    asks: 'A cut names a corner, an edge or an end that the base shape has.',
    levels: ['stop'],
    ...geometry,
  },
  'cut-outside-board': {
    asks: 'A cut stays within the board.',
    levels: ['stop'],
    ...geometry,
  },
  'corner-cut-longer-than-edge': {
    asks: 'A corner cut is no longer than the edge that it is on.',
    levels: ['stop'],
    ...geometry,
  },
  'corner-radius-too-large': {
    asks: 'A radius has room at its corner.',
    levels: ['stop'],
    ...geometry,
  },
  'notch-wider-than-edge': {
    asks: 'A notch is no wider than the edge that it is in.',
    levels: ['stop'],
    ...geometry,
  },
  'notch-past-end-of-edge': {
    asks: 'A notch ends within the edge that it is in.',
    levels: ['stop'],
    ...geometry,
  },
  'slot-wider-than-long': {
    asks: 'A slot is longer than it is wide.',
    levels: ['stop'],
    ...geometry,
  },
  'board-in-pieces': {
    asks: 'The cuts leave the board in one piece.',
    levels: ['stop'],
    ...geometry,
  },
  'cuts-overlap': {
    asks: 'No two cuts take the same material.',
    levels: ['caution'],
    ...geometry,
  },
  'cut-not-resolved': {
    asks: 'The lines of a cut keep apart from those of the board and of other cuts.',
    levels: ['stop'],
    ...geometry,
  },
  'holes-run-together': {
    asks: 'No two holes run into each other.',
    levels: ['stop'],
    ...geometry,
  },
  'narrow-web': {
    asks: 'The narrowest web of a board is at least {web-good}; under {web-limit} it stops.',
    levels: ['stop', 'caution'],
    ...defaultSource('web-limit'),
  },
  'hole-off-board': {
    asks: 'Each hole lies in the board with its whole rim: not outside the outline, and in no cut-out.',
    levels: ['stop'],
    ...geometry,
  },
  'hole-near-edge': {
    asks: 'The rim of a hole is at least {hole-edge} from the edge.',
    levels: ['caution'],
    ...defaultSource('hole-edge'),
  },
  'hole-near-corner': {
    asks: 'In fibreboard the rim of a hole is at least {hole-corner} from a corner.',
    levels: ['caution'],
    ...defaultSource('hole-corner'),
  },
  'no-sheet-for-board': {
    asks: 'Some sheet in stock does for a board that leaves its sheet open.',
    levels: ['stop'],
    ...commonPractice,
  },
  'piece-larger-than-sheet': {
    asks: 'Each piece of a board comes out of its stock sheet.',
    levels: ['stop'],
    ...geometry,
  },
} as const satisfies Readonly<Record<string, FindingEntry>>;

import { commonPractice, geometry } from '../findings/source.ts';
import type { Computation } from './computation.ts';

const plateModel =
  'thin orthotropic plate by rectangular finite elements (Adini, Clough, Melosh), held in points by its fixings, items as loose mass';
const plate = [{ source: plateModel }, { source: plateModel, mark: 'mem' }] as const;

export const boardComputations = {
  'board-area': {
    computes: 'area of a board',
    formulas: ['outline - cut-outs - holes'],
    sources: [{ source: 'plane geometry: shoelace formula and circular segments' }],
    held: ['areas-in-flatten'],
    fields: ['boards[].outline[].…', 'boards[].holes[].…', 'boards[].centroid.…'],
  },
  'board-mass': {
    computes: 'mass of a board without its parts',
    formulas: ['area x thickness x density…'],
    sources: [{ source: 'mass of a body of even density' }],
    held: ['areas-in-flatten'],
  },
  'narrowest-web': {
    computes: 'narrowest web of a board',
    formulas: ['least distance across material between two of its lines'],
    sources: [{ source: 'plane geometry' }],
    held: ['webs-by-trial'],
  },
  'board-sag': {
    computes: 'how far a board sags with its parts on it',
    formulas: ['K w = m g, greatest w'],
    sources: plate,
    held: ['beams-and-plates'],
  },
  'board-sag-crept': {
    computes: 'how far a board that creeps comes to sag',
    formulas: ['sag x modulus / long-term modulus'],
    sources: plate,
    held: ['beams-and-plates'],
  },
  'board-first-mode': {
    computes: 'frequency at which a board resonates first',
    formulas: ['lower of 15.8 / sqrt(sag in mm) and the first mode of the plate'],
    sources: plate,
    held: ['beams-and-plates'],
  },
  'board-grain': {
    computes: 'which way the grain of a board runs',
    formulas: ['the stiffer way that comes out of the sheet, where the weaker one has too low a first mode'],
    sources: [{ source: 'the first mode of the board with its grain each way' }],
    held: ['beams-and-plates'],
  },
  'board-sheet': {
    computes: 'which sheet a board is cut from',
    formulas: ['lightest sheet in stock that …'],
    sources: [commonPractice],
    held: ['beams-and-plates'],
  },
  'board-place': {
    computes: 'where a board hangs in its space',
    formulas: ['…'],
    sources: [geometry, commonPractice],
    held: ['rooms-by-hand'],
  },
  'board-depth': {
    computes: 'what a board takes of the depth of its space',
    formulas: ['spacer + thickness + raised + height + room before it'],
    sources: [{ source: 'plane geometry' }],
    held: ['rooms-by-hand'],
    fields: ['boards[].depth.…'],
  },
  'raised-over-part': {
    computes: 'how high a part is raised over another',
    formulas: ['layers x thickness, at least height beneath + clearance; no room was found side by side'],
    sources: [commonPractice],
    held: ['rooms-by-hand'],
  },
  'rib-length': {
    computes: 'how long a rib runs',
    formulas: ['longest stretch of its line clear of edges, cut-outs, holes, fixings and obstacles'],
    sources: [{ source: 'plane geometry' }],
    held: ['rooms-by-hand'],
  },
  'rib-mass': {
    computes: 'mass of a rib',
    formulas: ['length x width x height x density'],
    sources: [{ source: 'mass of a body of even density' }],
    held: ['areas-in-flatten'],
  },
  'rib-bending': {
    computes: 'bending stiffness that a rib adds',
    formulas: ['…'],
    sources: [{ source: plateModel }],
    held: ['sections-by-roark'],
  },
  retention: {
    computes: 'load in a crash that the fixings of a board hold',
    formulas: ['1 g / (pull / pull-out + shear / shear strength)'],
    sources: [
      {
        source:
          'rigid board on an elastic group of fasteners: direct load shared evenly, moments by distance from the centre of the group (textbooks of machine design, eccentrically loaded bolted joints); shear over a spacer tips it on its edge; pull and shear uses added',
      },
    ],
    held: ['fasteners-by-statics'],
  },
  'fixing-torque': {
    computes: 'torque of a fixing or a ground bolt',
    formulas: ['least of bolt…'],
    sources: [
      { source: 'T = K F d, textbooks of machine design; limits: common practice, no source', mark: 'cp' },
    ],
    held: ['joints-by-hand'],
  },
  'layout-score': {
    computes: 'how good a layout is, part by part',
    formulas: ['the sum of its parts, each by its weight'],
    sources: [{ source: 'house judgement, no source', mark: 'cp' }],
    held: ['layouts-by-trial'],
    fields: [
      'boards[].proposals[].…',
      'boards[].placements[].…',
      'boards[].firstCrossings',
      'boards[].routes[].…',
    ],
  },
  'board-pieces': {
    computes: 'what lies below a board and its parts',
    formulas: ['layers of sheet, spacers and washers that make the height, fewest pieces first'],
    sources: [commonPractice],
    held: ['rooms-by-hand'],
    fields: ['boards[].pieces[].…', 'boards[].fixings[].…', 'boards[].ribs[].…'],
  },
} as const satisfies Readonly<Record<string, Computation>>;

import { commonPractice, partData } from '../findings/source.ts';
import type { Computation } from './computation.ts';

export const wiringComputations = {
  'wire-length': {
    computes: 'length that a conductor is cut to',
    formulas: ['…'],
    sources: [
      { source: 'as written, or measured along runs and board; loops by house rule' },
      { source: 'measured along the run', mark: 'cp' },
    ],
    held: ['ways-in-ngraph', 'redone-by-hand'],
    fields: ['branches[].legs[].…', 'boards[].routes[].lengthM', 'wires[].lengthM'],
  },
  'bundle-diameter': {
    computes: 'diameter of a bundle',
    formulas: ['D = the larger of d1 + d2 and, from three wires up, 1.25 * sqrt(sum of d^2)'],
    sources: [
      { source: 'packing of circles in a circle; allowance: common practice, no source', mark: 'cp' },
    ],
    held: ['packed-circles'],
  },
  'conductor-diameter': {
    computes: 'diameter of a conductor over its insulation',
    formulas: ['D = sqrt(4 * A / (pi * f)) + 2 * w'],
    sources: [partData, commonPractice],
    held: ['wire-outside'],
  },
  'bend-radius': {
    computes: 'radius that a conductor may be bent to',
    formulas: ['R = b * D'],
    sources: [commonPractice],
    held: ['redone-by-hand'],
  },
  'strip-length': {
    computes: 'how far an end is stripped',
    formulas: [
      '1.5 * sqrt(4 * A / pi), at least 6 mm',
      'the sleeve of the ferrule: 8 mm to 1 mm2, 12 mm to 6 mm2, 18 mm to 16 mm2, 22 mm above',
    ],
    sources: [commonPractice],
    held: ['redone-by-hand'],
  },
  'heat-shrink': {
    computes: 'length and bore of heat-shrink over an end',
    formulas: ['L = Lb + o; …'],
    sources: [commonPractice],
    held: ['redone-by-hand'],
  },
  'port-choice': {
    computes: 'which of several like ports a wire goes to',
    formulas: ['the port at which the wires of the board, as laid, cross least…'],
    sources: [{ source: 'house judgement, no source', mark: 'cp' }],
    held: ['ports-by-trial'],
  },
  'pick-quantity': {
    computes: 'what is taken of a part from the shelf, from which reel, and what is left there',
    formulas: [
      'the sum of what the job takes of it; cuts longest first, each from the shortest end that gives it',
    ],
    sources: [commonPractice],
    held: ['picks-added-up'],
    fields: ['pick[].…', 'offCuts[].…', 'nesting[].…', 'cables[].…'],
  },
  'work-time': {
    computes: 'how long work takes',
    formulas: [
      'the sum of the times of its pieces, by the shop or the house',
      'the longest chain of steps that wait for each other',
    ],
    sources: [commonPractice],
    held: ['picks-added-up'],
    fields: ['steps[].…', 'schedule.…'],
  },
  'reading-predicted': {
    computes: 'what a meter is foretold to read',
    formulas: ['…'],
    sources: [commonPractice],
    held: ['jobs-in-ngspice', 'paths-in-ngspice'],
  },
  'reading-limit': {
    computes: 'what a reading may be at least and at most',
    formulas: ['…'],
    sources: [commonPractice],
    held: ['jobs-in-ngspice', 'paths-in-ngspice'],
  },
} as const satisfies Readonly<Record<string, Computation>>;

import { commonPractice, partData } from '../findings/source.ts';
import type { Computation } from './computation.ts';

const shopPrices = { source: "the shop's own prices" };
const shopFigures = { source: "the shop's own prices, rate and shares" };

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
      '2.5 * sqrt(4 * A / pi), at least 6 mm',
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
  'estimate-part-cost': {
    computes: 'what a part costs on an estimate of the shop',
    formulas: ['cost = q * p, up to the next smallest unit of the currency'],
    sources: [shopPrices],
    held: ['estimates-by-hand'],
  },
  'estimate-parts': {
    computes: 'what the parts of a job cost together',
    formulas: ['the sum of the parts that have a price'],
    sources: [shopFigures],
    held: ['estimates-by-hand'],
  },
  'estimate-hours': {
    computes: 'how long a layer of the order of work takes, and was worked on',
    formulas: ['the sum of the minutes of its steps, one person', 'the sum of what was noted under hours:'],
    sources: [
      {
        source: 'the order of work; common practice, no source, where the shop wrote no time of its own',
        mark: 'cp',
      },
      { source: 'the job file' },
    ],
    held: ['estimates-by-hand'],
  },
  'estimate-labour': {
    computes: 'what hours of work cost',
    formulas: ['cost = t / 60 * r, up to the next smallest unit of the currency'],
    sources: [shopFigures],
    held: ['estimates-by-hand'],
  },
  'estimate-share': {
    computes: 'what is put on parts, and the tax on the whole',
    formulas: ['share * amount, up to the next smallest unit of the currency'],
    sources: [shopFigures],
    held: ['estimates-by-hand'],
  },
  'estimate-total': {
    computes: 'the total of an estimate',
    formulas: ['total = parts + markup + labour + tax'],
    sources: [shopFigures],
    held: ['estimates-by-hand'],
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

import { commonPractice } from '../findings/source.ts';
import type { Computation } from './computation.ts';

export const benchComputations = {
  'way-resistance': {
    computes: 'resistance of all on a way but its conductors',
    formulas: ['Ro = nl * rl + nj * rj + rb + Uf / In'],
    sources: [commonPractice],
    held: ['redone-by-hand', 'jobs-in-ngspice'],
  },
  'filter-level-butterworth': {
    computes: 'level behind a Butterworth filter',
    formulas: ['L = -10 * log10(1 + w^(2n)), w = …'],
    sources: [{ source: 'Butterworth 1930, maximally flat magnitude' }],
    held: ['ladders-in-ngspice'],
  },
  'filter-level-linkwitz-riley': {
    computes: 'level behind a Linkwitz-Riley filter',
    formulas: ['L = -20 * log10(1 + w^n), w = …'],
    sources: [{ source: 'Linkwitz 1976, two equal Butterworth filters in a row' }],
    held: ['paths-in-ngspice'],
  },
  'filter-level-bessel': {
    computes: 'level behind a Bessel filter',
    formulas: ['L = 20 * log10(|theta(0) / theta(j * w3 * w)|), w = …'],
    sources: [{ source: 'Thomson 1949, maximally flat delay; corner at half power' }],
    held: ['bessel-in-scipy'],
  },
  'filters-in-a-row': {
    computes: 'level behind filters in a row',
    formulas: ['L = the sum of the levels of the filters, at least … dB'],
    sources: [{ source: 'Definition of the level in dB' }],
    held: ['redone-by-hand'],
  },
  'length-in-inches': {
    computes: 'length in inches',
    formulas: ['L / 0.0254'],
    sources: [{ source: 'NIST SP 811: an inch is 25.4 mm exactly' }],
    held: ['redone-by-hand'],
  },
  'length-in-millimetres': {
    computes: 'length in millimetres',
    formulas: ['1000 * L'],
    sources: [{ source: 'SI: a millimetre is a thousandth of a metre' }],
    held: ['redone-by-hand'],
  },
} as const satisfies Readonly<Record<string, Computation>>;

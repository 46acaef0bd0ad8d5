import { circuitLaws, commonPractice } from '../findings/source.ts';
import type { Computation } from './computation.ts';

const level = { source: 'Definition of the level in dB' };
const levelAndData = { source: "Definition of the level in dB; the parts' data" };
const ohmsLaw = { source: "Ohm's law, P = V^2 / R" };
const amplifierData = { source: "the amplifier's data" };
const boundedData = {
  source: "the amplifier's data, bounded by Ohm's law; common practice, no source",
  mark: 'cp',
} as const;
const divider = { source: "Ohm's and Kirchhoff's laws (voltage divider)" };

export const audioComputations = {
  'channel-load': {
    computes: 'load that a channel sees',
    formulas: ['R = …; series: R = R1 + R2 + ...; parallel: 1/R = 1/R1 + 1/R2 + ...'],
    sources: [circuitLaws],
    held: ['coils-in-ngspice'],
    fields: ['audio.channels[].wirings[].…'],
  },
  'least-load': {
    computes:
      'the least that a channel sees over the heard band, where a filter in a lead lets a speaker in beside others',
    formulas: ['Z = min |Z(f)|, 20 Hz to 20 kHz; a coil R + j w L, a filter in a lead the ladder into its R'],
    sources: [{ source: `${circuitLaws.source}; IEC 60268-5` }],
    held: ['lead-filter-in-ngspice'],
  },
  'output-load': {
    computes: 'load that one output of a bridge sees',
    formulas: ['Rout = R / n, n outputs that share one load in opposite phase'],
    sources: [circuitLaws],
    held: ['audio-by-hand'],
  },
  'coil-power': {
    computes: 'power in one voice coil',
    formulas: ['Pcoil = share * P; the share goes as R in series, as 1/R in parallel'],
    sources: [circuitLaws],
    held: ['coils-in-ngspice'],
  },
  'power-at-load-rated': {
    computes: 'power of a channel into a load that its maker rates',
    formulas: ['P as published for R'],
    sources: [amplifierData],
    held: ['audio-by-hand'],
  },
  'power-at-load-between': {
    computes: 'power of a channel into a load between two that its maker rates',
    formulas: ['…'],
    sources: [boundedData],
    held: ['audio-by-hand'],
  },
  'power-at-load-beyond': {
    computes: 'power of a channel into a load beyond those that its maker rates',
    formulas: ['…'],
    sources: [boundedData],
    held: ['audio-by-hand'],
  },
  'power-at-supply': {
    computes: 'power of a channel at the voltage that its amplifier gets',
    formulas: ['Pa = P, the amplifier is regulated', 'Pa = P * (U / Ur)^2, at most P'],
    sources: [amplifierData, commonPractice],
    held: ['audio-by-hand'],
  },
  'gain-target-power': {
    computes: 'power that the gain of a channel is set for',
    formulas: [
      'P = the lesser of Pa (amplifier) and Ps (speakers)',
      'P = the lesser of Pa (amplifier) and Ps (speakers), times 10^(G / 10)',
    ],
    sources: [{ source: "the parts' data" }],
    held: ['audio-by-hand'],
  },
  'gain-target-voltage': {
    computes: 'voltage that the gain of a channel is set for',
    formulas: ['V = sqrt(P * R)'],
    sources: [ohmsLaw],
    held: ['audio-by-hand'],
  },
  'gain-meter-reading': {
    computes: 'what the meter shows when the gain is right',
    formulas: ['reading = V * 10^(L / 20), rounded down to 0.1 V; true RMS'],
    sources: [commonPractice],
    held: ['paths-in-ngspice'],
  },
  'path-level-at-tone': {
    computes: 'level of a path at the test tone, less its highest',
    formulas: [
      'L = the sum of the parts at f, less the highest level Lmax of the path after commissioning, at most 0…',
    ],
    sources: [{ source: 'Definition of the level in dB; the responses of the filters' }],
    held: ['paths-in-ngspice', 'ladders-in-ngspice'],
  },
  'clipping-voltage': {
    computes: 'voltage at which a channel clips',
    formulas: ['Vclip = sqrt(Pa * R)'],
    sources: [ohmsLaw],
    held: ['audio-by-hand'],
  },
  'clipping-margin-tone': {
    computes: 'margin to clipping at the test tone',
    formulas: ['margin = 20 * log10(Vclip / V)'],
    sources: [level],
    held: ['audio-by-hand'],
  },
  'clipping-margin-full-scale': {
    computes: 'margin to clipping at full scale',
    formulas: ['margin = 20 * log10(Vclip / V) - overlap'],
    sources: [level],
    held: ['audio-by-hand'],
  },
  'test-tone-frequency': {
    computes: 'tone that the gain is set with',
    formulas: ['f = …'],
    sources: [
      {
        source: 'ISO 266, third-octave tones (quoted from memory); common practice, no source',
        mark: 'mem',
      },
      commonPractice,
    ],
    held: ['paths-in-ngspice'],
  },
  'test-tone-level': {
    computes: 'level of the test tone',
    formulas: ['level = -overlap, against full scale'],
    sources: [commonPractice],
    held: ['audio-by-hand'],
  },
  'clean-voltage-of-power': {
    computes: 'greatest clean voltage of an output by its rated power',
    formulas: ['V = sqrt(P * R)'],
    sources: [ohmsLaw],
    held: ['audio-by-hand'],
  },
  'passed-voltage': {
    computes: 'what a line output of an amplifier passes on of its input',
    formulas: ['V = k * Vin', 'V = min(k * Vin, Vmost)'],
    sources: [amplifierData],
    held: ['audio-by-hand'],
  },
  'input-headroom': {
    computes: 'how far an input is from being overdriven',
    formulas: ['headroom = 20 * log10(… / …)'],
    sources: [levelAndData],
    held: ['audio-by-hand'],
  },
  'input-reserve': {
    computes: 'how far an input is above the least that it needs',
    formulas: ['reserve = 20 * log10(… / …)'],
    sources: [levelAndData],
    held: ['audio-by-hand'],
  },
  'level-difference': {
    computes: 'how far a channel plays below the loudest',
    formulas: ['below = Lmax - (other - loss)'],
    sources: [{ source: 'Levels in dB add along a path' }],
    held: ['audio-by-hand'],
  },
  'speaker-wire-resistance': {
    computes: 'resistance of the wire to a speaker, there and back',
    formulas: ['Rw = sum over the legs of 2 * L * r'],
    sources: [circuitLaws],
    held: ['speaker-wire-in-ngspice'],
  },
  'speaker-wire-loss': {
    computes: 'level that the wire to a speaker takes',
    formulas: ['loss = 20 * log10((R + Rw) / R)'],
    sources: [divider],
    held: ['speaker-wire-in-ngspice'],
  },
  'speaker-wire-heat': {
    computes: 'share of the power that the wire to a speaker turns into heat',
    formulas: ['share = Rw / (R + Rw)'],
    sources: [divider],
    held: ['speaker-wire-in-ngspice'],
  },
  'damping-at-terminals': {
    computes: 'damping factor at the speaker',
    formulas: ['D = R / (Ro + Rw), Ro = …Rd / factor', 'D = …'],
    sources: [{ source: "the amplifier's data; Ohm's and Kirchhoff's laws (voltage divider)" }, divider],
    held: ['speaker-wire-in-ngspice'],
  },
  'plug-resistance': {
    computes: 'range in which a meter reads at the speaker plug',
    formulas: ['…'],
    sources: [commonPractice, { source: "Ohm's law" }],
    held: ['audio-by-hand'],
  },
  'plug-resistance-with-wire': {
    computes: 'range in which a meter reads at the speaker plug, with its wire',
    formulas: ['R = Rcoils + Rwire, Rcoils the coils as wired and Rwire both conductors of the way to them'],
    sources: [{ source: "Ohm's law; range of the coils by common practice, no source", mark: 'cp' }],
    held: ['audio-by-hand'],
  },
  'speed-of-sound': {
    computes: 'speed of sound in the air of the cabin',
    formulas: ['c = 343.2 * sqrt((t + 273.15) / 293.15)'],
    sources: [{ source: 'ISO 9613-1' }],
    held: ['sound-textbook'],
  },
  'speaker-delay': {
    computes: 'delay of a speaker',
    formulas: ['t = 1000 * (dmax - d) / c'],
    sources: [{ source: 'Time of flight; c after ISO 9613-1' }],
    held: ['arrivals', 'sound-textbook'],
  },
  'speaker-delay-samples': {
    computes: 'delay of a speaker in samples',
    formulas: ['n = round(t * fs / 1000)'],
    sources: [{ source: 'Definition of the sampling rate' }],
    held: ['arrivals'],
  },
  'speaker-delay-residue': {
    computes: 'what whole samples leave of a delay',
    formulas: ['rest = t - 1000 * n / fs'],
    sources: [{ source: 'Definition of the sampling rate' }],
    held: ['arrivals'],
  },
  'shared-delay': {
    computes: 'delay of an output that several speakers share',
    formulas: ['t = (tmin + tmax) / 2'],
    sources: [{ source: 'Half-way between what the speakers on one output ask for' }],
    held: ['arrivals'],
  },
  'subsonic-corner': {
    computes: 'corner of the subsonic filter of a ported box',
    formulas: ['fs = k * fb'],
    sources: [commonPractice],
    held: ['audio-by-hand'],
  },
} as const satisfies Readonly<Record<string, Computation>>;

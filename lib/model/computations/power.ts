import { circuitLaws, commonPractice, partData } from '../findings/source.ts';
import type { Computation } from './computation.ts';

const cladStranded = 'ASTM B566, 10 % copper by volume (from memory); stranding: common practice, no source';
const solvedNetwork = { source: 'the solved network' };

export const powerComputations = {
  drop: {
    computes: 'voltage lost on the way to a device, and on its way back',
    formulas: ['V(…) - V(…); each element on the way drops its current times its resistance'],
    sources: [{ source: "Kirchhoff's voltage law; the elements of the network stand in its table" }],
    held: ['networks-in-ngspice', 'jobs-in-ngspice', 'balance-of-currents'],
    fields: ['power.points[].nodes[].voltageV', 'power.points[].elements[].…', 'power.points[].sources[].…'],
  },
  'drop-share': {
    computes: 'share of the supply that is lost on feed and return',
    formulas: ['(Uf + Ug + Ul) / U'],
    sources: [
      {
        source:
          'feed plus return, against the voltage for sizing; Ul: what other currents lift on the way, which is not relied on',
      },
    ],
    held: ['jobs-in-ngspice', 'redone-by-hand'],
  },
  'conductor-resistance': {
    computes: 'resistance of a metre of conductor',
    formulas: ['r = rho20 / A * k * (1 + alpha * (T - 20))', 'r = r20 * (1 + alpha * (T - 20))'],
    sources: [
      {
        source: 'IEC 60028, annealed copper 100 % IACS; stranding: common practice, no source',
        mark: 'cp',
      },
      { source: 'IEC 60028, annealed copper 100 % IACS' },
      { source: cladStranded, mark: 'mem' },
      { source: "the part's own resistance; temperature coefficient IEC 60028" },
      { ...partData },
    ],
    held: ['copper-wire-table', 'copper-warm'],
  },
  'conductor-temperature': {
    computes: 'temperature of a conductor for its resistance',
    formulas: [
      '(…) / (…); of each zone the assumed Tc, or its ambient where that is hotter',
      'Tc; of each zone the assumed Tc, or its ambient where that is hotter',
    ],
    sources: [commonPractice],
    held: ['copper-warm', 'redone-by-hand'],
  },
  'conductor-drop': {
    computes: 'voltage that a conductor loses',
    formulas: ['U = I * (r * L + Ro)'],
    sources: [
      {
        source: "Ohm's law; r: IEC 60028, annealed copper 100 % IACS; stranding: common practice, no source",
        mark: 'cp',
      },
      { source: `Ohm's law; r: ${cladStranded}`, mark: 'mem' },
      { source: "Ohm's law; r: the part's own resistance; temperature coefficient IEC 60028" },
    ],
    held: ['drop-in-handbooks'],
  },
  ampacity: {
    computes: 'current that a conductor may carry for ever',
    formulas: [
      'table * kEngineSpace…, rounded down',
      'table * kAmbient…, rounded down; kAmbient = sqrt((Tins - Tamb) / (Tins - 30))…',
      'table…, rounded down',
      'table * kCCA…, rounded down; kCCA = sqrt(…), its conductivity against copper…',
      'I = I30 * sqrt((Tins - Tamb) / (Tins - 30))',
      'the lesser of the fuse ceiling of the size and what 18 AWG carries there',
      '0 where Tins is at or below Tamb, or under 60 C',
    ],
    sources: [
      { source: '33 CFR 183.425, Table 5' },
      { source: '33 CFR 183.425, Table 5', mark: 'cp' },
      { source: '33 CFR 183.425, Table 5', mark: 'mem' },
      commonPractice,
      { ...commonPractice, mark: 'mem' },
    ],
    held: ['ampacity-chart'],
  },
  'conductor-need': {
    computes: 'current that a conductor must be able to carry',
    formulas: [
      'the greatest of what is let into it: of fuses side by side the sum of their ratings, of fuses in a row the least',
      '0: no fuse lets current into it',
    ],
    sources: [commonPractice],
    held: ['let-through-by-trial'],
  },
  'fuse-current': {
    computes: 'current that a fuse carries at rated power',
    formulas: [
      'the sum of what it feeds at rated power, rounded up to 0.1 A',
      'the greatest of what it feeds at the voltage for sizing and what flows at the voltages that its devices get, both rounded up to 0.1 A',
    ],
    sources: [{ source: 'sum of currents' }, { source: "sum of currents; Kirchhoff's laws" }],
    held: ['jobs-in-ngspice', 'redone-by-hand'],
  },
  'fuse-continuous': {
    computes: 'greatest current through a fuse that lasts',
    formulas: ['the greatest of the currents at the points that last'],
    sources: [solvedNetwork],
    held: ['jobs-in-ngspice'],
  },
  'fuse-choice': {
    computes: 'rating of a fuse, and its ceiling',
    formulas: [
      'In = I * m',
      "the least of the maker's ceiling and the ampacity of each conductor protected",
      'the next made rating at or above In, at most the ceiling and the least ampacity protected',
      'the greatest of the rated current with its margin and what the maker of the device asks for',
    ],
    sources: [commonPractice],
    held: ['made-ratings'],
  },
  'fuse-distance': {
    computes: 'length of conductor between a source and its fuse',
    formulas: ['the sum of the conductors between source and fuse'],
    sources: [{ source: 'lengths of the conductors' }],
    held: ['redone-by-hand'],
  },
  'fuse-interrupting': {
    computes: 'current of a dead short behind a fuse, and what the fuse must interrupt',
    formulas: [
      'I = E / (Rs + Rl)…',
      'I = (E - U) / Rs; U is what is left at its posts while the short lasts',
      '… A to 650 A of cranking; … A to 1100 A; … A above',
    ],
    sources: [
      {
        source: "Ohm's law; prospective current as IEC 60269 defines it, joints as in IEC 61660-1",
        mark: 'mem',
      },
      { source: "Ohm's law", mark: 'cp' },
      { source: "Ohm's law" },
      { source: "Ohm's law, from the part's data" },
      { source: 'ABYC E-11', mark: 'mem' },
    ],
    held: ['short-in-ngspice'],
  },
  'rated-power': {
    computes: 'power that an amplifier gives as it is loaded',
    formulas: ['the sum of its channels, each into its load', '0: it has no channels'],
    sources: [{ source: "the part's data" }],
    held: ['loads-by-hand', 'redone-by-hand'],
  },
  'current-full-rating': {
    computes: 'current of a device at full rating',
    formulas: ['F1…', '0'],
    sources: [commonPractice],
    held: ['loads-by-hand'],
  },
  'current-rated-power': {
    computes: 'current of a device at rated power',
    formulas: ['I = d * P * k / (eta * V)'],
    sources: [commonPractice],
    held: ['loads-by-hand', 'redone-by-hand'],
  },
  'current-music': {
    computes: 'current of a device with music',
    formulas: ['I = d * P * k / (eta * V), at least Iidle'],
    sources: [commonPractice],
    held: ['loads-by-hand', 'redone-by-hand'],
  },
  'music-duty': {
    computes: 'average output of an amplifier with music, over its rated power',
    formulas: ['d', '(d * P + b * B) / (P + B)'],
    sources: [commonPractice],
    held: ['redone-by-hand'],
  },
  'charging-average': {
    computes: 'what the devices draw with music, on average',
    formulas: ['the sum of what the devices draw with music, at the voltage that they get'],
    sources: [solvedNetwork],
    held: ['jobs-in-ngspice'],
  },
  'charging-batteries': {
    computes: 'what the batteries take up or give',
    formulas: ['the sum of what the batteries take up; below zero they give'],
    sources: [solvedNetwork],
    held: ['jobs-in-ngspice'],
  },
  'charging-margin': {
    computes: 'what charging leaves over',
    formulas: ['M = Ia - Iv - Im', 'the sum of what the batteries take up; below zero they give'],
    sources: [{ source: 'balance of currents' }, solvedNetwork],
    held: ['jobs-in-ngspice', 'redone-by-hand'],
  },
  'charging-output': {
    computes: 'what alternators can give in a regime',
    formulas: ['… * share of …', '0: the engine is off'],
    sources: [commonPractice],
    held: ['redone-by-hand'],
  },
  'charging-reserve': {
    computes: 'how long a battery feeds the system with the engine off',
    formulas: ['t = 60 * H * (C / (I * H))^k * (1 - s), rounded down'],
    sources: [{ source: "Peukert's law; exponent: common practice, no source", mark: 'cp' }],
    held: ['peukert-table', 'batteries-by-hand'],
  },
  'charging-recharge': {
    computes: 'how long a battery takes to be charged again',
    formulas: [
      't = 60 * C * (1 - s) * d / (e * I), rounded up',
      't = 60 * C * (1 - s) / (e * I), rounded up',
    ],
    sources: [commonPractice],
    held: ['batteries-by-hand'],
  },
  'charging-key-off': {
    computes: 'what the devices draw with everything off',
    formulas: ['…'],
    sources: [commonPractice],
    held: ['redone-by-hand'],
  },
  'charger-input': {
    computes: 'what a charger draws from the battery that feeds it',
    formulas: ['Ii = Uo * Io / (eta * Ui)'],
    sources: [{ source: 'conservation of energy' }],
    held: ['networks-in-ngspice'],
  },
  'source-reading': {
    computes: 'what is read at an isolating relay, a charger or a capacitor bank',
    formulas: [
      'V(…) - V(…)',
      '0: it is open or off',
      'the greatest of I and -I; a clamp may lie either way round',
    ],
    sources: [{ source: 'the solved network, point …' }],
    held: ['networks-in-ngspice', 'jobs-in-ngspice'],
  },
  'current-with-fans': {
    computes: 'what a device draws together with the fans that its turn-on outputs feed',
    formulas: ['I = I of the device + what fans draw through its turn-on outputs'],
    sources: [{ source: "Kirchhoff's current law; the parts' data" }],
    held: ['redone-by-hand'],
  },
  'turn-on-sum': {
    computes: 'what the turn-on leads of an output draw together',
    formulas: ['I = sum of the turn-on currents'],
    sources: [
      { source: "Kirchhoff's current law; the parts' data" },
      { source: "Kirchhoff's current law; the parts' data; house rule turn-on-draw" },
    ],
    held: ['redone-by-hand'],
  },
  'turn-on-margin': {
    computes: 'what a turn-on output could give beyond its leads',
    formulas: ['margin = limit - I'],
    sources: [circuitLaws],
    held: ['redone-by-hand'],
  },
  'device-loss': {
    computes: 'heat of a device with music',
    formulas: ['Pin - Pout, music average'],
    sources: [
      { source: 'conservation of energy; duty and efficiency: common practice, no source', mark: 'cp' },
      { source: "conservation of energy; what it draws with music: the part's data" },
    ],
    held: ['enclosure-example'],
  },
  'cavity-air': {
    computes: 'temperature of the air round the parts',
    formulas: ['Tout + dT, P = (k A + rho c (Vfan + Vopenings)) dT'],
    sources: [
      {
        source:
          'heat balance of an enclosure, P = k A dT (VDE 0660 part 500); air flow P = rho c V dT; openings: CIBSE Guide A, quoted from memory',
        mark: 'mem',
      },
    ],
    held: ['enclosure-example'],
  },
  'moved-air': {
    computes: 'air that fans move through a space',
    formulas: ['Vthere + s Vfans'],
    sources: [commonPractice],
    held: ['redone-by-hand'],
  },
  'cavity-surface': {
    computes: 'surface through which a space gives off heat',
    formulas: [
      '… W H + … W D + …D H',
      '… W H + (W + H) D',
      '… W H + … W D + …D H, of the box grown to hold V',
      '… W H + (W + H) D, of the box grown to hold V',
    ],
    sources: [
      {
        source:
          'effective cooling surface of an enclosure: VDE 0660 part 500, as published by makers of enclosures',
      },
    ],
    held: ['enclosure-example'],
  },
} as const satisfies Readonly<Record<string, Computation>>;

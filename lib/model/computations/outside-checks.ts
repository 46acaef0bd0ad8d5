/** A check of our computations against something outside the project: what is compared, with what, and in which unit it differs. */
export interface OutsideCheck {
  /** What is computed both ways. */
  readonly compares: string;
  /** The standard, table, worked example or library that it is held against. */
  readonly against: string;
  /** Unit of the difference; `%` of the outside figure. */
  readonly unit: string;
}

const spice = 'ngspice, as the npm package eecircuit-engine carries it';
const byHand = 'worked by hand from the formula named as the source';

/** Every check outside the project whose greatest difference is kept. The tests say how each is made. */
export const outsideChecks = {
  'networks-in-ngspice': {
    compares: 'node voltages of made-up networks at their operating points',
    against: spice,
    unit: 'V',
  },
  'jobs-in-ngspice': {
    compares: 'node voltages of the demo jobs at every operating point',
    against: spice,
    unit: 'V',
  },
  'balance-of-currents': {
    compares: 'what flows into each terminal of the demo jobs, as printed, less what flows out',
    against: "Kirchhoff's current law, added up apart from the solver",
    unit: 'A',
  },
  'short-in-ngspice': {
    compares: 'current of a dead short fed by several sources',
    against: spice,
    unit: '%',
  },
  'lead-filter-in-ngspice': {
    compares: 'the least that a channel sees of coils with a filter in the lead of one of them',
    against: spice,
    unit: '%',
  },
  'copper-wire-table': {
    compares: 'resistance of solid copper, 4/0 to 18 AWG, at 20 C',
    against: 'NBS Handbook 100 (1966), copper wire table',
    unit: '%',
  },
  'copper-warm': {
    compares: 'resistance of copper at other temperatures over that at 20 C',
    against: 'IEC 60028: 0.00393 per K',
    unit: '%',
  },
  'drop-in-handbooks': {
    compares: 'voltage lost in a lead',
    against: 'ABYC E-11, worked example; NBS Handbook 100',
    unit: '%',
  },
  'ampacity-chart': {
    compares: 'what a conductor may carry in engine spaces',
    against: 'a published marine chart of 33 CFR 183.425, Table 5',
    unit: 'A',
  },
  'peukert-table': {
    compares: 'capacity that a battery of 100 Ah gives at a rate, from a reserve told to the minute below',
    against: "a published table of Peukert's equation",
    unit: 'Ah',
  },
  'batteries-by-hand': { compares: 'minutes of reserve and recharge', against: byHand, unit: 'min' },
  'loads-by-hand': { compares: 'current that amplifiers draw', against: byHand, unit: '%' },
  'packed-circles': {
    compares: 'diameter of a bundle of equal wires: how far it is above the densest packing',
    against: 'Graham, Lubachevsky, Nurmela and Ostergard, Discrete Mathematics 181 (1998)',
    unit: '%',
  },
  'wire-outside': {
    compares: 'outside diameter of a conductor whose maker does not tell it',
    against: 'ISO 6722-1, thick wall (from memory)',
    unit: '%',
  },
  'let-through-by-trial': {
    compares: 'what fuses let flow into a conductor',
    against: 'the least of all sets of fuses whose opening parts it from every source, tried one by one',
    unit: 'A',
  },
  'made-ratings': {
    compares: 'fuses chosen in the demo jobs: how many are of no made rating or above what they protect',
    against: 'ISO 8820 ratings as makers list them, and the ampacity printed beside them',
    unit: 'fuses',
  },
  'redone-by-hand': {
    compares:
      'every working of power and wiring of the demo jobs, from its formula and its inputs as printed',
    against: 'a reader of formulas that knows none of the code',
    unit: '%',
  },
  'coils-in-ngspice': { compares: 'load of coils wired at random', against: spice, unit: '%' },
  'ladders-in-ngspice': {
    compares: 'response of Butterworth filters',
    against: `${spice}: their LC ladders`,
    unit: 'dB',
  },
  'bessel-in-scipy': {
    compares: 'response of Bessel filters',
    against: 'scipy 1.17.1, signal.bessel',
    unit: 'dB',
  },
  'paths-in-ngspice': { compares: 'level of a signal path at its test tone', against: spice, unit: 'dB' },
  'sound-textbook': {
    compares: 'speed of sound from -40 to 85 C',
    against: 'the textbook form 331.3 sqrt(1 + t / 273.15); ISO 9613-1 at 20 C',
    unit: '%',
  },
  arrivals: {
    compares: 'times at which delayed speakers arrive, one against the other',
    against: 'distance over the speed of sound, added up apart from the code',
    unit: 'ms',
  },
  'speaker-wire-in-ngspice': {
    compares: 'power lost in speaker wire, and damping',
    against: spice,
    unit: 'dB',
  },
  'audio-by-hand': { compares: 'powers, voltages, levels and loads of channels', against: byHand, unit: '%' },
  'areas-in-flatten': {
    compares: 'area of 500 outlines with arcs, notches and openings',
    against: 'the geometry library @flatten-js/core',
    unit: '%',
  },
  'webs-by-trial': {
    compares: 'narrowest web of a board',
    against: 'plane figures worked by hand',
    unit: '%',
  },
  'beams-and-plates': {
    compares: 'sag and first mode of beams and plates',
    against:
      'Roark, Formulas for Stress and Strain; Blevins; Timoshenko and Woinowsky-Krieger; Leissa; Hearmon',
    unit: '%',
  },
  'fasteners-by-statics': {
    compares: 'load that the fixings of a board hold',
    against: 'statics of a bolted joint, worked by hand',
    unit: '%',
  },
  'joints-by-hand': { compares: 'torque and strength of a fixing', against: byHand, unit: '%' },
  'ways-in-ngraph': {
    compares: 'length of a wire round parts, openings and fixings',
    against: 'the shortest path of ngraph.path on the same grid',
    unit: 'm',
  },
  'ports-by-trial': {
    compares: 'crossings for the ports that the search takes, over the least of all assignments',
    against: 'every assignment, tried one by one',
    unit: 'crossings',
  },
  'sections-by-roark': {
    compares: 'bending stiffness of a board with ribs',
    against: 'Roark: composite section; 5 w L^4 / 384 E I',
    unit: '%',
  },
  'enclosure-example': {
    compares: 'temperature in an enclosure, its cooling surface, its fan',
    against: "a panel maker's published examples; VDE 0660 part 500; ISO 2533; CIBSE Guide A",
    unit: '%',
  },
  'picks-added-up': {
    compares: 'wire on the pick list of the demo jobs',
    against: 'the lengths of the wire list, added up apart from the code',
    unit: 'm',
  },
  'estimates-by-hand': {
    compares: 'cost of parts, work, shares and the total of an estimate',
    against: byHand,
    unit: '%',
  },
  'layouts-by-trial': {
    compares: 'score of a layout over the best of all places on a lattice, on small boards',
    against: 'every layout, tried one by one',
    unit: '%',
  },
  'rooms-by-hand': {
    compares: 'room round a board and its parts, heights of risers, stretches of ribs',
    against: 'plane figures worked by hand',
    unit: '%',
  },
} as const satisfies Readonly<Record<string, OutsideCheck>>;

export type OutsideCheckId = keyof typeof outsideChecks;

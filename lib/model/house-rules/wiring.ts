import { cp, inch, type RuleDefinition } from './definition.ts';

const abyc = { citation: 'ABYC E-11', mark: 'mem' } as const;
const clad = { citation: 'ASTM B566, 10 % copper by volume', mark: 'mem' } as const;

/** Ends of conductors, thin conductors, coverings, ties. */
export const wiringRules = {
  'fuse-20-awg': { says: 'Greatest fuse for 20 AWG', dimension: 'current', value: 7.5, ...cp },
  'fuse-22-awg': { says: 'Greatest fuse for 22 AWG', dimension: 'current', value: 5, ...cp },
  'fuse-24-awg': { says: 'Greatest fuse for 24 AWG', dimension: 'current', value: 2, ...cp },
  'source-limited': {
    says: 'Output that limits itself: up to this its conductor needs no fuse of its own',
    dimension: 'current',
    value: 0.5,
    ...cp,
  },
  'clad-conductivity': {
    says: 'Conductivity of copper-clad aluminium, of that of annealed copper',
    dimension: 'ratio',
    value: 0.62,
    above: 0,
    most: 1,
    ...clad,
  },
  'clad-per-kelvin': {
    says: 'Added resistance of copper-clad aluminium per kelvin above 20 C',
    dimension: 'ratio',
    value: 0.004,
    ...clad,
  },
  'lugs-on-stud': { says: 'Most lugs on one stud', dimension: 'count', value: 4, ...abyc },
  'torque-m6': { says: 'Torque of a steel M6 bolt in the body', dimension: 'torque', value: 10, ...cp },
  'torque-m8': { says: 'Torque of a steel M8 bolt in the body', dimension: 'torque', value: 25, ...cp },
  'torque-rivet-nut-m6': { says: 'Torque that a rivet nut M6 takes', dimension: 'torque', value: 10, ...cp },
  'torque-rivet-nut-m8': { says: 'Torque that a rivet nut M8 takes', dimension: 'torque', value: 20, ...cp },
  'shrink-over-insulation': {
    says: 'Heat-shrink of a lug reaches onto the insulation',
    dimension: 'length',
    value: 1 * inch,
    ...cp,
  },
  'barrel-over-conductor': {
    says: 'Barrel of a lug, of the diameter of its conductor',
    dimension: 'ratio',
    value: 1.6,
    ...cp,
  },
  'covering-room': { says: 'Covering over what slides into it', dimension: 'ratio', value: 1.1, ...cp },
  'covering-grip': {
    says: 'Covering once closed, of the thinnest that it holds',
    dimension: 'ratio',
    value: 0.95,
    ...cp,
  },
  'covering-walls': {
    says: 'Both walls of a covering together',
    dimension: 'length',
    value: 0.002,
    ...cp,
  },
  'tie-tail': {
    says: 'Head and tail of a tie beyond its way round',
    dimension: 'length',
    value: 0.05,
    ...cp,
  },
  'tie-temperature': {
    says: 'What a tie withstands where its maker is silent',
    dimension: 'temperature',
    value: 85,
    ...cp,
  },
  'first-power-limit': {
    says: 'Current limit of the supply for first power on the bench',
    dimension: 'current',
    value: 3,
    ...cp,
  },
  'first-power-limit-most': {
    says: 'The same at most, where idle currents ask for it',
    dimension: 'current',
    value: 5,
    ...cp,
  },
  'bank-charged-within': {
    says: 'Voltage left across the open fuse of a capacitor bank when it is charged enough for its fuse',
    dimension: 'voltage',
    value: 0.5,
    ...cp,
  },
  'check-in-rested': {
    says: 'Least voltage of a sound battery at rest',
    dimension: 'voltage',
    value: 12.4,
    bySystem: true,
    ...cp,
  },
  'check-in-charging-least': {
    says: 'Least voltage of a sound battery while charging',
    dimension: 'voltage',
    value: 13.5,
    bySystem: true,
    ...cp,
  },
  'check-in-charging-most': {
    says: 'Greatest voltage of a sound battery while charging',
    dimension: 'voltage',
    value: 14.8,
    bySystem: true,
    ...cp,
  },
  'check-in-ripple': {
    says: 'Greatest ripple while charging, alternating volts',
    dimension: 'voltage',
    value: 0.5,
    ...cp,
  },
  'retorque-days': {
    says: 'Days after which power joints are tightened again',
    dimension: 'count',
    value: 30,
    above: 0,
    ...cp,
  },
} as const satisfies Record<string, RuleDefinition>;

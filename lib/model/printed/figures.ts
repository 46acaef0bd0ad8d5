import type { Direction } from '../quantity/safe-rounding.ts';
import type { InstrumentName } from './instrument.ts';

/** A kind of figure: what it is read on, its unit, and which way it may err. */
export interface FigureKind {
  readonly unit: string;
  readonly on: InstrumentName;
  readonly direction: Direction;
  /** Why that is the safe way; for what is told to the nearest, why neither side is the safer one. */
  readonly why: string;
}

const carried = 'what must be carried or is drawn is never told as less';
const allowed = 'what may be carried, or is asked for at most, is never told as more';
const checked = 'a reading is held against limits that stand beside it';
const within = 'a reading within what is printed lies within the limits';
const reached = 'it is held against the least that a device works at';
const set = 'it is set to this value: both sides are wrong alike';

/** Every kind of figure that a sheet, a drawing, a table or a message prints, lengths and holes apart. */
export const figures = {
  'current-carried': { unit: 'A', on: 'clamp', direction: 'up', why: carried },
  'current-allowed': { unit: 'A', on: 'clamp', direction: 'down', why: allowed },
  'small-current-carried': { unit: 'A', on: 'milliammeter', direction: 'up', why: carried },
  'small-current-allowed': { unit: 'A', on: 'milliammeter', direction: 'down', why: allowed },
  'current-at-least': { unit: 'A', on: 'clamp', direction: 'up', why: within },
  'small-current-at-least': { unit: 'A', on: 'milliammeter', direction: 'up', why: within },
  'milliamperes-carried': { unit: 'mA', on: 'milliampere-range', direction: 'up', why: carried },
  'milliamperes-allowed': { unit: 'mA', on: 'milliampere-range', direction: 'down', why: allowed },
  'current-left': {
    unit: 'A',
    on: 'clamp',
    direction: 'down',
    why: 'a margin is never told as wider than it is',
  },
  voltage: { unit: 'V', on: 'voltmeter', direction: 'nearest', why: checked },
  'voltage-at-least': {
    unit: 'V',
    on: 'voltmeter',
    direction: 'up',
    why: 'what is asked for at least is never told as less',
  },
  'voltage-at-most': { unit: 'V', on: 'voltmeter', direction: 'down', why: allowed },
  'voltage-left': { unit: 'V', on: 'voltmeter', direction: 'down', why: reached },
  'small-voltage-left': { unit: 'V', on: 'millivolts', direction: 'down', why: reached },
  'small-voltage': { unit: 'V', on: 'millivolts', direction: 'nearest', why: checked },
  'small-voltage-at-least': { unit: 'V', on: 'millivolts', direction: 'up', why: within },
  'small-voltage-at-most': { unit: 'V', on: 'millivolts', direction: 'down', why: within },
  millivolts: { unit: 'mV', on: 'millivoltmeter', direction: 'nearest', why: checked },
  'millivolts-at-least': { unit: 'mV', on: 'millivoltmeter', direction: 'up', why: within },
  'voltage-lost': {
    unit: 'V',
    on: 'millivolts',
    direction: 'up',
    why: 'a loss is never told as smaller than it is',
  },
  'loss-at-most': { unit: 'mV', on: 'millivoltmeter', direction: 'down', why: allowed },
  'gain-voltage': {
    unit: 'V',
    on: 'voltmeter',
    direction: 'down',
    why: 'above it the amplifier clips, or the speaker gets too much',
  },
  'share-used': { unit: '%', on: 'wholes', direction: 'nearest', why: 'nothing is chosen by it' },
  'share-kept': {
    unit: '%',
    on: 'shares',
    direction: 'down',
    why: 'it is held against the least that is asked for',
  },
  'share-lost': {
    unit: '%',
    on: 'shares',
    direction: 'up',
    why: 'a loss is never told as smaller than it is',
  },
  load: {
    unit: 'ohm',
    on: 'ohmmeter',
    direction: 'down',
    why: 'a load is held against the least that may be driven',
  },
  'load-at-least': {
    unit: 'ohm',
    on: 'ohmmeter',
    direction: 'up',
    why: 'what may be driven at least is never told as less',
  },
  resistance: { unit: 'ohm', on: 'ohmmeter', direction: 'nearest', why: checked },
  'resistance-from': { unit: 'ohm', on: 'ohmmeter', direction: 'up', why: within },
  'resistance-to': { unit: 'ohm', on: 'ohmmeter', direction: 'down', why: within },
  power: { unit: 'W', on: 'wattmeter', direction: 'nearest', why: 'a prediction that nothing is chosen by' },
  heat: { unit: 'W', on: 'wattmeter', direction: 'up', why: carried },
  frequency: { unit: 'Hz', on: 'generator', direction: 'nearest', why: set },
  kilohertz: { unit: 'kHz', on: 'kilohertz', direction: 'nearest', why: set },
  'first-mode': {
    unit: 'Hz',
    on: 'generator',
    direction: 'down',
    why: 'it is held against the least that is asked for',
  },
  slope: { unit: 'dB/octave', on: 'wholes', direction: 'nearest', why: 'a whole number by its order' },
  loss: { unit: 'dB', on: 'levels', direction: 'up', why: 'a loss is never told as smaller than it is' },
  'level-left': {
    unit: 'dB',
    on: 'levels',
    direction: 'down',
    why: 'a margin is never told as wider than it is',
  },
  level: { unit: 'dB', on: 'levels', direction: 'nearest', why: 'a point of a curve' },
  damping: { unit: '', on: 'reckoned', direction: 'down', why: 'more of it is better' },
  'frequency-from': { unit: 'Hz', on: 'generator', direction: 'up', why: within },
  'frequency-to': { unit: 'Hz', on: 'generator', direction: 'down', why: within },
  sharpness: { unit: '', on: 'reckoned', direction: 'nearest', why: set },
  'delay-from': { unit: 'ms', on: 'processor', direction: 'up', why: within },
  'delay-to': { unit: 'ms', on: 'processor', direction: 'down', why: within },
  delay: { unit: 'ms', on: 'processor', direction: 'nearest', why: set },
  'time-taken': {
    unit: 'min',
    on: 'clock',
    direction: 'nearest',
    why: 'an estimate by the times of the shop, not a limit',
  },
  'time-left': {
    unit: 'min',
    on: 'clock',
    direction: 'down',
    why: 'a battery is not promised to last longer than it does',
  },
  'time-needed': {
    unit: 'min',
    on: 'clock',
    direction: 'up',
    why: 'a battery is not promised to be charged sooner than it is',
  },
  mass: {
    unit: 'kg',
    on: 'scale',
    direction: 'up',
    why: 'what fixings and hands must hold is never told as less',
  },
  area: { unit: 'm²', on: 'reckoned', direction: 'nearest', why: 'nothing is chosen by it' },
  'area-asked': { unit: 'cm²', on: 'wholes', direction: 'up', why: 'the room that a part asks for' },
  'cross-section': {
    unit: 'mm²',
    on: 'reckoned',
    direction: 'down',
    why: 'a conductor is never told as thicker than it is',
  },
  'cross-section-at-least': {
    unit: 'mm²',
    on: 'reckoned',
    direction: 'up',
    why: 'what is asked for at least is never told as less',
  },
  sag: {
    unit: 'mm',
    on: 'dial-gauge',
    direction: 'up',
    why: 'it is held against the most that is allowed',
  },
  torque: { unit: 'N m', on: 'torque-wrench', direction: 'down', why: 'a limit of stud, insert or panel' },
  'pull-pounds': { unit: 'lb', on: 'wholes', direction: 'up', why: 'the least that an end must hold' },
  'pull-newtons': { unit: 'N', on: 'wholes', direction: 'up', why: 'the least that an end must hold' },
  ambient: {
    unit: '°C',
    on: 'thermometer',
    direction: 'up',
    why: 'what insulation must stand is never told as less',
  },
  'temperature-stood': { unit: '°C', on: 'thermometer', direction: 'down', why: allowed },
  'load-held': {
    unit: 'g',
    on: 'shares',
    direction: 'down',
    why: 'what fixings hold is never told as more',
  },
  times: {
    unit: '',
    on: 'ratio',
    direction: 'nearest',
    why: 'it says what to look for; the reading is judged by its limits',
  },
  plain: {
    unit: '',
    on: 'plain',
    direction: 'nearest',
    why: 'a ratio or a count in a message, which compares the exact figures',
  },
  'plain-above': {
    unit: '',
    on: 'plain',
    direction: 'up',
    why: 'what is over its limit, or a limit that is not reached, is never told as nearer to the other',
  },
  'plain-below': {
    unit: '',
    on: 'plain',
    direction: 'down',
    why: 'what is under its limit, or a limit that is passed, is never told as nearer to the other',
  },
  angle: { unit: '°', on: 'protractor', direction: 'nearest', why: set },
  score: {
    unit: '',
    on: 'reckoned',
    direction: 'nearest',
    why: 'layouts are ranked by the exact figure; what is printed lets them be compared',
  },
} as const satisfies Record<string, FigureKind>;

export type FigureName = keyof typeof figures;

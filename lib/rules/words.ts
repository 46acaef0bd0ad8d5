export { listed } from '../model/printed/listed.ts';
export {
  amps,
  ampsDrawn,
  asRead,
  celsius,
  celsiusAllowed,
  decibels,
  figure,
  gees,
  hertz,
  kilograms,
  levelDb,
  modeHertz,
  ohms,
  ohmsAtLeast,
  percent,
  percentKept,
  squareMm,
  volts,
  voltsAllowed,
  voltsLost,
  watts,
  wattsLost,
} from '../model/printed/told.ts';
export { lengthAskedIn, lengthIn, shortIn, torqueIn } from '../plan/as-written.ts';

/** A count with its noun: `1 wire`, `3 wires`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

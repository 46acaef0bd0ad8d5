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
  voltsLost,
  watts,
  wattsLost,
} from '../model/printed/told.ts';
export { lengthAskedIn, lengthIn, torqueIn } from '../plan/as-written.ts';

/** Names as one phrase: `a`, `a and b`, `a, b and c`. */
export function listed(names: readonly string[], last = 'and'): string {
  const [end = 'nothing', ...before] = names.toReversed();
  return before.length === 0 ? end : `${before.reverse().join(', ')} ${last} ${end}`;
}

/** A count with its noun: `1 wire`, `3 wires`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

import { wholeUp } from '../../model/quantity/safe-rounding.ts';

/** Minutes as hours and minutes, up to the next whole minute: `2 h 30 min`, `35 min`. */
export function hoursText(minutes: number): string {
  const whole = wholeUp(minutes);
  return whole < 60 ? `${whole} min` : `${Math.floor(whole / 60)} h ${whole % 60} min`;
}

import type { Planned } from '../../lib/plan/planned.ts';
import { jobOf, partIn } from '../rules/case.ts';
import { type Written, withoutBoard, written } from '../rules/content.ts';
import { planKept } from './plan-kept.ts';

/**
 * The plan of the small job of the rules' tests, with what a test changes in what was written. Its devices stand in
 * the vehicle: no board is laid out.
 */
export function planned(change: (content: Written) => void = () => {}): Planned {
  const content = written();
  change(content);
  withoutBoard(content);
  return planKept(jobOf(content));
}

/** The same with its board. */
export function plannedOnBoard(change: (content: Written) => void): Planned {
  const content = written();
  change(content);
  return planKept(jobOf(content));
}

/** Remarks of a rule: subject, message and the way out. */
export function remarksOf({ remarks }: Planned, rule: string) {
  return remarks.flatMap(({ remark }) => (remark.rule === rule ? [remark] : []));
}

/** Gives the subwoofer of the small job a second coil of 4 ohm. */
export function withTwoCoils(content: Written): void {
  const woofer = partIn(content, 'woofer', 'speaker');
  woofer.coils = {
    C: { positive: 'C+', negative: 'C-', nominal: '4 ohm' },
    D: { positive: 'D+', negative: 'D-', nominal: '4 ohm' },
  };
  Object.assign(woofer.terminals, { 'D+': { role: 'coil-positive' }, 'D-': { role: 'coil-negative' } });
}

/** The second coil in parallel with the first, or in series behind it. */
export function joinCoils(content: Written, how: 'parallel' | 'series'): void {
  const { links } = content.job;
  delete links['speaker-2'];
  links.plus = { from: 'amp.CH2+', to: 'sub.C+' };
  links.minus = { from: 'amp.CH2-', to: how === 'series' ? 'sub.D-' : 'sub.C-' };
  if (how === 'series') links.middle = { from: 'sub.C-', to: 'sub.D+' };
  else {
    links.first = { from: 'sub.C+', to: 'sub.D+' };
    links.second = { from: 'sub.C-', to: 'sub.D-' };
  }
}

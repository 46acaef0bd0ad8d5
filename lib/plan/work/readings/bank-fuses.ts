import type { BuildPlan } from '../../../model/plan/index.ts';

/** A fuse that stands first behind a capacitor bank of the job, with its bank. */
export interface BankFuse {
  readonly fuse: string;
  readonly bank: string;
}

/** The fuses that stand first behind the capacitor banks that a job adds. */
export function bankFuses({ items, power }: Pick<BuildPlan, 'items' | 'power'>): readonly BankFuse[] {
  const isBank = (id: string | null) =>
    items.some(({ id: own, kind, origin }) => own === id && kind === 'capacitor-bank' && origin === 'job');
  return power.fuses.flatMap(({ id, source }) =>
    source !== null && isBank(source) ? [{ fuse: id, bank: source }] : [],
  );
}

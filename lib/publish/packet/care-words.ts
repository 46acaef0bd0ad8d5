import type { BuildPlan } from '../../model/plan/index.ts';

/** What keeps a system sound. Common practice, no source. */
export function careWords({ boards }: Pick<BuildPlan, 'boards'>, retorqueDays: number): readonly string[] {
  return [
    `Bring the vehicle back after ${retorqueDays} days: the joints of power cables settle, and are tightened again.`,
    `Keep ${boards.length > 0 ? 'the boards' : 'the amplifiers'} free: lay nothing on them, cover no amplifier, and keep water away. An amplifier gets warm; one that is too hot to touch is switched off.`,
    'Drill no hole and drive no screw into floor, sills or panels before you asked the shop: cables run behind them.',
    'After work on the vehicle by others, look whether the fuses are in their places before you switch the system on.',
  ];
}

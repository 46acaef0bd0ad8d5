import type { BuildPlan } from '../../model/plan/index.ts';
import { ruleOf } from '../../model/plan/plan-rules.ts';
import { printed } from '../../model/printed/index.ts';

/** What whoever gives or takes a jump start must know. */
export function jumpStart(highestV: number, hasMainFuse: boolean): readonly string[] {
  const fuse = hasMainFuse
    ? [
        'The cable marked here feeds equipment in the vehicle straight from the battery. Take the main fuse out before work on the battery, the body or the cables; put the rating back that stands here.',
      ]
    : [];
  return [
    ...fuse,
    'Jump start only at the points that the vehicle maker names. Switch the audio system off first, and leave it off until the engine runs steadily.',
    `Charge with the charger at the points that the vehicle maker names${hasMainFuse ? `; above ${printed('voltage-at-most', highestV)}, take the main fuse out` : ''}.`,
  ];
}

/** How to look for a fault, in the order in which each thing is cheapest to show. */
export function faultSteps(plan: BuildPlan): readonly string[] {
  const hasProcessor = plan.items.some(({ kind, origin }) => kind === 'processor' && origin === 'job');
  const hasMainFuse = plan.power.fuses.some(({ source }) => source !== null);
  const then = hasProcessor ? ', then at the processor' : '';
  const jointV = ruleOf(plan, 'joint-drop-limit');
  const keyOffA = ruleOf(plan, 'key-off-draw');
  const levels = new Set(plan.audio.inputs.map(({ level }) => level));
  const silenced = [
    ...(levels.has('high') ? ['plugs of speaker-level inputs off, none shorted or grounded, radio off'] : []),
    ...(levels.has('high') && !levels.has('low')
      ? []
      : [`shorting plugs at the line inputs of the amplifier${then}`]),
  ].join('; ');
  return [
    `Dead: ${hasMainFuse ? 'main fuse, then ' : ''}volts along the points below. The first point that lacks its volts has the fault before it.`,
    `Comes and goes: wiggle each joint under load; any one joint drops at most ${printed('loss-at-most', jointV * 1000)}.`,
    `One channel dead: change leads at the amplifier${then}; what moves with the lead is before it.`,
    `Noise: ${silenced}; then the source; engine off, at idle, at 2,000 rpm, lights and blower on.`,
    `Battery flat: draw with the key off ${printed('time-needed', ruleOf(plan, 'key-off-wait') / 60)} or more after locking, at most ${printed('small-current-allowed', keyOffA)}; pull fuses one by one.`,
  ];
}

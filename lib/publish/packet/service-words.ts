import { fusesText, type NumberedFuse } from '../../draw/packet/numbered-fuses.ts';
import { shortName } from '../../draw/power/feed-words.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { inSentence } from '../../model/printed/in-sentence.ts';
import { mainText, placeOf } from './packet-fuses.ts';

/** For who tows, cuts, welds or repairs: the batteries first. */
export interface ServiceWords {
  readonly steps: readonly string[];
  readonly batteries: readonly string[];
  readonly mains: readonly string[];
  readonly cautions: readonly string[];
}

export function serviceWords(
  plan: Pick<BuildPlan, 'items' | 'boards' | 'vehicle'>,
  mains: readonly NumberedFuse[],
): ServiceWords {
  const batteries = plan.items
    .filter(({ kind }) => kind === 'battery')
    .toSorted((a, b) => Number(a.origin === 'job') - Number(b.origin === 'job'));
  return {
    steps: [
      batteries.length > 1
        ? 'Switch the ignition off. Take the negative lead off every battery before any positive lead is touched:'
        : 'Switch the ignition off. Take the negative lead off the battery before anything else is touched:',
      'Wait as long as the vehicle maker says before you work near airbags and belts.',
      ...(mains.length > 0
        ? [
            `Take ${fusesText(mains.map(({ number }) => number))} out before you cut, pull or weld: a fused cable runs from there through the vehicle.`,
          ]
        : []),
      `${plan.boards.length > 0 ? 'Boards, cables' : 'Cables'} and ground leads of this system are marked. Ask the shop before you move one.`,
    ],
    batteries: batteries.map((item) => `${shortName(item)}: ${inSentence(placeOf(plan, item))}`),
    mains: mains.map((one) => mainText(plan, one)),
    cautions: plan.vehicle.cautions,
  };
}

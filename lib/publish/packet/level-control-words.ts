import { shortName } from '../../draw/power/feed-words.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { inSentence } from '../../model/printed/in-sentence.ts';
import { printed } from '../../model/printed/index.ts';
import { placeOf } from './packet-fuses.ts';

/** How the level is set and what limits it: by its level control, where the job has one. */
export function levelWords(plan: Pick<BuildPlan, 'items' | 'boards' | 'power'>): readonly string[] {
  const controls = plan.items.filter(({ kind, origin }) => kind === 'level-control' && origin === 'job');
  const own = controls.map(
    (item) =>
      `${shortName(item)} (${inSentence(placeOf(plan, item))}) turns its part of the music up and down beside the rest. The volume of the radio turns all of it.`,
  );
  const minutes = reserveMinutes(plan);
  return [
    ...(own.length > 0 ? own : ['The volume of the radio turns all of the music up and down.']),
    'Begin low and turn up. As soon as the music turns rough, turn back: above that point the system distorts, and speakers are damaged.',
    'Loud music harms hearing for good. At most 8 hours at 85 dBA are recommended (NIOSH), and each 3 dB more halves the time: a mere 15 minutes at 100 dBA.',
    ...(minutes === null
      ? []
      : [
          `With the engine off, music empties the battery. After ${printed('time-left', minutes)} of it, switch off, so that the engine still starts.`,
        ]),
  ];
}

function reserveMinutes({ power }: Pick<BuildPlan, 'power'>): number | null {
  return power.charging.find(({ name }) => name === 'engine-off')?.reserveMinutes ?? null;
}

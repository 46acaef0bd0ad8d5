import { describe, expect, test } from 'vitest';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import { planWork } from '../../../lib/plan/work/plan-work.ts';
import { smallShop } from '../../read/small-shop.ts';
import { jobOf } from '../plan-small-shop.ts';
import { inParts } from '../shop-changes.ts';
import { small } from './steps/small-work.ts';

describe('a tweeter that nothing guards', () => {
  /** What is told as the speakers are put on, where the woofer has a band and shares its channel with others. */
  const told = (band: string, ...others: readonly string[]) => {
    const { plan } = small();
    const [channel] = plan.audio.channels;
    if (!channel) throw new Error('The small plan has a channel.');
    const job = jobOf(smallShop(inParts('    band: subwoofer\n', `    band: ${band}\n`)));
    const audio = { ...plan.audio, channels: [{ ...channel, speakers: ['sub', ...others] }] };
    const { steps } = planWork(job, { ...plan, audio }, new PlanBook());
    return steps.find(({ id }) => id === 'speakers-on')?.text;
  };

  test('is put on through a series capacitor where it is alone on its channel', () => {
    expect(told('tweeter')).toContain('sub through a series capacitor at first');
    expect(told('tweeter', 'woofer')).not.toContain('capacitor');
  });

  test('is no other speaker', () => {
    expect(told('subwoofer')).not.toContain('capacitor');
  });
});

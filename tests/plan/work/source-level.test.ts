import { expect, test } from 'vitest';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import { planWork } from '../../../lib/plan/work/plan-work.ts';
import { smallShop } from '../../read/small-shop.ts';
import { jobOf } from '../plan-small-shop.ts';
import { small } from './steps/small-work.ts';

/** What is told as the gains are set, where outputs of the source that the vehicle came with say so much. */
function told(outputs: string): string {
  const own = `part: radio-a\n    outputs: { ${outputs} }\n`;
  const job = jobOf(smallShop(['content/vehicles/wagon.yaml', 'part: radio-a\n', own]));
  const { steps } = planWork(job, small().plan, new PlanBook());
  const gains = steps.find(({ id }) => id === 'gains');
  if (!gains) throw new Error('The small plan sets a gain.');
  return gains.text;
}

test('the source stands where its voltage was clean while gains are set; nothing is told where nobody read it', () => {
  expect(told('OUT1..2: { clean-voltage: 4 V, clean-at: volume 26 of 30 }')).toContain(
    'radio at volume 26 of 30 and never above. Filters stay',
  );
  expect(told('OUT1..2: { clean-voltage: 4 V }')).not.toContain('never above');
  expect(told('OUT1: { clean-at: volume 26 of 30 }, OUT2: { clean-at: volume 24 of 30 }')).toContain(
    'radio.OUT1 at volume 26 of 30, radio.OUT2 at volume 24 of 30 and never above',
  );
});

import { expect, test } from 'vitest';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import { planWork } from '../../../lib/plan/work/plan-work.ts';
import { predictions } from '../../../lib/plan/work/readings/predictions.ts';
import { smallShop } from '../../read/small-shop.ts';
import { jobOf } from '../plan-small-shop.ts';
import { small } from './steps/small-work.ts';

/** A job in which outputs of the source that the vehicle came with say so much. */
function jobWith(outputs: string) {
  const own = `part: radio-a\n    outputs: { ${outputs} }\n`;
  return jobOf(smallShop(['content/vehicles/wagon.yaml', 'part: radio-a\n', own]));
}

/** What is told as the gains are set. */
function told(outputs: string): string {
  const job = jobWith(outputs);
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

test('the record of measurements says at each gain where the source stands', () => {
  const lines = (outputs: string) =>
    predictions(jobWith(outputs), small().plan).flatMap(({ kind, what }) => (kind === 'gain' ? [what] : []));
  const stood = lines('OUT1..2: { clean-voltage: 4 V, clean-at: volume 26 of 30 }');
  expect(stood.length).toBeGreaterThan(0);
  for (const what of stood) expect(what).toMatch(/filters loaded.*, radio at volume 26 of 30$/);
  for (const what of lines('OUT1..2: { clean-voltage: 4 V }')) expect(what).not.toContain('radio');
});

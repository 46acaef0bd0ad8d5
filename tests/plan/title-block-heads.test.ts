import { expect, test } from 'vitest';
import { computedFrom } from '../../lib/plan/planned.ts';
import { jobHead, shopHead, vehicleHead } from '../../lib/plan/title-block-heads.ts';
import { inJob } from '../read/problem-case.ts';
import { type Change, smallShop } from '../read/small-shop.ts';
import { jobOf } from './plan-small-shop.ts';
import { inShop, inVehicle } from './shop-changes.ts';

const job = (...changes: readonly Change[]) => jobOf(smallShop(...changes));

test('the title block has the job, its notes and each revision with its date and what it changed', () => {
  const revisions = '[{ revision: A, date: 2026-03-14, what: first issue }]';
  expect(jobHead(job(inJob('status: draft', `revisions: ${revisions}\nstatus: draft`)))).toEqual({
    ...{ id: 'demo', title: 'One amplifier', revision: 'A', status: 'draft', issuedOn: '2026-03-14' },
    ...{ drawnBy: null, approvedBy: null, fabricator: null },
    notes: ['The second output stays in its bag.'],
    revisions: [{ revision: 'A', date: '2026-03-14', what: 'first issue' }],
  });
});

test('it has the shop, and how it measures and prints', () => {
  expect(
    shopHead(job(inShop('name: Test bench', 'name: Test bench\naddress: [12 Mill Lane]'))),
  ).toMatchObject({
    ...{ name: 'Test bench', address: ['12 Mill Lane'], units: 'inch', paper: 'letter' },
    ...{ largerPaper: null, siteUrl: null },
  });
});

test('of the vehicle it has the cautions, and those grounds of the body that the job uses: none that the vehicle alone has', () => {
  const cautioned = job(
    inVehicle('title: Estate car', 'title: Estate car\ncautions: [Airbag in the left sill.]'),
  );
  expect(vehicleHead(cautioned)).toMatchObject({
    ...{ id: 'wagon', title: 'Estate car', cautions: ['Airbag in the left sill.'] },
    grounds: [{ id: 'cargo', zone: 'cargo' }],
  });
});

test('what only the head of a job says moves nothing that its plan is computed from', () => {
  const from = (...changes: readonly Change[]) => computedFrom(job(...changes));
  const plain = from();
  for (const change of [
    inJob('title: One amplifier', 'title: Another name'),
    inJob('issued-on: 2026-03-14', 'issued-on: 2026-04-01'),
    inJob('revision: A', 'revision: B'),
    inJob('  - The second output stays in its bag.', '  - 12 in of slack stay behind the trim.'),
    inJob(
      'customer:',
      'accepted: [{ finding: charging-short, of: wagon, reason: it comes on Friday, by: JS }]\ncustomer:',
    ),
  ])
    expect(from(change)).toEqual(plain);
  expect(from(inJob('length: 6 in', 'length: 7 in'))).not.toEqual(plain);
});

import { describe, test } from 'vitest';
import { expectGolden } from '../golden.ts';
import { accountingChecks } from './checks/accounting.ts';
import { documentChecks } from './checks/document.ts';
import { networkChecks } from './checks/network.ts';
import { orderChecks } from './checks/order.ts';
import { powerChecks } from './checks/power.ts';
import { proposalChecks } from './checks/proposals.ts';
import { demoJob, demoJobs, demoPlan } from './demo.ts';
import { planSummary } from './summary/plan-summary.ts';

// One file for all that is asked of the plans of the demo jobs, so that each is planned once.
describe.each(demoJobs)('%s', (id) => {
  const plan = () => demoPlan(id);
  const job = () => demoJob(id);

  describe('document', () => documentChecks(plan, job));
  describe('network', () => networkChecks(plan));
  describe('fuses and conductors', () => powerChecks(plan, () => job().rules));
  describe('accounting', () => accountingChecks(plan));
  describe('order of work', () => orderChecks(plan));
  describe('proposed layouts', () => proposalChecks(plan));
});

test('the plans are those of before', () => {
  const files = Object.fromEntries(demoJobs.map((id) => [`${id}.txt`, planSummary(demoPlan(id))]));
  expectGolden(new URL('golden/', import.meta.url), files);
});

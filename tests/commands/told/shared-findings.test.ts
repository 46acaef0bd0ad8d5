import { expect, test } from 'vitest';
import { toldFindings } from '../../../lib/commands/told/shared-findings.ts';
import type { Finding } from '../../../lib/model/finding.ts';

const finding = (file: string, message: string): Finding => ({
  rule: 'vehicle-load-assumed',
  level: 'caution',
  where: { file, line: 3, column: 1, path: '/vehicle-load' },
  related: ['wagon'],
  message,
  source: 'common practice, no source',
  remedy: 'measure it',
});
const ofVehicle = finding('content/vehicles/wagon.yaml', 'nobody measured it');
const ofShop = finding('content/shop.yaml', 'the shelf lacks it');
const ofJob = finding('content/jobs/one.yaml', 'it is so');

const job = (id: string, ...findings: readonly Finding[]) => ({
  job: { id },
  plan: { findings: [...findings] },
});

test('what two jobs have of one vehicle is told once, and the rest at each', () => {
  const { shared, own } = toldFindings([
    job('one', ofVehicle, ofJob),
    job('two', ofVehicle, ofShop),
    job('three', { ...ofVehicle, message: 'another' }),
  ]);
  expect(shared).toEqual([{ finding: ofVehicle, jobs: ['one', 'two'] }]);
  expect(['one', 'two', 'three'].map((id) => own(id).map(({ message }) => message))).toEqual([
    ['it is so'],
    ['the shelf lacks it'],
    ['another'],
  ]);
});

test('what one job alone has stays with it, and what is of a job is never shared', () => {
  const { shared, own } = toldFindings([job('one', ofVehicle, ofJob), job('two', ofJob)]);
  expect(shared).toEqual([]);
  expect(own('one')).toEqual([ofVehicle, ofJob]);
  expect(own('two')).toEqual([ofJob]);
});

import { expect, test } from 'vitest';
import { linksOf, shopWith } from '../links-of.ts';
import { shortText } from '../short-shop.ts';

const level = '      LEVEL: { role: control-line, panel: left, at: 1 3/4 in, joint: plug }\n';
const mono =
  '      IN1..2: { role: signal-in, panel: left, at: 1/2 in, pitch: 1/2 in, joint: phono, signal: 4 V,\n        signal-range: 0.25 V to 6 V }\n';
const thru =
  '      THRU-L, THRU-R: { role: signal-out, panel: left, at: 4 in, pitch: 1/2 in, joint: phono, signal: 6 V }\n';
const passing = shopWith('parts/amplifiers.yaml', `${mono}${level}`, `${mono}${thru}${level}`);

test('line outputs of an amplifier that no other device takes stay open, with the reason', () => {
  const { job, problems } = linksOf(shortText('one-bass-amplifier'), passing);
  expect(problems).toEqual([]);
  const reason = 'no other device takes what it passes on';
  expect(job?.file['left-open']).toMatchObject({ 'amp.THRU-L': reason, 'amp.THRU-R': reason });
});

test('what the job writes of them stands', () => {
  const text = `${shortText('one-bass-amplifier')}left-open:\n  amp.THRU-L: for a second amplifier in spring\n`;
  const { job } = linksOf(text, passing);
  expect(job?.file['left-open']).toMatchObject({ 'amp.THRU-L': 'for a second amplifier in spring' });
});

import { describe, expect, test } from 'vitest';
import { placeText } from '../../../lib/model/place.ts';
import { judge } from '../../../lib/rules/index.ts';
import { inJob, partsFile } from '../../read/problem-case.ts';
import { type Change, mark, smallShop, withoutMark } from '../../read/small-shop.ts';
import { planKept } from '../plan-kept.ts';
import { jobOf } from '../plan-small-shop.ts';

/** A job as its fabricator writes it, and the stop that it must come to. The mark stands where the finding points. */
interface BadJob {
  readonly changes: readonly Change[];
  readonly rule: string;
  readonly says: RegExp;
  /** The way out. */
  readonly remedy: RegExp;
}

function expectStop({ changes, rule, says, remedy }: BadJob): void {
  const { files, place } = withoutMark(smallShop(...changes));
  const job = jobOf(files);
  const { plan, remarks } = planKept(job);
  const stops = judge(job, plan, remarks).filter((finding) => finding.level === 'stop');
  const told = stops.find((finding) => finding.rule === rule);
  expect(told, `${rule} among ${stops.map((finding) => finding.rule).join(', ')}`).toBeDefined();
  expect(told?.message).toMatch(says);
  expect(told?.remedy).toMatch(remedy);
  expect(told && placeText(told.where)).toBe(place);
}

const speakerLink = '  speaker: { from: amp.CH1, to: sub.C1, length: 3 ft }\n';
const amp = inJob('  amp:\n    part: amp-a', `  amp:\n    ${mark}part: amp-a`);
const sub = inJob('  sub: { part: woofer-a, in: boot }', `  sub: ${mark}{ part: woofer-a, in: boot }`);
const twoCoils: Change = [
  partsFile,
  `    coils: { C1: { positive: C1+, negative: C1-, nominal: 4 ohm } }
    terminals: { C1+: { role: coil-positive }, C1-: { role: coil-negative } }`,
  `    coils: { C1: { positive: C1+, negative: C1-, nominal: 4 ohm }, C2: { positive: C2+, negative: C2-, nominal: 4 ohm } }
    terminals: { C1+: { role: coil-positive, conductors: 2 }, C1-: { role: coil-negative, conductors: 2 }, C2+: { role: coil-positive, conductors: 2 }, C2-: { role: coil-negative, conductors: 2 } }`,
];

describe('a job whose audio can not work is stopped where it is written, with the way out', () => {
  test('a channel without a speaker', () => {
    expectStop({
      changes: [amp, inJob(speakerLink, '  speaker: { from: amp.CH1+, to: body.cargo, length: 3 ft }\n')],
      rule: 'channel-without-speaker',
      says: /channel amp\.1 has no speaker/,
      remedy: /link a speaker to it/,
    });
  });

  test('a speaker without a channel', () => {
    expectStop({
      changes: [sub, inJob(speakerLink, '')],
      rule: 'speaker-without-channel',
      says: /no amplifier channel drives the speaker sub/,
      remedy: /link its coils to a channel, or leave sub\.C1\+ and sub\.C1- open/,
    });
  });

  test('coils below the least load of the channel: the way that it may drive is named', () => {
    expectStop({
      changes: [
        amp,
        twoCoils,
        inJob(speakerLink, `${speakerLink}  jumper: { from: sub.C1, to: sub.C2, length: 6 in }\n`),
        [
          partsFile,
          'minimum: 2 ohm, powers: [{ load: 4 ohm, power: 300 W }]',
          'minimum: 4 ohm, powers: [{ load: 4 ohm, power: 300 W }]',
        ],
      ],
      rule: 'load-below-minimum',
      says: /2 ohm/,
      remedy: /wire them as series\(sub\.C1, sub\.C2\): 8 ohm/,
    });
  });

  test('coils that can not be wired to the load that the job asks for', () => {
    expectStop({
      changes: [
        inJob('    title: Bass amplifier\n', `    title: Bass amplifier\n    loads: { '1': ${mark}3 ohm }\n`),
      ],
      rule: 'load-not-possible',
      says: /3 ohm.*4 ohm/,
      remedy: /ask for one of these loads/,
    });
  });

  // Linkwitz 1976: two equal Butterworth filters in a row, so the order is even.
  test.each([
    ['type: linkwitz-riley, order: 3, corner: 80 Hz', 'filter-order-not-made', /order 3/, /choose one/],
    ['type: bessel, order: 4, corner: 0 Hz', 'filter-corner-unclear', /above 0 Hz/, /such as 80 Hz/],
  ])('a filter that nobody makes: %s', (written, rule, says, remedy) => {
    expectStop({
      changes: [
        inJob(
          'CH1: [{ pass: low-pass, type: butterworth, order: 4, corner: 80 Hz }]',
          `CH1: [${mark}{ pass: low-pass, ${written} }]`,
        ),
      ],
      rule,
      says,
      remedy,
    });
  });

  test('a coil that is joined to itself', () => {
    expectStop({
      changes: [
        amp,
        twoCoils,
        inJob(
          speakerLink,
          `${speakerLink}  loop: { from: sub.C2+, to: sub.C2-, length: 6 in }\n  on: { from: sub.C1+, to: sub.C2+, length: 6 in }\n`,
        ),
      ],
      rule: 'coil-shorted',
      says: /both ends of sub\.C2/,
      remedy: /take out the link/,
    });
  });

  test('two devices that wait for each other', () => {
    expectStop({
      changes: [
        amp,
        inJob(
          '    title: Bass amplifier\n',
          '    title: Bass amplifier\n    after: { sub: it stands over it }\n',
        ),
        inJob('in: boot }\ncables', 'in: boot, after: { amp: its lid is under it } }\ncables'),
      ],
      rule: 'steps-wait-for-each-other',
      says: /wait for each other/,
      remedy: /take .* out/,
    });
  });
});

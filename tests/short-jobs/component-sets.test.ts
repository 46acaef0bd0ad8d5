import { describe, expect, test } from 'vitest';
import { judge } from '../../lib/rules/index.ts';
import { planKept } from '../plan/plan-kept.ts';
import { changed, linksOf, shopWith } from './links-of.ts';

/** A crossover of two ways, with the leads to its speakers that its maker supplies. */
const passive = `parts:
  passive-two:
    kind: crossover
    title: "Passive crossover, 3 kHz"
    size: { width: 4 in, depth: 3 in, height: 1 in }
    mass: 0.2 kg
    terminals:
      IN: { role: coil, joint: screw-clamp, takes: 18 AWG to 12 AWG }
      W, T: { role: speaker-out, joint: supplied-lead }
    ways: { T: from 3 kHz, W: up to 3 kHz }
    order: 2
    load: 4 ohm
    power: 90 W
`;
const files = shopWith('parts/speakers.yaml', 'parts:\n', passive);
const front = '  front: { part: coaxial-65, in: [left-door, right-door] }\n';
const set = `  filter: { part: passive-two, in: [left-door, right-door] }
  front: { part: midbass-65, in: [left-door, right-door], driven-by: filter }
  tweeter: { part: tweeter-25, in: [left-door, right-door], driven-by: filter }
`;
const job = changed('under-seat-five', [front, set]);

describe('a component set behind its passive crossover', () => {
  const { links, problems, proposed, job: read } = linksOf(job, files);

  test('takes a channel a side for its crossover, whose ways drive woofer and tweeter', () => {
    expect(problems).toEqual([]);
    for (const side of ['left', 'right'])
      expect(links).toMatchObject({
        [`to-filter-${side}`]: `amp.CH${side === 'left' ? 1 : 2} filter-${side}.IN`,
        [`to-front-${side}`]: `filter-${side}.W front-${side}.C1`,
        [`to-tweeter-${side}`]: `filter-${side}.T tweeter-${side}.C1`,
      });
    expect(proposed('to-tweeter-left')?.reason).toMatch(
      /^T of filter-left is the way for what tweeter-left plays/,
    );
  });

  test('is told what to drive by it where nothing plays behind it', () => {
    const lone = changed('under-seat-five', [front, '  filter: { part: passive-two, in: [cargo-floor] }\n']);
    expect(linksOf(lone, files).problems).toContainEqual(
      expect.stringMatching(
        /^filter: nothing plays behind it.*; write driven-by: filter at its woofers and its tweeters$/,
      ),
    );
  });

  test('drives no second crossover: the speakers behind it name it themselves', () => {
    const second =
      '  front-crossover: { part: passive-two, in: [left-door, right-door], driven-by: filter }\n';
    const two = changed('under-seat-five', [front, `${set}${second}`]);
    expect(linksOf(two, files).problems).toContainEqual(
      expect.stringMatching(
        /^filter is a crossover, which drives no crossover.*; take this one out, and write driven-by: filter at the woofers and tweeters behind it$/,
      ),
    );
  });

  test('plays from where its woofer begins, with no filter of the amplifier between its drivers', () => {
    const filters = read?.devices.find(({ id }) => id === 'amp')?.given?.filters.CH1;
    // By the table of bands: a frame of 6 1/2 in begins at 80 Hz, where the subwoofer hands over (common practice).
    expect(filters).toEqual([expect.objectContaining({ pass: 'high-pass', corner: 80 })]);
  });

  test('has leads within a door that nobody measured: that is told, with the line to write', () => {
    if (!read) throw new Error('The job is read.');
    const { plan, remarks } = planKept(read);
    const told = judge(read, plan, remarks).find(({ rule }) => rule === 'length-not-measured');
    expect(told?.message).toMatch(
      /nobody measured how long .*to-front-left.* are; assumed: .*to-front-left 7 in/,
    );
    expect(told?.remedy).toMatch(
      /under links: to-front-left: \{ from: filter-left\.W, to: front-left\.C1, length: 7 in \}/,
    );
  });

  test("is wired by its maker's own leads, with each driver at its channel, and no stop that is its own", () => {
    if (!read) throw new Error('The job is read.');
    const { plan, remarks } = planKept(read);
    const about = (id: string) => plan.audio.speakers.find((one) => one.id === id);
    expect(about('tweeter-left')).toMatchObject({
      channel: 'amp.1',
      passive: [expect.objectContaining({ pass: 'high-pass', cornerHz: 3000, order: 2 })],
    });
    expect(plan.audio.channels.find(({ id }) => id === 'amp.1')).toMatchObject({
      loadOhm: 4,
      speakers: ['tweeter-left', 'front-left'],
    });
    const ends = plan.wires
      .flatMap((wire) => wire.ends)
      .filter(({ terminal }) => /^filter-left\.[WT]/.test(terminal));
    expect(ends.map(({ form }) => form)).toEqual(ends.map(() => 'supplied-lead'));
    expect(ends).toHaveLength(4);
    const stops = judge(read, plan, remarks).filter(({ level }) => level === 'stop');
    const own = stops.filter(({ related }) => related.some((id) => /filter|front|tweeter/.test(id)));
    // The woofer of this set is deeper than the doors of this car.
    expect(new Set(own.map(({ rule }) => rule))).toEqual(new Set(['speaker-too-deep']));
  });

  test('may be no more than a filter in the lead of the tweeter, which hangs beside the woofer', () => {
    const inLead = changed('under-seat-five', [
      front,
      set
        .replace('passive-two, in: [left-door, right-door]', '$&, driven-by: front')
        .replace('[left-door, right-door], driven-by: filter', '[left-door, right-door], driven-by: amp'),
    ]);
    const capacitor = shopWith(
      'parts/speakers.yaml',
      'parts:\n',
      passive
        .replace('W, T', 'T')
        .replace('T: from 3 kHz, W: up to 3 kHz', 'T: from 4 kHz')
        .replace('order: 2', 'order: 1'),
    );
    const short = linksOf(inLead, capacitor);
    expect(short.problems).toEqual([]);
    expect(short.links).toMatchObject({
      'to-front-left': 'amp.CH1 front-left.C1',
      'to-filter-left': 'front-left.C1 filter-left.IN',
      'to-tweeter-left': 'filter-left.T tweeter-left.C1',
    });
    if (!short.job) throw new Error('The job is read.');
    const { plan, remarks } = planKept(short.job);
    const channel = plan.audio.channels.find(({ id }) => id === 'amp.1');
    // A capacitor beside the woofer takes no bass: load, power and what a meter reads are the woofer's alone.
    expect(channel).toMatchObject({ loadOhm: 4, speakers: ['tweeter-left', 'front-left'] });
    expect(channel?.dcResistanceOhm?.fromOhm).toBeGreaterThan(3);
    // At 20 kHz the 0.5 mH of the woofer are 63 ohm beside the 3.2 ohm (80 % of 4) of the tweeter.
    expect(channel?.least?.ohm).toBeCloseTo(3.2, 1);
    const corners = short.job.devices.find(({ id }) => id === 'amp')?.given?.filters.CH1;
    expect(corners?.map(({ pass }) => pass)).toEqual(['high-pass']);
    const stops = judge(short.job, plan, remarks).filter(({ level }) => level === 'stop');
    const own = stops.filter(({ related }) => related.some((id) => /filter|front|tweeter/.test(id)));
    expect(new Set(own.map(({ rule }) => rule))).toEqual(new Set(['speaker-too-deep']));
  });

  test.each([
    [
      'a way that no speaker is driven by',
      /^ {2}tweeter:.*\n/m,
      'filter-left has 2 ways, and 1 speaker is driven',
    ],
    [
      'a driver in one place alone',
      /(?<=tweeter-25, in: )\[left-door, right-door\]/,
      'filter-left has 2 ways, and 1 speaker is driven by it: front-left',
    ],
  ])('asks about %s', (_, cut, says) => {
    const text = job.replace(cut, (found) => (found.startsWith('[') ? 'left-door' : ''));
    expect(text).not.toBe(job);
    expect(linksOf(text, files).problems.join('\n')).toContain(says);
  });
});

import { describe, expect, test } from 'vitest';
import { linksOf, shopWith } from './links-of.ts';

/** The hatchback with ways from its source unit to the speakers. */
const wired = shopWith(
  'hatchback.yaml',
  '\nroutes:\n',
  `\nroutes:
  radio-left-door: { title: "Source unit to the left door", side: left, ends: [source-unit, left-door], passes: [cabin 5 ft] }
  radio-right-door: { title: "Source unit to the right door", side: right, ends: [source-unit, right-door], passes: [cabin 5 ft] }
  radio-left-rear: { title: "Source unit to the left rear", side: left, ends: [source-unit, left-rear], passes: [sill 12 ft] }
  radio-right-rear: { title: "Source unit to the right rear", side: right, ends: [source-unit, right-rear], passes: [sill 12 ft] }
`,
);

/** The same, its speaker outputs named, and in the order of a plug. */
const plugOrder = wired.map(({ path, text }) => ({
  path,
  text: text
    .replaceAll('SP1..4: {', '"RR, FR, FL, RL": {')
    .replaceAll('SP1..2: {', '"FL, FR": {')
    .replaceAll('SP3..4: {', '"RL, RR": {')
    .replace(/SP(\d)(?=[+-]?: )/g, (_, at) => ['FL', 'FR', 'RL', 'RR'][Number(at) - 1] ?? ''),
}));

const job = (...devices: readonly string[]) => `rackleaf: 1
id: door-speakers
title: "Speakers at the source unit"
issued-on: 2026-05-04
vehicle: hatchback
devices:
${devices.map((line) => `  ${line}`).join('\n')}
`;

const front = 'front: { part: coaxial-65, in: [left-door, right-door] }';
const rear = 'rear: { part: coaxial-525, in: [left-rear, right-rear] }';

describe('speakers without an amplifier', () => {
  test('hang on the outputs of the source unit by their row and side', () => {
    const { links, problems, proposed } = linksOf(job(front, rear), wired);
    expect(problems).toEqual([]);
    expect(links).toEqual({
      'to-front-left': 'source-unit.SP1 front-left.C1',
      'to-front-right': 'source-unit.SP2 front-right.C1',
      'to-rear-left': 'source-unit.SP3 rear-left.C1',
      'to-rear-right': 'source-unit.SP4 rear-right.C1',
    });
    expect(proposed('to-front-left')).toMatchObject({ rule: 'channels', mark: 'cp' });
    expect(proposed('to-front-left')?.reason).toMatch(
      /^source-unit drives it itself: front plays in the front row/,
    );
  });

  test('are asked for where the job leaves their output open', () => {
    const { problems } = linksOf(
      `${job(front, rear)}left-open: { "source-unit.SP3+|SP3-": insulated }\n`,
      wired,
    );
    expect(problems).toEqual([
      expect.stringMatching(/^rear-left would play rear-left of source-unit, and SP3 is left open;/),
    ]);
  });

  test('leave the outputs that nothing plays open, told with a doubt', () => {
    const { job: read } = linksOf(job(front), wired);
    const open = read?.proposals.filter(({ path }) => path[0] === 'left-open') ?? [];
    const doubted = open.filter(({ doubt }) => doubt === 'plays-nothing').map(({ path }) => path[1]);
    expect(doubted).toEqual(expect.arrayContaining(['source-unit.SP3+', 'source-unit.SP4-']));
    expect(doubted).not.toContain('source-unit.SP1+');
  });

  test('are told as a way out where an amplifier has fewer channels than speakers', () => {
    const amp = 'amp: { part: amp-four, in: left-door }';
    const more = 'more: { part: coaxial-525, in: [left-rear, right-rear] }';
    const { problems } = linksOf(job(amp, front, rear, more), wired);
    expect(problems.join('\n')).toMatch(
      /are 6 speakers;.* or write driven-by: source-unit at front or rear or more, which then plays from its own/,
    );
  });

  test('play the pair that the job names', () => {
    const { links } = linksOf(job(front.replace(' }', ', signal: rear }')), wired);
    expect(links['to-front-left']).toBe('source-unit.SP3 front-left.C1');
  });

  test('stay as a link is written', () => {
    const own = `${job(front, 'driven: { part: coaxial-525, in: left-rear, driven-by: source-unit }')}links:
  mine: { from: source-unit.SP4, to: driven.C1 }
`;
    expect(linksOf(own, wired).links.mine).toBe('source-unit.SP4 driven.C1');
    expect(Object.keys(linksOf(own, wired).links)).not.toContain('to-driven');
  });

  test.each([
    [
      'a tweeter',
      'top: { part: tweeter-25, in: [left-door, right-door] }',
      /does not filter; drive it by an amplifier/,
    ],
    ['a band', front.replace(' }', ', plays: from 100 Hz }'), /nothing before front makes its band/],
    [
      'a subwoofer',
      'sub: { part: subwoofer-10-single-4, in: cargo-floor }',
      /more than the speaker outputs of source-unit drive/,
    ],
    [
      'a second pair in one row',
      `${front}\n  other: { part: coaxial-525, in: [left-door, right-door] }`,
      /would play front-left of source-unit, and SP1 is taken/,
    ],
  ])('are asked for where the source unit can not drive them: %s', (_, line, says) => {
    const { job: read, problems } = linksOf(job(line), wired);
    expect(read).toBeNull();
    expect(problems.join('\n')).toMatch(says);
  });

  test('hang on the outputs that are named for their row and side, whatever their order in the part', () => {
    const { links, problems } = linksOf(job(front, rear), plugOrder);
    expect(problems).toEqual([]);
    expect(links).toEqual({
      'to-front-left': 'source-unit.FL front-left.C1',
      'to-front-right': 'source-unit.FR front-right.C1',
      'to-rear-left': 'source-unit.RL rear-left.C1',
      'to-rear-right': 'source-unit.RR rear-right.C1',
    });
  });
});

import { describe, expect, it } from 'vitest';
import { readContent } from '../../../lib/read/read-content.ts';
import { expectProblem, inJob, partsFile } from '../problem-case.ts';
import { type Change, smallShop } from '../small-shop.ts';

/** A bar with two large ports and two small ones. */
const bar: Change = [
  partsFile,
  '  bolt-a:',
  `  bar-a:
    kind: distribution
    title: Ground bar
    size: { width: 100 mm, depth: 80 mm, height: 40 mm }
    mass: 1 kg
    current: 150 A
    terminals:
      G1: { role: ground-bar, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }
      G2: { role: ground-bar, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }
      G3: { role: ground-bar, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }
      S1: { role: ground-bar, joint: screw-clamp, takes: { from: 18 AWG, to: 10 AWG } }
  bolt-a:`,
];
const device = inJob(
  '  sub: { part: woofer-a, in: boot }',
  '  sub: { part: woofer-a, in: boot }\n  bar: { part: bar-a, in: boot }',
);
const grounds = (first: string, second: string): Change =>
  inJob(
    '  ground: { from: amp.GND, to: body.cargo, length: 12 in }',
    `  ground: { from: amp.GND, to: ${first}, length: 12 in }\n  out: { from: ${second}, to: body.cargo, length: 12 in }`,
  );

const linksOf = (...changes: readonly Change[]) => {
  const { jobs, problems } = readContent(smallShop(bar, device, ...changes));
  expect(problems).toEqual([]);
  return new Map(jobs[0]?.links.map((link) => [link.id, link]));
};

describe('a link that names several like ports', () => {
  it('gets the first that is free, and keeps all that would do', () => {
    const links = linksOf(grounds('bar.G1|G2|G3', 'bar.G1'));
    expect(links.get('ground')).toMatchObject({
      to: { device: 'bar', terminal: 'G2' },
      open: [{ end: 'to', ports: ['G2', 'G3'] }],
    });
    expect(links.get('out')?.open).toBeUndefined();
  });

  it('shares them out: no port twice', () => {
    const links = linksOf(grounds('bar.G*', 'bar.G*'));
    expect(links.get('ground')?.to.terminal).toBe('G1');
    expect(links.get('out')?.from.terminal).toBe('G2');
    expect(links.get('out')?.open).toEqual([{ end: 'from', ports: ['G1', 'G2', 'G3'] }]);
  });

  it('leaves those alone that have a reason to stay open', () => {
    const links = linksOf(
      grounds('bar.G*', 'bar.G*'),
      inJob('left-open:\n', 'left-open:\n  bar.G1: kept for the next amplifier\n'),
    );
    expect(links.get('out')?.open).toEqual([{ end: 'from', ports: ['G2', 'G3'] }]);
  });

  it('may leave what remains open under the same name', () => {
    const { problems } = readContent(
      smallShop(
        bar,
        device,
        grounds('bar.G*', 'bar.G*'),
        inJob('left-open:\n', 'left-open:\n  bar.G*: not used\n  bar.S1: not used\n'),
      ),
    );
    expect(problems).toEqual([]);
  });

  it('is refused where they are unlike, unknown or taken', () => {
    expectProblem({
      name: 'unlike',
      changes: [bar, device, grounds('^bar.G1|S1', 'bar.G2')],
      says: /unlike ports, G1 and S1/,
      remedy: /stroke/,
    });
    expectProblem({
      name: 'unknown',
      changes: [bar, device, grounds('^bar.G1|G9', 'bar.G2')],
      says: /"G9" is no terminal of bar|no terminal of bar called "G9"|G9/,
    });
    for (const name of ['|', 'G1|', '|G1'])
      expectProblem({
        name: `nothing beside the stroke of ${name}`,
        changes: [bar, device, grounds(`^bar.${name}`, 'bar.G2')],
        says: /no port of bar is named beside a stroke/,
        remedy: /OUT1\|OUT2/,
      });
    expectProblem({
      name: 'of unlike current',
      changes: [
        [bar[0], bar[1], bar[2].replace('G2: { role: ground-bar,', 'G2: { role: ground-bar, current: 30 A,')],
        device,
        grounds('^bar.G1|G2', 'bar.G3'),
      ],
      says: /unlike ports, G1 and G2/,
    });
    expectProblem({
      name: 'taken',
      changes: [
        bar,
        device,
        grounds('^bar.G1|G2', 'bar.G1'),
        inJob('left-open:\n', 'left-open:\n  bar.G2: spare\n'),
      ],
      says: /no port of bar\.G1\|G2 is free: each is named elsewhere/,
    });
  });
});

import { describe, expect, test } from 'vitest';
import { changed, linksOf } from '../../short-jobs/links-of.ts';
import { shop } from '../../short-jobs/short-shop.ts';

/** A ground block as an amplifier wants it: none of its ports takes the 18 AWG of a fan. */
const tight = {
  path: 'content/parts/tight-block.yaml',
  text: `rackleaf: 1
parts:
  tight-block:
    kind: distribution
    title: "Ground block, one in, four out"
    size: { width: 62 mm, depth: 36 mm, height: 32 mm }
    mass: 0.085 kg
    mounting-holes: [{ x: 6 mm, y: 18 mm, diameter: 4.5 mm }, { x: 56 mm, y: 18 mm, diameter: 4.5 mm }]
    terminals:
      IN: { role: ground-bar, panel: left, at: 18 mm, joint: set-screw, torque: 3 N m, strip: 14 mm, takes: 8 AWG to 4 AWG }
      OUT1..4: { role: ground-bar, panel: right, at: 6 mm, pitch: 8 mm, joint: set-screw, torque: 2.5 N m, strip: 12 mm, takes: 10 AWG to 6 AWG }
    current: 100 A
`,
};

const bass = (devices: string, more = '') =>
  changed('one-bass-amplifier', ['  amp: {', `${devices}  amp: {`]).replace('\nboards:', `${more}\nboards:`);

describe('a fan beside what stands on the board', () => {
  const withBlock = '  block: { part: tight-block, on: board }\n';
  const left = '\nleft-open: { block.OUT2|OUT3|OUT4: spare }\n';

  test('is grounded at the body where the ground block takes no wire so thin, and the amplifier stays at the block', () => {
    const text = bass(`${withBlock}  fan: { part: fan-80, on: board }\n`, left);
    const { links, problems } = linksOf(text, [...shop, tight]);
    expect(problems).toEqual([]);
    expect(links['ground-fan']).toMatch(/^fan\.- body\./);
    expect(links['ground-amp']).toMatch(/^amp\.GND block\.OUT/);
  });

  test('is grounded at the bar that takes its wire where there are two', () => {
    const bar = '  bar: { part: ground-bar-4, on: board }\n';
    const text = bass(`${withBlock}${bar}  fan: { part: fan-80, on: board }\n`, left);
    expect(linksOf(text, [...shop, tight]).links['ground-fan']).toMatch(/^fan\.- bar\./);
  });

  test('shares the stud of the ground point with the only amplifier, each by its own lead: two need no bar', () => {
    const { links, job, problems } = linksOf(bass('  fan: { part: fan-80, on: board }\n'));
    expect(problems).toEqual([]);
    const point = /^fan\.- (body\.\S+)$/.exec(links['ground-fan'] ?? '')?.[1];
    expect(links['ground-amp']).toBe(`amp.GND ${point}`);
    expect(job?.devices.map(({ id }) => id).filter((id) => id.startsWith('ground-bar'))).toEqual([]);
  });

  test('brings a bar with it where it is the third ground', () => {
    const two = '  fan: { part: fan-80, on: board }\n  other: { part: fan-80, on: board }\n';
    const { links, problems } = linksOf(bass(two));
    expect(problems).toEqual([]);
    for (const id of ['amp', 'fan', 'other']) expect(links[`ground-${id}`]).toMatch(/ ground-bar\./);
    expect(links['ground-body']).toMatch(/^ground-bar\.\S+ body\./);
  });

  test('is turned on by a free way of the strip that the source feeds already: its output keeps one wire', () => {
    const text = changed('estate-side-well', [
      '  level: {',
      '  fan: { part: fan-80, on: board }\n  strip: { part: strip-turn-on-4, on: board }\n  level: {',
    ]).replace(
      '\nboards:',
      '\nlinks:\n  turn-on-strip: { from: source-unit.REM-OUT, to: strip.IN }\n  turn-on-dsp: { from: strip.OUT1|OUT2|OUT3|OUT4, to: dsp.REM }\n\nboards:',
    );
    const { links, problems } = linksOf(text);
    expect(problems).toEqual([]);
    expect(links['turn-on-fan']).toMatch(/^strip\.OUT.* fan\.\+$/);
    expect(Object.values(links).filter((one) => one.includes('source-unit.REM-OUT'))).toHaveLength(1);
  });
});

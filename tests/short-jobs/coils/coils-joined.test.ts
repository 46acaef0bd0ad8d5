import { describe, expect, test } from 'vitest';
import { changed, linksOf } from '../links-of.ts';

/** A subwoofer with two coils of 4 ohm and 500 W on an amplifier with 400, 700 and 1000 W into 4, 2 and 1 ohm. */
const bass = (more: string, sub = '') =>
  changed(
    'one-bass-amplifier',
    ['amp: { part: amp-mono-400, on: board }', `amp: { part: amp-mono-1000, on: board${more} }`],
    ['in: cargo-floor }', `in: cargo-floor${sub} }`],
  );
const parallel = 'sub.C1 sub.C2';
const series = 'sub.C1- sub.C2+';

describe('the coils of a subwoofer', () => {
  // 2 ohm take 700 W, which passes the 500 W of the speaker; 8 ohm take 200 W.
  test('are joined for the power that comes nearest to what it takes without passing it', () => {
    const { links, proposed } = linksOf(bass(''));
    expect(links['sub-series']).toBe(series);
    expect(proposed('sub-series')?.reason).toMatch(
      /^8 ohm take 200 W, .*within the 500 W .* 2 ohm, coils in parallel, would take 700 W/,
    );
  });

  // 2 ohm take 400 W of the smaller amplifier, 8 ohm 120 W.
  test('the same where the job names the channel', () => {
    const { links, proposed } = linksOf(
      changed('one-bass-amplifier', ['in: cargo-floor }', 'in: cargo-floor, channels: ["1"] }']),
    );
    expect(links['sub-jumper']).toBe(parallel);
    expect(proposed('sub-jumper')?.reason).toMatch(/^as channels: says; 2 ohm take 400 W, .*in parallel/);
  });

  test('are joined for the load that the job asks for', () => {
    const { links, proposed, problems } = linksOf(bass(', loads: { "1": 2 ohm }'));
    expect(problems).toEqual([]);
    expect(links['sub-jumper']).toBe(parallel);
    expect(proposed('sub-jumper')?.reason).toMatch(/^as loads: says, 2 ohm take 700 W/);
  });

  test('are joined as ever where no joining gives what the job asks for', () => {
    const { links } = linksOf(bass(', loads: { "1": 3 ohm }'));
    expect(links['sub-series']).toBe(series);
  });
});

import { describe, expect, test } from 'vitest';
import { inJob } from '../../../read/problem-case.ts';
import { byId, smallPlan } from '../../plan-small-shop.ts';
import { addParts, inParts } from '../../shop-changes.ts';

const clamp = 'B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG }';

/** The end of the feed of 4 AWG at the amplifier, and what the steps say of its ferrule. */
function feedAt(port: string, size = '4 AWG') {
  const { plan, remarks } = smallPlan(
    inJob('to: amp.B+ }', `to: amp.B+, size: ${size} }`),
    addParts('ferrule-4: { kind: terminal, title: F, form: ferrule, takes: { from: 8 AWG, to: 4 AWG } }'),
    inParts(`${clamp} }`, `${clamp}${port} }`),
  );
  const end = byId(plan.wires, 'feed').ends.find(({ terminal }) => terminal === 'amp.B+');
  const texts = plan.steps
    .map(({ text }) => text)
    .filter((text) => /amp\.B\+[^;]* dry in its port/.test(text));
  return { end, texts, refused: remarks.filter(({ rule }) => rule === 'port-refuses-conductor') };
}

// 4 AWG has 21.15 mm2 (ASTM B258), and its ferrule is named for 25 mm2 (DIN 46228-4): the port's range is that of the bare
// conductor, and whether the ferrule goes in is tried. Common practice, no source.
describe('a ferrule that is named above what its port takes', () => {
  test('is tried dry before it is crimped, with what is done if it does not go in', () => {
    const { end, texts } = feedAt('');
    expect(end).toMatchObject({ form: 'ferrule', ifTooWide: 'bare' });
    expect(texts).toHaveLength(1);
    expect(texts[0]).toMatch(
      / at amp\.B\+ dry in its port before it is crimped: one .* go in bare and twisted/,
    );
  });

  test('is replaced by a pin adapter where its maker asks for a ferrule', () => {
    const { end, texts } = feedAt(', ferrule: required');
    expect(end).toMatchObject({ form: 'ferrule', ifTooWide: 'pin-adapter' });
    expect(texts[0]).toContain('in place of one that does not go in a pin adapter');
  });

  test('is not doubted where it is named for what the port takes, or where its maker tells that it goes in', () => {
    for (const { end, texts } of [feedAt('', '8 AWG'), feedAt(', ferrule-most: 25 mm2')]) {
      expect(end).toMatchObject({ form: 'ferrule' });
      expect(end).not.toHaveProperty('ifTooWide');
      expect(texts).toEqual([]);
    }
  });

  test('is left off where its maker tells that it does not, and refused where he asks for one all the same', () => {
    expect(feedAt(', ferrule-most: 16 mm2').end).toMatchObject({ form: 'bare' });
    const { end, refused } = feedAt(', ferrule-most: 16 mm2, ferrule: required');
    expect(end).toMatchObject({ form: 'refused' });
    expect(refused[0]?.message).toMatch(/needs a ferrule and takes at most one of 16 mm2/);
  });
});

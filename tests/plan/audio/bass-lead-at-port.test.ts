import { describe, expect, test } from 'vitest';
import { awgSize } from '../../../lib/model/quantity/wire-size.ts';
import { partIn } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';
import { planned } from '../planned.ts';

/** The small job with reels of speaker wire, and an amplifier whose bass outputs take no more than one of them. */
const upTo = (awg: string) =>
  planned((content: Written) => {
    const { terminals } = partIn(content, 'two-channel', 'amplifier');
    for (const end of ['CH2+', 'CH2-'])
      Object.assign(terminals[end] ?? {}, { takes: { from: '24 AWG', to: `${awg} AWG` } });
    for (const size of ['16', '14', '12', '10'])
      Object.assign(content.parts, {
        [`speaker-${size}`]: {
          ...{ kind: 'wire', title: `Speaker wire, ${size} AWG`, size: `${size} AWG`, colour: 'BK' },
          ...{ for: ['speaker'], insulation: '80 C' },
        },
      });
  });

const sizesOf = ({ plan }: ReturnType<typeof upTo>) =>
  plan.wires.filter(({ link }) => link === 'speaker-2').map(({ size }) => size.label);
const noneFits = ({ remarks }: ReturnType<typeof upTo>) =>
  remarks.filter(
    ({ remark: { rule, of } }) => rule === 'conductor-none-fits' && of[0]?.startsWith('speaker-2'),
  );

// Common practice, no source: 12 AWG for a bass lead into 4 ohm. A rule that only cautions makes no stop.
describe('a bass lead at a port that takes less than its rule asks for', () => {
  test('is as thick as the port takes', () => {
    const thin = upTo('14');
    expect(sizesOf(thin)).toEqual(['14 AWG', '14 AWG']);
    expect(noneFits(thin)).toEqual([]);
  });

  test('is what the rule asks for where the port takes just that', () => {
    const wide = upTo('12');
    expect(sizesOf(wide).every((label) => (awgSize(label.replace(' AWG', '')).areaMm2 ?? 0) >= 3.3)).toBe(
      true,
    );
    expect(noneFits(wide)).toEqual([]);
  });
});

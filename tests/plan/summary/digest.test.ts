import { describe, expect, it } from 'vitest';
import { roundedDigest } from './digest.ts';

describe('the digest of a part of a plan', () => {
  const part = { voltageV: 12.0081717, drops: [0.216116694, -0.0030001], of: 'amp' };
  const changed = (change: object): string => roundedDigest({ ...part, ...change });

  it('goes by the last digits of the solver, and by what is left of nought', () => {
    expect(changed({ drops: [0.216116693, -0.0030001] })).toBe(roundedDigest(part));
    expect(changed({ residualA: 2.1e-11 })).toBe(changed({ residualA: -7.2e-10 }));
    expect(changed({ residualA: -0 })).toBe(changed({ residualA: 0 }));
  });

  it('tells a tenth of a millivolt, a word, an order and a missing value', () => {
    const others = [
      changed({ voltageV: 12.0080717 }),
      changed({ drops: [0.216118, -0.0030001] }),
      changed({ drops: [-0.0030001, 0.216116694] }),
      changed({ of: 'amp-sub' }),
      changed({ voltageV: null }),
    ];
    expect(new Set([...others, roundedDigest(part)]).size).toBe(6);
  });
});

import { describe, expect, it } from 'vitest';
import type { Coil } from '../../../lib/audio/load/coil-wiring.ts';
import { plugResistance } from '../../../lib/audio/load/plug-resistance.ts';
import { isFault } from '../../../lib/model/fault.ts';
import { outsideCheck } from '../../outside-check.ts';
import { wireBySpeaker } from './wire-by-speaker.ts';

const byHand = outsideCheck('audio-by-hand');

const door: Coil = { id: 'door', speaker: 'door', nominalOhm: 4 };

function range(coils: readonly Coil[], wireOhm?: number) {
  const wiring = wireBySpeaker(coils, { coils: 'series', speakers: 'parallel' });
  const found = plugResistance('front', wiring, coils, { least: 0.75, most: 0.85 }, wireOhm);
  if (isFault(found)) throw new Error(found.message);
  return found;
}

describe('resistance at the plug', () => {
  // Common practice, no source: a direct-current reading is 0.75 to 0.85 of the nominal load.
  it('is 3.0 to 3.4 ohm for a 4 ohm speaker', () => {
    expect(byHand.differs(range([door]).fromOhm.value, 3)).toBeCloseTo(3, 12);
    expect(byHand.differs(range([door]).toOhm.value, 3.4)).toBeCloseTo(3.4, 12);
    expect(range([door]).expectedOhm.trace.mark).toBe('cp');
  });

  it('has the wire on top', () => {
    expect(byHand.differs(range([door], 0.1).expectedOhm.value, 3.3)).toBeCloseTo(3.3, 12);
  });

  it("follows the coils' own data where every coil has it", () => {
    const rear: Coil = { ...door, id: 'rear', speaker: 'rear' };
    expect(
      range([
        { ...door, dcOhm: 3.6 },
        { ...rear, dcOhm: 3.6 },
      ]).expectedOhm.value,
    ).toBeCloseTo(1.8, 12);
    expect(range([{ ...door, dcOhm: 3.6 }, rear]).expectedOhm.value).toBeCloseTo(1.6, 12);
  });

  it('is refused for a channel without speaker', () => {
    expect(plugResistance('front', null, [], { least: 0.75, most: 0.85 })).toMatchObject({
      fault: 'channel-without-speaker',
    });
  });
});

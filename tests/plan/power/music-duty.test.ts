import { describe, expect, it } from 'vitest';
import { musicDuty } from '../../../lib/plan/power/music-duty.ts';
import { usualHouseRules } from '../../power/usual-rules.ts';
import { smallPlan } from '../plan-small-shop.ts';
import { inParts } from '../shop-changes.ts';

const channel = (powerW: number, bass: boolean) => ({ id: `amp.${powerW}`, powerW, bass });

// Common practice, no source: an eighth of rated power for music, a third for heavy bass.
describe('the average output of an amplifier with music', () => {
  it('counts a channel that plays bass at a third, whatever its class, and the others at an eighth', () => {
    const five = [75, 75, 75, 75].map((powerW) => channel(powerW, false));
    // (300 / 8 + 160 / 3) / 460 = 0.19746.
    expect(musicDuty([...five, channel(160, true)], usualHouseRules).value).toBeCloseTo(0.19746, 5);
    expect(musicDuty(five, usualHouseRules).value).toBe(1 / 8);
    expect(musicDuty([channel(160, true)], usualHouseRules).value).toBe(1 / 3);
    expect(musicDuty([channel(0, true), channel(75, false)], usualHouseRules).value).toBe(1 / 8);
  });

  it('of channels of one kind alone is told as their duty, and of none as that of music', () => {
    const told = (...channels: ReturnType<typeof channel>[]) => {
      const { value, trace } = musicDuty(channels, usualHouseRules);
      return {
        value,
        formula: trace.formula,
        inputs: trace.inputs.map((input) => [input.name, input.value]),
      };
    };
    const alone = (value: number) => ({ value, formula: 'd', inputs: [['d', value]] });
    expect(told(channel(75, false))).toEqual(alone(1 / 8));
    expect(told(channel(160, true))).toEqual(alone(1 / 3));
    expect(told()).toEqual(alone(1 / 8));
    expect(told(channel(75, false), channel(160, true)).inputs.map(([name]) => name)).toEqual([
      'd',
      'P',
      'b',
      'B',
    ]);
  });

  it('follows what the channel is wired to in a job', () => {
    const [bass] = smallPlan().plan.power.loads.filter(({ item }) => item === 'amp');
    const [other] = smallPlan(inParts('band: subwoofer', 'band: full-range')).plan.power.loads.filter(
      ({ item }) => item === 'amp',
    );
    // 100 W at 0.55 + 0.2 * 5 / 21 and 13.8 V: 12.13 A; 37.5 W at 0.55: 4.94 A.
    expect(bass?.musicA).toBeCloseTo(12.13, 2);
    expect(other?.musicA).toBeCloseTo(4.94, 2);
  });
});

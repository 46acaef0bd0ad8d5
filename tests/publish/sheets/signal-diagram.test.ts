import { describe, expect, test } from 'vitest';
import { signalDiagram } from '../../../lib/publish/sheets/signal-diagram.ts';
import { samplePlan } from '../sample/sample-plan.ts';

/** What stands in the table of gains under the power, for a channel of 65 W whose gain is set for so much. */
function setFor(targetPowerW: number | null): string {
  const plan = samplePlan();
  const channels = plan.audio.channels.map((channel) => ({
    ...channel,
    powerW: 65,
    gain: targetPowerW === null || !channel.gain ? null : { ...channel.gain, targetPowerW },
  }));
  const sheet = signalDiagram.model({ ...plan, audio: { ...plan.audio, channels } });
  const table = sheet?.tables.find(({ caption }) => caption.startsWith('Setting of gain'));
  const at = table?.columns.findIndex(({ title }) => title === 'Set for') ?? -1;
  const cell = table?.rows[0]?.cells[at];
  return JSON.stringify(cell);
}

describe('the table of gains', () => {
  test('tells the power that its voltage is set for, beside what the amplifier gives where that is more', () => {
    expect(setFor(50)).toContain('"50 W"');
    expect(setFor(50)).toContain('the amplifier gives 65 W');
    expect(setFor(65)).toContain('"65 W"');
    expect(setFor(65)).not.toContain('gives');
  });

  test('tells no power where there is no voltage', () => {
    expect(setFor(null)).not.toMatch(/ W/);
  });
});

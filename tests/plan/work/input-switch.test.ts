import { describe, expect, test } from 'vitest';
import { inputState } from '../../../lib/plan/work/input-switch.ts';
import { entry, jobOf, partIn } from '../../rules/case.ts';
import { type Written, written } from '../../rules/content.ts';

/** How the switch for the inputs of an amplifier stands that takes line level at IN1 and IN2, and speaker level at HIGH. */
function stateOf(positions: readonly string[], change: (content: Written) => void = () => {}) {
  const content = written();
  const amplifier = partIn(content, 'two-channel', 'amplifier');
  Object.assign(amplifier.terminals, {
    'HIGH+': { role: 'speaker-in-positive' },
    'HIGH-': { role: 'speaker-in-negative' },
  });
  amplifier.controls = {
    INPUT: {
      ...{ what: 'input-mode', panel: 'left', form: 'switch', positions: [...positions] },
      ...{ safe: positions[0] ?? '', why: 'as delivered' },
    },
  };
  change(content);
  const job = jobOf(content);
  const device = job.devices.find(({ id }) => id === 'amp');
  if (!device) throw new Error('There is no amplifier.');
  return inputState(job, device, entry(device.facts.controls, 'INPUT'))?.state ?? null;
}

const bySpeaker = ({ job, parts }: Written) => {
  Object.assign(partIn({ parts, job } as Written, 'radio', 'source-unit').terminals, {
    'SP+': { role: 'speaker-out-positive' },
    'SP-': { role: 'speaker-out-negative' },
  });
  delete job.links['signal-1'];
  delete job.links['signal-2'];
  job.links['in-high'] = { from: 'radio.SP', to: 'amp.HIGH' };
};

describe('a switch for inputs', () => {
  // Common practice, no source: what the words on such a switch stand for.
  test.each([
    ['LINE', 'HIGH'],
    ['LOW', 'HIGH LEVEL'],
    ['RCA', 'SPEAKER'],
    ['Lo', 'Hi'],
  ])('of the positions %s and %s stands at the one whose inputs are linked', (line, speaker) => {
    for (const positions of [
      [line, speaker],
      [speaker, line],
    ]) {
      expect(stateOf(positions)).toBe(line);
      expect(stateOf(positions, bySpeaker)).toBe(speaker);
    }
  });

  test('is not decided where a word tells nothing, where inputs of both are linked, or none', () => {
    expect(stateOf(['LINE', 'AUX'])).toBeNull();
    expect(
      stateOf(['LINE', 'HIGH'], (content) => {
        bySpeaker(content);
        content.job.links['signal-1'] = { from: 'dsp.OUT1', to: 'amp.IN1' };
      }),
    ).toBeNull();
    expect(
      stateOf(['LINE', 'HIGH'], ({ job }) => {
        delete job.links['signal-1'];
        delete job.links['signal-2'];
      }),
    ).toBeNull();
  });

  test('goes by what its part says, before any word', () => {
    const told = (hears: Record<string, string[]>) =>
      stateOf(['A', 'LINE'], (content) => {
        Object.assign(partIn(content, 'two-channel', 'amplifier').controls?.INPUT ?? {}, { hears });
      });
    expect(told({ A: ['IN1', 'IN2'], LINE: ['HIGH'] })).toBe('A');
    expect(told({ A: ['IN1'], LINE: ['IN1', 'IN2'] })).toBe('LINE');
  });
});

import { describe, expect, it } from 'vitest';
import { entry } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';
import { planned } from '../planned.ts';

/** What the reader says of a job that it refuses. */
function refusal(change: (content: Written) => void): string {
  try {
    planned(change);
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
  return 'read without a problem';
}

describe('names in the audio part of a job', () => {
  it('of what a device waits for are devices and links, and not itself', () => {
    const waitingFor = (name: string) =>
      refusal(({ job }) => {
        entry(job.devices, 'amp').after = { [name]: 'it stands over it' };
      });
    expect(waitingFor('dsp-gruond')).toMatch(/devices\/amp\/after\/dsp-gruond: there is no device or link/);
    expect(waitingFor('amp')).toMatch(/amp waits for itself/);
    expect(waitingFor('dsp-ground')).toBe('read without a problem');
    expect(waitingFor('dsp')).toBe('read without a problem');
  });

  it('of an asked load are channels of an amplifier', () => {
    expect(
      refusal(({ job }) => {
        entry(job.devices, 'amp').loads = { '3': '4 ohm' };
      }),
    ).toMatch(/there is no channel of amp "3"/);
    expect(
      refusal(({ job }) => {
        entry(job.devices, 'dsp').loads = { '1': '4 ohm' };
      }),
    ).toMatch(/dsp is no amplifier/);
  });

  it('of polarity are speakers', () => {
    expect(
      refusal(({ job }) => {
        entry(job.devices, 'dsp').mounted = 'reversed';
      }),
    ).toMatch(/dsp is no speaker/);
  });

  it('of a branch share a terminal and a run, and part before its end', () => {
    const branch = (from: string, after: string, links: string[]) =>
      refusal(({ job }) => {
        job.devices['sub-2'] = { part: 'woofer', in: 'boot' };
        job.links['speaker-3'] = { from: 'amp.CH2', to: 'sub-2.C', branch: { from, after, leg: '0.5 m' } };
        entry(job.runs, 'right').links = ['radio-signal', ...links];
      });
    expect(branch('speaker-1', '1 m', ['speaker-2', 'speaker-3'])).toMatch(
      /shares no terminal with "speaker-1"/,
    );
    expect(branch('speaker-2', '1 m', ['speaker-2'])).toMatch(/lie in no common run/);
    expect(branch('speaker-2', '4 m', ['speaker-2', 'speaker-3'])).toMatch(
      /after 4000 mm, but the run right is 3000 mm/,
    );
    expect(branch('speaker-2', '1 m', ['speaker-2', 'speaker-3'])).toBe('read without a problem');
  });
});

import { describe, expect, test } from 'vitest';
import { planJob } from '../../lib/plan/plan-job.ts';
import { judge } from '../../lib/rules/index.ts';
import { joinCoils, withTwoCoils } from '../plan/planned.ts';
import { entry, jobOf } from './case.ts';
import { type Written, written } from './content.ts';
import { highPass } from './stereo.ts';

/** The families that a wrong wiring of speakers may be told in. */
const ofSpeakers =
  /^(coil|channel|load|speaker|pair|polarity|wiring|octaves|subwoofer|band|small-speaker|high-pass)/;

/** What the whole check says of channels and speakers of the small job, changed. */
function told(change: (content: Written) => void): readonly string[] {
  const content = written();
  entry(content.job.devices, 'dsp').filters = {
    OUT1: [highPass('3 kHz')],
    OUT2: [{ ...highPass('80 Hz'), pass: 'low-pass' }],
  };
  change(content);
  content.job.boards = {};
  for (const device of Object.values(content.job.devices)) {
    if (device.on === undefined) continue;
    delete device.on;
    device.in = 'boot';
  }
  const job = jobOf(content);
  const { plan, remarks } = planJob(job);
  return judge(job, plan, remarks)
    .filter(({ rule }) => ofSpeakers.test(rule) && rule !== 'octaves-unplayed')
    .map(({ rule, level, where }) => `${level} ${rule} ${where.path}`);
}

const relink =
  (minus: string) =>
  ({ job: { links } }: Written) => {
    delete links['speaker-2'];
    links.plus = { from: 'amp.CH2+', to: 'sub.C+' };
    links.minus = { from: minus, to: 'sub.C-' };
  };

describe('one cause gives one finding, at the place that must change', () => {
  test.each<[string, (content: Written) => void, readonly string[]]>([
    ['nothing wrong', () => {}, []],
    ['a coil back over the body', relink('body.cargo'), ['stop coil-to-body /links/minus']],
    [
      'a coil to the other channel',
      (content) => {
        relink('amp.CH1-')(content);
        delete content.job.links['speaker-1'];
        delete content.job.devices.tweeter;
      },
      ['stop pair-not-bridged /links/plus'],
    ],
    [
      'coils of one cone opposed',
      (content) => {
        withTwoCoils(content);
        joinCoils(content, 'series');
        Object.assign(content.job.links, {
          minus: { from: 'amp.CH2-', to: 'sub.D+' },
          middle: { from: 'sub.C-', to: 'sub.D-' },
        });
      },
      ['stop coils-opposed /links/minus'],
    ],
    [
      'a high-pass where the low-pass of the bass was meant',
      ({ job }) => {
        Object.assign(entry(job.devices, 'dsp').filters ?? {}, { OUT2: [highPass('80 Hz')] });
      },
      ['caution subwoofer-high-passed /devices/dsp/filters/OUT2'],
    ],
  ])('%s', (_, change, expected) => {
    expect(told(change)).toEqual(expected);
  });
});

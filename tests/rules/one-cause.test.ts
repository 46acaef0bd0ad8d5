import { describe, expect, test } from 'vitest';
import { judge } from '../../lib/rules/index.ts';
import { planKept } from '../plan/plan-kept.ts';
import { joinCoils, planned, withTwoCoils } from '../plan/planned.ts';
import { entry, jobOf, partIn } from './case.ts';
import { type Written, withoutBoard, written } from './content.ts';
import { crossedPair, highPass } from './stereo.ts';

/** The families that a wrong wiring of speakers may be told in. */
const ofSpeakers =
  /^(bass|coil|channel|end-off|load|port-too|speaker|pair|polarity|wiring|octaves|subwoofer|band|small-speaker|high-pass)/;

/** What the whole check says of channels and speakers of the small job, changed. */
function told(change: (content: Written) => void): readonly string[] {
  const content = written();
  entry(content.job.devices, 'dsp').filters = {
    OUT1: [highPass('3 kHz')],
    OUT2: [{ ...highPass('80 Hz'), pass: 'low-pass' }],
  };
  change(content);
  withoutBoard(content);
  const job = jobOf(content);
  const { plan, remarks } = planKept(job);
  return judge(job, plan, remarks)
    .filter(({ rule }) => ofSpeakers.test(rule) && rule !== 'octaves-unplayed')
    .map(({ rule, level, where }) => `${level} ${rule} ${where.path}`);
}

/** The two channels bridge over the outer terminals. */
function bridging(content: Written): void {
  partIn(content, 'two-channel', 'amplifier').bridges = {
    '1+2': {
      positive: 'CH1+',
      negative: 'CH2-',
      input: 'IN1',
      minimum: '4 ohm',
      powers: [{ load: '4 ohm', power: '200 W' }],
    },
  };
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
      'a coil between two channels, of which one plays another coil too',
      relink('amp.CH1-'),
      ['stop pair-not-bridged /links/plus'],
    ],
    [
      'the minus leads of two coils exchanged',
      (content) => {
        relink('amp.CH1-')(content);
        const { links } = content.job;
        delete links['speaker-1'];
        links['tweeter-plus'] = { from: 'amp.CH1+', to: 'tweeter.T+' };
        links['tweeter-minus'] = { from: 'amp.CH2-', to: 'tweeter.T-' };
      },
      ['stop pair-not-bridged /links/plus'],
    ],
    [
      'the same where the amplifier bridges the two',
      (content) => {
        bridging(content);
        const { job } = content;
        delete job.links['speaker-1'];
        delete job.devices.tweeter;
        job.links['speaker-2'] = { from: 'amp.CH1-', to: 'sub.C+' };
        job.links.minus = { from: 'amp.CH2+', to: 'sub.C-' };
      },
      ['stop pair-not-bridged /links/minus'],
    ],
    [
      'a thin pair to the bass',
      ({ job }) => Object.assign(entry(job.links, 'speaker-2'), { size: '16 AWG' }),
      ['caution bass-lead-thin /links/speaker-2'],
    ],
    [
      'two thin leads to the bass',
      (content) => {
        relink('amp.CH2-')(content);
        for (const link of ['plus', 'minus'])
          Object.assign(entry(content.job.links, link), { size: '16 AWG' });
      },
      ['caution bass-lead-thin /links/plus'],
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

describe('a coil that goes back over the body is sent to the terminal that was meant', () => {
  const remedyOf = (leftOpen: readonly string[], from: string) => {
    const content = written();
    bridging(content);
    const { job } = content;
    for (const link of ['speaker-1', 'speaker-2']) delete job.links[link];
    delete job.devices.tweeter;
    Object.assign(job.links, {
      plus: { from, to: 'sub.C+' },
      minus: { from: 'body.cargo', to: 'sub.C-' },
    });
    job['left-open'] = Object.fromEntries(leftOpen.map((terminal) => [`amp.${terminal}`, 'x']));
    const { remarks } = planned((made) => Object.assign(made, content));
    return remarks.flatMap(({ remark }) => (remark.rule === 'coil-to-body' ? [remark.remedy] : []));
  };

  test.each([
    [
      'bridged, the inner terminals left open',
      ['CH1-', 'CH2+'],
      'amp.CH1+',
      'take it to amp.CH2- (1+2 bridged),',
    ],
    ['single, the other channel left open', ['CH2+', 'CH2-'], 'amp.CH1+', 'take it to amp.CH1-,'],
    ['neither told', [], 'amp.CH1+', 'take it to amp.CH2- (1+2 bridged), or to amp.CH1-,'],
    ['at the minus of the bridge', ['CH1-', 'CH2+'], 'amp.CH2-', 'take it to amp.CH1+ (1+2 bridged),'],
  ])('%s', (_, leftOpen, from, expected) => {
    expect(remedyOf(leftOpen, from)).toEqual([expect.stringContaining(expected)]);
  });

  test('a door on the left that plays the rear right is of another row and another side by one link', () => {
    const { job, plan } = crossedPair('RR', 'FR');
    const findings = judge(job, plan, []).filter(({ rule }) => /^(pair-crossed|sides-swapped)$/.test(rule));
    expect(findings.map(({ rule, related }) => `${rule} ${related[0]}`)).toEqual(['pair-crossed amp.1']);
    expect(findings[0]?.follows?.map(({ rule }) => rule)).toEqual(['sides-swapped']);
  });
});

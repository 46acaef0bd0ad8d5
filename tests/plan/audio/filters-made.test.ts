import { describe, expect, test } from 'vitest';
import { processorKnob } from '../../rules/audio/low-pass-knob.ts';
import { byId, entry, partIn } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';
import { plannedAudio } from './planned-audio.ts';

const highPass = (corner: `${number} Hz`) =>
  ({ pass: 'high-pass', type: 'butterworth', order: 2, corner }) as const;

/** The filters in the path of a channel, where each stands and at which corner. */
function pathOf(id: string, change: (content: Written) => void): readonly string[] {
  const { audio } = plannedAudio(change);
  return byId(audio.channels, id).filters.map(({ where, pass, cornerHz }) => `${where} ${pass} ${cornerHz}`);
}

describe('a filter is in a path only where a part makes it', () => {
  test('one asked of an amplifier without a control for it is not', () => {
    const asked = (content: Written) => {
      entry(content.job.devices, 'amp').filters = { 'CH1+': [highPass('80 Hz')] };
    };
    expect(pathOf('amp.1', asked)).toEqual([]);
    const withMenu = (content: Written) => {
      partIn(content, 'two-channel', 'amplifier')['filter-orders'] = [2];
      asked(content);
    };
    expect(pathOf('amp.1', withMenu)).toEqual(['amp.CH1+ high-pass 80']);
  });

  test('one asked of an output that the menu does not reach is not', () => {
    const asked = (outputs: string[]) => (content: Written) => {
      partIn(content, 'dsp', 'processor')['filter-outputs'] = outputs;
      entry(content.job.devices, 'dsp').filters = { OUT1: [highPass('3000 Hz')] };
    };
    expect(pathOf('amp.1', asked(['OUT2']))).toEqual([]);
    expect(pathOf('amp.1', asked(['OUT1', 'OUT2']))).toEqual(['dsp.OUT1 high-pass 3000']);
  });

  test('one whose control the job leaves where all passes is not', () => {
    const switched = (state: string) => (content: Written) => {
      const amp = partIn(content, 'two-channel', 'amplifier');
      amp.controls = {
        XOVER: {
          what: 'crossover-mode',
          form: 'switch',
          panel: 'left',
          positions: ['FULL', 'HPF'],
          safe: 'HPF',
          why: 'small cones',
          channels: ['1'],
          filter: { type: 'butterworth', order: 2, corner: '80 Hz', passes: { HPF: 'high-pass' } },
        },
      };
      Object.assign(entry(content.job.devices, 'amp'), {
        filters: { 'CH1+': [highPass('80 Hz')] },
        'after-commissioning': { XOVER: state },
      });
    };
    expect(pathOf('amp.1', switched('FULL'))).toEqual([]);
    expect(pathOf('amp.1', switched('HPF'))).toEqual(['amp.CH1+ high-pass 80']);
  });
});

describe('what stands before the amplifier', () => {
  test('a knob of an active crossover that has no off position cuts, asked or not', () => {
    const crossover = (content: Written) => {
      const dsp = partIn(content, 'dsp', 'processor');
      delete dsp['filter-orders'];
      dsp.controls = { LOW: { ...processorKnob, channels: ['OUT2'] } };
    };
    expect(pathOf('amp.2', crossover)).toEqual(['dsp.OUT2 low-pass 250']);
    expect(pathOf('amp.1', crossover)).toEqual([]);
  });

  test('a filter of the source passes a processor; of two inputs it plays, only what both have', () => {
    const atSource = (content: Written) => {
      partIn(content, 'radio', 'source-unit')['filter-orders'] = [2];
      entry(content.job.devices, 'radio').filters = { OUT: [highPass('30 Hz')] };
    };
    expect(pathOf('amp.1', atSource)).toEqual(['radio.OUT high-pass 30']);
    const second = (content: Written) => {
      atSource(content);
      partIn(content, 'dsp', 'processor').terminals.AUX = { role: 'signal-in', joint: 'phono' };
      partIn(content, 'radio', 'source-unit').terminals.OUT2 = { role: 'signal-out', joint: 'phono' };
      content.job.links.aux = { from: 'radio.OUT2', to: 'dsp.AUX' };
    };
    expect(pathOf('amp.1', second)).toEqual([]);
    const mixed = (content: Written) => {
      second(content);
      entry(content.job.devices, 'dsp').mix = { OUT1: ['IN'], OUT2: ['AUX'] };
    };
    expect(pathOf('amp.1', mixed)).toEqual(['radio.OUT high-pass 30']);
    expect(pathOf('amp.2', mixed)).toEqual([]);
  });

  test('a passive filter in the lead is in the path of what the lead feeds, and set nowhere', () => {
    const { audio } = plannedAudio((content) => {
      content.parts['lead-high-pass'] = {
        kind: 'cable',
        title: 'Line lead with a high-pass in it',
        form: 'coaxial',
        conductors: { one: { size: '24 AWG', colour: 'WH' } },
        for: ['signal'],
        'made-length': '1 m',
        plugs: 'phono',
        filter: { pass: 'high-pass', type: 'butterworth', order: 1, corner: '100 Hz' },
      };
      content.job.cables = { guard: { part: 'lead-high-pass' } };
      content.job.links['signal-1'] = {
        from: 'dsp.OUT1',
        to: 'amp.IN1',
        cable: 'guard',
        conductors: ['one'],
      };
    });
    expect(byId(audio.channels, 'amp.1').filters).toEqual([
      { where: 'guard.one', pass: 'high-pass', type: 'butterworth', order: 1, cornerHz: 100, inLead: true },
    ]);
    expect(byId(audio.channels, 'amp.2').filters).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { planControls } from '../../../lib/plan/work/controls.ts';
import { judge } from '../../../lib/rules/index.ts';
import { byId, entry, jobOf } from '../../rules/case.ts';
import { type Written, withoutBoard, written } from '../../rules/content.ts';
import { planKept } from '../plan-kept.ts';
import { planned } from '../planned.ts';
import { plannedAudio } from './planned-audio.ts';

const body = { size: { width: '100 mm', depth: '60 mm', height: '30 mm' }, mass: '0.2 kg' };

/** The tweeter of channel 1 behind a crossover of two ways, and a midbass beside it. */
function withCrossover(content: Written): void {
  const { parts, job } = content;
  parts.passive = {
    kind: 'crossover',
    title: 'Passive crossover',
    ...body,
    load: '4 ohm',
    power: '90 W',
    order: 2,
    ways: { W: 'up to 3 kHz', T: 'from 3 kHz' },
    terminals: {
      'IN+': { role: 'coil-positive' },
      'IN-': { role: 'coil-negative' },
      'W+': { role: 'speaker-out-positive' },
      'W-': { role: 'speaker-out-negative' },
      'T+': { role: 'speaker-out-positive' },
      'T-': { role: 'speaker-out-negative' },
    },
  };
  parts.midbass = {
    kind: 'speaker',
    title: 'Midbass',
    ...body,
    band: 'midbass',
    power: '90 W',
    'lowest-frequency': '70 Hz',
    coils: { C: { positive: 'C+', negative: 'C-', nominal: '4 ohm' } },
    terminals: { 'C+': { role: 'coil-positive' }, 'C-': { role: 'coil-negative' } },
  };
  job.devices.passive = { part: 'passive', in: 'door' };
  job.devices.midbass = { part: 'midbass', in: 'door' };
  entry(job.links, 'speaker-1').to = 'passive.IN';
  job.links['to-midbass'] = { from: 'passive.W', to: 'midbass.C' };
  job.links['to-tweeter'] = { from: 'passive.T', to: 'tweeter.T' };
}

describe('a passive crossover between a channel and the speakers of its set', () => {
  it('is the load that its leaflet tells, whatever hangs on its ways', () => {
    const { audio, remarks } = plannedAudio(withCrossover);
    const channel = byId(audio.channels, 'amp.1');
    expect(channel.loadOhm).toBe(4);
    expect(channel.speakers).toEqual(['midbass', 'tweeter']);
    expect(remarks.map(({ rule }) => rule)).not.toContain('speaker-without-channel');
    expect(byId(audio.speakers, 'tweeter').channel).toBe('amp.1');
  });

  it('gives each speaker the band of its way, and leaves the channel as it is', () => {
    const { audio } = plannedAudio(withCrossover);
    const passed = (id: string) =>
      (byId(audio.speakers, id).passive ?? []).map(({ pass, cornerHz, order }) => [pass, cornerHz, order]);
    expect(passed('tweeter')).toEqual([['high-pass', 3000, 2]]);
    expect(passed('midbass')).toEqual([['low-pass', 3000, 2]]);
    expect(byId(audio.speakers, 'sub').passive).toBeUndefined();
    const corners = byId(audio.channels, 'amp.1').filters.map(({ cornerHz }) => cornerHz);
    expect(corners).not.toContain(3000);
  });

  it('has its jumper among the settings as it is delivered, and moves no level by itself', () => {
    const { job, audio } = plannedAudio((content) => {
      withCrossover(content);
      Object.assign(content.parts.passive ?? {}, {
        controls: {
          TWEETER: {
            ...{ what: 'level', form: 'switch', panel: 'face', positions: ['0 dB', '-3 dB'] },
            ...{ safe: '0 dB', why: 'as its maker delivers it' },
          },
        },
      });
    });
    const [jumper, ...others] = planControls(job, audio).filter(({ item }) => item === 'passive');
    expect(others).toEqual([]);
    expect(jumper).toMatchObject({ control: 'TWEETER', preset: '0 dB', safe: true, chosen: 'computed' });
    expect(jumper?.final).toMatchObject({ state: '0 dB', why: 'stays' });
    expect(byId(audio.channels, 'amp.1').level).toBeUndefined();
  });

  it('turns a speaker round where it, or the crossover, is linked the other way round, and not where both are', () => {
    const turned = (...links: readonly string[]) => {
      const { audio } = plannedAudio((content) => {
        withCrossover(content);
        for (const id of links) {
          const { from, to } = entry(content.job.links, id);
          delete content.job.links[id];
          content.job.links[`${id}-plus`] = { from: `${from}+`, to: `${to}-` };
          content.job.links[`${id}-minus`] = { from: `${from}-`, to: `${to}+` };
        }
      });
      return ['midbass', 'tweeter'].map((id) => byId(audio.speakers, id).polarity);
    };
    expect(turned()).toEqual(['normal', 'normal']);
    expect(turned('to-tweeter')).toEqual(['normal', 'reversed']);
    expect(turned('speaker-1')).toEqual(['reversed', 'reversed']);
    expect(turned('speaker-1', 'to-tweeter')).toEqual(['reversed', 'normal']);
  });

  it('tells a way that is shorted, and a linked way without a speaker', () => {
    const { remarks } = plannedAudio((content) => {
      withCrossover(content);
      content.job.links.short = { from: 'passive.W+', to: 'passive.W-' };
    });
    expect(remarks.find(({ of }) => of.includes('passive.W'))?.rule).toBe('channel-shorted');
  });

  it('counts the wire from it on to the wire up to it', () => {
    const lossDb = (onM: string) => {
      const { plan } = planned((content) => {
        withCrossover(content);
        entry(content.job.links, 'speaker-1').length = '4 m';
        entry(content.job.links, 'to-midbass').length = onM;
        entry(content.job.links, 'to-tweeter').length = '0.1 m';
        for (const id of ['speaker-1', 'to-midbass', 'to-tweeter'])
          entry(content.job.links, id).size = '16 AWG';
      });
      return byId(plan.audio.channels, 'amp.1').wireLossDb ?? 0;
    };
    // Loss in the wire is 20 log10(1 + 2 r L / R): with 4 m + 4 m it has twice the resistance of 4 m alone.
    const [short, long] = [10 ** (lossDb('0.1 mm') / 20) - 1, 10 ** (lossDb('4 m') / 20) - 1];
    expect(long / short).toBeCloseTo(8 / 4.1, 1);
  });
});

describe('what guards a speaker behind a crossover', () => {
  /** What is told of the high-pass of channel 1, without a filter of its own. */
  const told = (change: (content: Written) => void = () => {}) => {
    const content = written();
    withCrossover(content);
    withoutBoard(content);
    delete entry(content.job.devices, 'dsp').filters;
    change(content);
    const job = jobOf(content);
    const { plan, remarks } = planKept(job);
    return judge(job, plan, remarks).filter(({ rule }) =>
      ['small-speaker-without-high-pass', 'high-pass-too-low'].includes(rule),
    );
  };

  it('is its way: the tweeter has a high-pass, the midbass none', () => {
    const all = told().filter(({ rule }) => rule === 'small-speaker-without-high-pass');
    expect(all).toHaveLength(1);
    expect(all[0]?.message).toMatch(/midbass \(midbass\)/);
    expect(all[0]?.message).not.toMatch(/tweeter/);
  });

  it('is held against the lowest frequency of the speaker, on both sides of it', () => {
    const low = (from: string) =>
      told((content) => {
        const { passive } = content.parts;
        if (passive?.kind === 'crossover') passive.ways = { W: `up to ${from}`, T: `from ${from}` };
      }).filter(({ rule }) => rule === 'high-pass-too-low');
    expect(low('2500 Hz')).toEqual([]);
    const [found] = low('2499 Hz');
    expect(found).toMatchObject({ level: 'stop', value: 2499, limit: 2500 });
    expect(found?.message).toMatch(/the high-pass of passive\.T is at/);
    expect(found?.remedy).toMatch(/correct ways: in its part/);
  });
});

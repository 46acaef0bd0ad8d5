import { describe, expect, test } from 'vitest';
import type { ReadJob } from '../../../lib/model/content/resolved-job.ts';
import { keptValues } from '../../../lib/plan/keeping/kept-values.ts';
import { judge } from '../../../lib/rules/judge.ts';
import { planKept } from '../../plan/plan-kept.ts';
import { changed, instead, linksOf } from '../links-of.ts';
import { readShort, shop, shortText } from '../short-shop.ts';
import { inputs, speakerShop, takesSpeakers } from '../speaker-level-shop.ts';

const bass = "'5': { output: CH5, input: IN5, summed: [IN6], minimum";
const bassInside = "'5': { output: CH5, input: IN5, also-takes: IN1..4, minimum";

const both = speakerShop([inputs, takesSpeakers], [bass, bassInside]);

function deviceOf(job: ReadJob | null, id: string) {
  return job?.devices.find((one) => one.id === id);
}

describe('an amplifier whose line inputs take speaker level by leads of its maker', () => {
  const { job, problems, links } = linksOf(shortText('under-seat-five'), both);

  test('is used so where the source has speaker outputs alone, pair to socket', () => {
    expect(problems).toEqual([]);
    expect(links).toMatchObject({
      'in-front-left': 'source-unit.SP1 amp.IN1',
      'in-front-right': 'source-unit.SP2 amp.IN2',
      'in-rear-left': 'source-unit.SP3 amp.IN3',
      'in-rear-right': 'source-unit.SP4 amp.IN4',
    });
    const proposed = job?.proposals.find(({ path }) => path.join('.') === 'devices.amp.speaker-level');
    expect(proposed).toMatchObject({ rule: 'inputs', value: ['IN1', 'IN2', 'IN3', 'IN4'] });
  });

  test('has the ends of the lead for its socket, with the voltage that it takes by them', () => {
    const terminals = deviceOf(job, 'amp')?.facts.terminals ?? {};
    expect(terminals.IN1).toBeUndefined();
    expect(terminals['IN1+']).toMatchObject({
      role: 'speaker-in-positive',
      joint: 'supplied-lead',
      'signal-range': { to: 12 },
    });
    expect(terminals['IN1-']?.role).toBe('speaker-in-negative');
    // What is not used so stays a socket for line level.
    expect(terminals.IN6).toMatchObject({ role: 'signal-in', joint: 'phono' });
  });

  test('feeds a subwoofer inside where the source has no pair left for it, both sides', () => {
    const spec = deviceOf(job, 'amp')?.spec;
    expect(spec?.kind === 'amplifier' && spec.channels['5']).toMatchObject({
      input: 'IN1',
      summed: ['IN2', 'IN3', 'IN4'],
    });
    expect(job?.file['left-open']['amp.IN5']).toBe('its channel takes the inputs of the others inside');
    expect(links['in-sub']).toBeUndefined();
  });

  test('takes its wires by the lead: on their ends, and on the pick list from the box of the amplifier', () => {
    if (!job) throw new Error(problems.join('\n'));
    const { plan, remarks } = planKept(job);
    const ends = plan.wires
      .flatMap((wire) => wire.ends)
      .filter(({ terminal }) => /^amp\.IN[1-4]/.test(terminal));
    expect(ends).toHaveLength(8);
    // The conductors are of 18 or 20 AWG, as the leads are taken to be.
    for (const end of ends) expect(end).toMatchObject({ form: 'supplied-lead', part: 'splice-18' });
    // The source plays on without its own speakers: its leads are cut, and each joint is of two ends.
    const cut = plan.wires.flatMap((wire) => wire.ends).filter(({ form }) => form === 'cut-lead');
    expect(cut.filter(({ terminal }) => terminal.startsWith('source-unit.SP'))).toHaveLength(8);
    for (const { part } of [...ends, ...cut]) expect(part).toBe('splice-18');
    expect(plan.pick.find(({ part }) => part === 'splice-18')?.quantity).toBe(16);
    const step =
      plan.steps.find(({ id }) => id === 'connect-signal') ??
      plan.steps.find(({ text }) => text.includes('own lead by'));
    expect(step?.text).toMatch(/join to the maker's own lead by splice-18: .+ at amp\.IN1\+/);
    expect(step?.text).toMatch(
      /cut the lead a hand behind the plug and join to the end at the plug by splice-18: .+ at source-unit\.SP1\+/,
    );
    expect(step?.text).toMatch(
      /cap each by itself, .* label it OLD .*: source-unit\.SP1\+, source-unit\.SP1-/,
    );
    expect(step?.acts).toContain('cap:source-unit.SP1+');
    expect(plan.pick.find(({ suppliedWith }) => suppliedWith === 'amp-five')).toMatchObject({
      title: 'Leads for speaker level of amp-five, a set for each',
      quantity: 1,
      unit: 'piece',
      short: 0,
    });
    const told = judge(job, plan, remarks).map(({ rule }) => rule);
    for (const rule of ['input-overdriven', 'bass-from-one-side', 'sides-swapped', 'terminal-unaccounted'])
      expect(told).not.toContain(rule);
  });

  test('names what is printed at the plug beside the terminal', () => {
    if (!job) throw new Error(problems.join('\n'));
    const marked = {
      ...job,
      devices: job.devices.map((device) => {
        const { terminals } = device.facts;
        const first = terminals['SP1+'];
        if (device.id !== 'source-unit' || !first) return device;
        return {
          ...device,
          facts: { ...device.facts, terminals: { ...terminals, 'SP1+': { ...first, mark: '5' } } },
        };
      }),
    };
    const texts = planKept(marked)
      .plan.steps.map(({ text }) => text)
      .join(' ');
    expect(texts).toMatch(/ at source-unit\.SP1\+ \(5\), .+ at source-unit\.SP1-,/);
    expect(texts).toMatch(
      /label it OLD with the mark of its lead: source-unit\.SP1\+ \(5\), source-unit\.SP1-,/,
    );
  });

  test('leaves the leads of a source that has to see its speakers whole, and joins to them', () => {
    const seen = both.map((file) => ({
      ...file,
      text: file.text.replaceAll('load-sensing: false', 'load-sensing: true'),
    }));
    const read = readShort(shortText('under-seat-five'), undefined, seen).job;
    if (!read) throw new Error('not read');
    const { plan } = planKept(read);
    const ends = plan.wires.flatMap((wire) => wire.ends);
    const joined = ends.filter(({ terminal }) => terminal.startsWith('source-unit.SP'));
    expect(joined.map(({ form }) => form)).toEqual(Array.from({ length: 8 }, () => 'tap'));
    const texts = plan.steps.map(({ text }) => text).join(' ');
    expect(texts).toMatch(/open the lead at the plug and join to it by .+: .+ at source-unit\.SP1\+/);
    expect(texts).not.toMatch(/label it OLD/);
  });

  test('is told where the source gives more than it takes by its leads, and not where it gives just that', () => {
    // The source is measured at 8 V.
    const rulesAt = (most: string) => {
      const files = speakerShop([inputs, takesSpeakers.replace('12 V', most)], [bass, bassInside]);
      const read = readShort(shortText('under-seat-five'), undefined, files).job;
      if (!read) return [];
      const { plan, remarks } = planKept(read);
      return judge(read, plan, remarks).map(({ rule }) => rule);
    };
    expect(rulesAt('8 V')).not.toContain('input-overdriven');
    expect(rulesAt('7.9 V')).toContain('input-overdriven');
  });

  // Common practice, no source: automatic turn-on wants a wired fallback.
  test.each([
    ['senses', takesSpeakers, 'caution'],
    ['does not sense', takesSpeakers.replace(', senses: true', ''), 'stop'],
  ])('that %s speaker level, without a turn-on lead: %s', (_, socket, level) => {
    const text = changed('under-seat-five', [
      '\nnotes:',
      '\nleft-open: { amp.REM: it is turned on by the signal }\n\nnotes:',
    ]);
    const read = readShort(text, undefined, speakerShop([inputs, socket], [bass, bassInside]));
    if (!read.job) throw new Error(read.problems.map(({ message }) => message).join('\n'));
    const { plan, remarks } = planKept(read.job);
    const missing = judge(read.job, plan, remarks).filter(({ rule }) => rule === 'turn-on-missing');
    expect(missing.map((one) => [one.level, one.related])).toEqual([[level, expect.anything()]]);
  });

  test('keeps how its inputs are used with its links, which name them so', () => {
    if (!job) throw new Error(problems.join('\n'));
    const kept = keptValues(job, planKept(job).plan).filter(({ path }) =>
      ['speaker-level', 'summed-inside'].includes(path[2] ?? ''),
    );
    expect(kept.map(({ kind }) => kind)).toEqual(['links', 'links']);
  });

  test('keeps to line level where the source has it', () => {
    const files = shop.map((file) =>
      file.path.endsWith('amplifiers.yaml')
        ? { ...file, text: instead(instead(file.text, inputs, takesSpeakers), bass, bassInside) }
        : file,
    );
    const line = linksOf(shortText('under-seat-five'), files);
    expect(line.problems).toEqual([]);
    expect(deviceOf(line.job, 'amp')?.given).toMatchObject({ 'speaker-level': [], 'summed-inside': [] });
    expect(line.links['in-sub']).toBe('source-unit.OUT5 amp.IN5');
  });
});

describe('what the part does not tell is asked with the line to write', () => {
  test('of speaker level', () => {
    expect(linksOf(shortText('under-seat-five'), speakerShop()).problems.join('\n')).toMatch(
      /source-unit gives speaker outputs and amp takes line level only.*leaflet of amp-five.*write speaker-level: \{ to: 12 V \}/,
    );
  });

  test('of inputs that a channel takes inside', () => {
    // With a splice in the catalogue it is joined to the wire of another input.
    const without = speakerShop([inputs, takesSpeakers]).map((file) => ({
      ...file,
      text: file.text.replaceAll(/^ {2}(splice|solder-sleeve)-.*\n/gm, ''),
    }));
    const { problems } = linksOf(shortText('under-seat-five'), without);
    expect(problems.join('\n')).toMatch(
      /sub would play front-left of source-unit.*leaflet of amp-five.*write also-takes: .* at the channel 5/,
    );
    // A lead for line level helps no speaker output.
    expect(problems.join('\n')).not.toMatch(/Y-lead/);
  });
});

describe('what a job writes of its inputs is held against the part', () => {
  test.each([
    ['speaker-level: [IN1]', /amp-five does not say that IN1 takes speaker level; .*write speaker-level:/],
    [
      'summed-inside: [5]',
      /amp-five does not say that its channel 5 takes other inputs inside; .*write also-takes:/,
    ],
    ['speaker-level: [IN9]', /IN9/],
    ['summed-inside: [7]', /7/],
  ])('%s', (written, told) => {
    const text = changed('under-seat-five', [
      '{ part: amp-five, on: board }',
      `{ part: amp-five, on: board, ${written} }`,
    ]);
    expect(linksOf(text).problems.join('\n')).toMatch(told);
  });
});

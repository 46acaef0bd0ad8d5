import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { textsBelow } from '../../../lib/commands/effects.ts';
import { placeText } from '../../../lib/model/place.ts';
import { readContent } from '../../../lib/read/read-content.ts';
import { judge } from '../../../lib/rules/index.ts';
import { demoContent, demoJob, root } from '../../plan/demo.ts';
import { planKept } from '../../plan/plan-kept.ts';
import { smallShop } from '../small-shop.ts';

const shop = { path: 'content/shop.yaml', text: 'rackleaf: 1\nname: Test\n' };
const file = 'content/parts/amps.yaml';

/** What is told of an amplifier with these terminals: line, column and message, the line counted from the first of them. */
function told(terminals: string): readonly { readonly says: string; readonly remedy: string }[] {
  const text = `rackleaf: 1
parts:
  amp:
    kind: amplifier
    title: Amplifier
    size: { width: 10 in, depth: 6 1/2 in, height: 2 in }
    mass: 3 kg
    supply: { type: regulated, fuse: 30 A }
    channels: { '1': { output: CH1, input: IN1, minimum: 2 ohm, powers: { 4 ohm: 75 W } } }
    terminals:
${terminals.replace(/^/gm, '      ')}
`;
  const { problems } = readContent([shop, { path: file, text }]);
  return problems.map(({ message, where, remedy = '' }) => ({
    says: `${where.line - 10}:${where.column} ${message}`,
    remedy,
  }));
}

const sound = `B+, GND: { role: supply }
CH1..2: { role: speaker-out, panel: right, at: 1 in, pitch: 1/2 in }
IN1: { role: signal-in }`;

test('one line of cables stands for several of one part', () => {
  const { jobs, problems } = readContent(
    smallShop(['content/jobs/demo.yaml', '  lead: { part: lead-a }', '  lead, more-1..3: { part: lead-a }']),
  );
  expect(problems).toEqual([]);
  const lead = { part: 'lead-a' };
  expect(jobs[0]?.file.cables).toEqual({ lead, 'more-1': lead, 'more-2': lead, 'more-3': lead });
});

test('a part in rows is read without a problem', () => {
  expect(told(sound)).toEqual([]);
});

/** What is wrong: in words, as it is written, what is said of it, and what to do. */
type Slip = readonly [string, string, RegExp, RegExp];
const anything = /(?:)/;

describe('what is wrong with a row is told at the row, with its terminal', () => {
  test.each<Slip>([
    [
      'a name that stands by itself too',
      `${sound}\nCH2+: { role: speaker-out-positive }`,
      /^4:7 CH2\+ stands here twice: in the row CH1\.\.2 and by itself$/,
      anything,
    ],
    [
      'a name of two rows',
      `${sound}\nIN1..2: { role: signal-in }`,
      /^4:7 IN1 stands here twice: by itself and in the row IN1\.\.2$/,
      anything,
    ],
    [
      'no pitch',
      sound.replace(', pitch: 1/2 in', ''),
      /^2:7 CH1\.\.2 stands for CH1\+, CH1-, CH2\+, CH2-, all at one place$/,
      /write pitch:/,
    ],
    [
      'a pitch of one terminal',
      sound.replace(
        'IN1: { role: signal-in }',
        'IN1: { role: signal-in, panel: left, at: 1 in, pitch: 1 in }',
      ),
      /^3:61 IN1 has a pitch, but stands for one place alone$/,
      anything,
    ],
    [
      'a pitch without a first place',
      sound.replace('at: 1 in, ', ''),
      /^2:\d+ CH1\.\.2 has a pitch, but no first place$/,
      /write at: with the place of CH1\+/,
    ],
    [
      'the role of a pair on a name with a sign',
      sound.replace('CH1..2:', 'CH1..2+:'),
      /^2:7 CH1\+ is one terminal, and role: speaker-out stands for two$/,
      /without \+ and -, or role: speaker-out-positive/,
    ],
    [
      'three names for a supply',
      sound.replace('B+, GND:', 'B+, GND, REM:'),
      /^1:7 role: supply stands for two terminals, and B\+, GND, REM names 3$/,
      /the positive one first/,
    ],
    [
      'an unknown field of a row',
      sound.replace('pitch', 'pich'),
      /^2:\d+ pich is not a known name in CH1\.\.2; did you mean pitch\?$/,
      anything,
    ],
    [
      'a unit that is none',
      sound.replace('1/2 in', '1/2 inn'),
      /^2:\d+ pitch: "inn" is not a unit of length/,
      anything,
    ],
    ['a role that is none', sound.replace('speaker-out', 'speaker'), /^2:\d+ role .*speaker/, anything],
    [
      'an end that is no size',
      `${sound}\nREM: { role: turn-on-in, takes: 20 AWG to 14 GWA }`,
      /^4:\d+ to: "14 GWA" is not/,
      anything,
    ],
    [
      'an input that there is not',
      sound.replace('IN1:', 'IN2:'),
      /^-1:\d+ there is no terminal of amp "IN1"$/,
      anything,
    ],
    [
      'a role too often',
      sound.replace('IN1: { role: signal-in }', 'IN1..2: { role: supply-positive }'),
      /^0:\d+ amp has 3 terminals with role: supply-positive/,
      anything,
    ],
  ])('%s', (_, terminals, says, remedy) => {
    const [first, ...more] = told(terminals);
    expect(first).toEqual({
      says: expect.stringMatching(says),
      remedy: expect.stringMatching(remedy),
    });
    expect(more).toEqual([]);
  });
});

test('a part with a wrong row takes none of its file with it', () => {
  const text = `rackleaf: 1
parts:
  wrong: { kind: enclosure, title: Box, size: { width: 1 in, depth: 1 in, height: 1 in }, mass: 1 kg, volume: 1 L, loading: sealed, terminals: { T1..2: { role: sense, at: 1 in } } }
  right: { kind: enclosure, title: Box, size: { width: 1 in, depth: 1 in, height: 1 in }, mass: 1 kg, volume: 1 L, loading: sealed, terminals: { T1..2: { role: sense } } }
`;
  const { parts, problems } = readContent([shop, { path: file, text }]);
  expect(problems.map(({ message }) => message)).toEqual([expect.stringContaining('all at one place')]);
  expect(Object.keys(parts)).toEqual(['right']);
});

describe('what a row stands for has the place of the row', () => {
  const lineOf = (at: string, text: string): number =>
    readFileSync(`${root}/${at}`, 'utf8')
      .split('\n')
      .findIndex((line) => line.includes(text)) + 1;
  test('a terminal of a part', () => {
    const { parts } = demoContent();
    expect(parts['amp-five']).toBeDefined();
    const { file: at, line } = demoJob('under-seat-five').partPlace('/parts/amp-five/terminals/CH3-/at');
    expect([at, line]).toEqual([
      'content/parts/amplifiers.yaml',
      lineOf('content/parts/amplifiers.yaml', 'CH1..5:'),
    ]);
  });
  test('a point of a vehicle', () => {
    const place = demoJob('van-three-amps').vehiclePlace('/spaces/bulkhead/sound-points/low-4/x');
    expect(placeText(place)).toMatch(/^content\/vehicles\/van\.yaml:\d+:\d+$/);
    expect(place.line).toBe(lineOf('content/vehicles/van.yaml', 'low-1..5:'));
  });
  test('a fixing and a filter of a job', () => {
    const at = 'content/jobs/van-three-amps.yaml';
    const job = demoJob('van-three-amps');
    expect(job.place('/boards/board/fixings/f7/point').line).toBe(lineOf(at, 'f1..12:'));
    expect(job.place('/devices/dsp/filters/OUT10/0/corner').line).toBe(lineOf(at, 'OUT9..10:'));
  });
});

describe('written short', () => {
  const own = (name: string, path: string) => ({
    path: `content/${path}/${name}.yaml`,
    text: readFileSync(new URL(`shop/${name}.yaml`, import.meta.url), 'utf8'),
  });
  const amplifier = own('amp-eight', 'parts');
  const vehicle = own('coupe', 'vehicles');
  const linesOf = ({ text }: { readonly text: string }) => text.trimEnd().split('\n');

  test('an amplifier with eight terminals a side takes 15 lines', () => {
    expect(linesOf(amplifier).slice(2)).toHaveLength(15);
  });
  test('a vehicle takes 30 lines', () => {
    expect(linesOf(vehicle)).toHaveLength(30);
  });
  test.each([amplifier, vehicle])('no line of $path is longer than 100 characters', (one) => {
    expect(linesOf(one).filter((line) => line.length > 100)).toEqual([]);
  });
  test('both are enough for a job that nothing stops', async () => {
    const demo = await textsBelow(root, `${root}/content`);
    const shared = demo.filter(({ path }) => /^content\/(parts\/|shop\.yaml$)/.test(path));
    const { jobs, parts, problems } = readContent([...shared, amplifier, vehicle, own('front-pair', 'jobs')]);
    expect(problems).toEqual([]);
    const amp = parts['amp-eight'];
    const panels = amp?.kind === 'amplifier' ? Object.values(amp.terminals).map(({ panel }) => panel) : [];
    expect(panels.filter((panel) => panel === 'left')).toHaveLength(8);
    expect(panels.filter((panel) => panel === 'right')).toHaveLength(8);
    for (const job of jobs) {
      const { plan, remarks } = planKept(job);
      const stops = judge(job, plan, remarks).filter(({ level }) => level === 'stop');
      expect(stops.map(({ message }) => message)).toEqual([]);
      expect(plan.terminals.filter(({ state }) => state === 'unaccounted')).toEqual([]);
    }
    expect(jobs.map(({ id }) => id)).toEqual(['front-pair']);
  });
});

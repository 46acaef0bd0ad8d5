import { describe, expect, test } from 'vitest';
import { changed, linksOf } from '../links-of.ts';

type Change = readonly [from: string, to: string];

const open = (...references: readonly string[]): Change => [
  '\nboards:\n',
  `\nleft-open: { ${references.map((one) => `"${one}": stays empty`).join(', ')} }\n\nboards:\n`,
];
const processor: Change = [
  '  amp: { part: amp-five, on: board }\n',
  '  amp: { part: amp-five, on: board }\n  dsp: { part: processor-ten, on: board }\n',
];
const bass: Change = ['in: cargo-floor }', 'in: cargo-floor, signal: bass }'];
const rearOfFront: Change = ['in: [left-rear, right-rear] }', 'in: [left-rear, right-rear], signal: front }'];

const read = (...changes: readonly Change[]) => linksOf(changed('under-seat-five', ...changes));
const from = (links: Readonly<Record<string, string>>) =>
  Object.values(links).filter((one) => /^source-unit\.(OUT|SP)/.test(one));
const rear = 'source-unit.OUT3|OUT4';
const allLine = 'source-unit.OUT1|OUT2|OUT3|OUT4|OUT5|OUT6';
const allSpeaker = 'source-unit.SP1+|SP1-|SP2+|SP2-|SP3+|SP3-|SP4+|SP4-';

describe('line outputs that a job leaves open', () => {
  test('are joined to no processor: the pair after them takes the next inputs, and the subwoofer plays it', () => {
    const { links, problems, job } = read(processor, bass, rearOfFront, open(rear));
    expect(problems).toEqual([]);
    expect(from(links)).toEqual([
      'source-unit.OUT1 dsp.IN1',
      'source-unit.OUT2 dsp.IN2',
      'source-unit.OUT5 dsp.IN3',
      'source-unit.OUT6 dsp.IN4',
    ]);
    const mixes = Object.values(job?.file.devices.dsp?.mix ?? {}).map((one) => one.join(' '));
    expect(mixes.toSorted()).toEqual(['IN1', 'IN1', 'IN2', 'IN2', 'IN3', 'IN4']);
  });

  test('are joined to no amplifier: what would play them plays another pair, and is told so', () => {
    const { links, problems, proposed } = read(open(rear));
    expect(problems).toEqual([]);
    expect(from(links).filter((one) => /OUT[34]/.test(one))).toEqual([]);
    expect(links['in-rear-left']).toBe('source-unit.OUT1 amp.IN3');
    expect(proposed('in-rear-left')?.reason).toMatch(
      /^the source has no rear pair but one that is left open/,
    );
  });

  test('are told where a signal: names them', () => {
    expect(read(bass, open('source-unit.OUT5|OUT6')).problems).toEqual([
      expect.stringMatching(/^sub would play bass-left .* by amp\.IN5, and source-unit\.OUT5 is left open;/),
      expect.stringMatching(/^sub would play bass-right .* by amp\.IN6, and source-unit\.OUT6 is left open;/),
    ]);
    expect(read(processor, bass, open('source-unit.OUT5|OUT6')).problems).toEqual([
      expect.stringMatching(
        /^sub is to play the bass pair .* reach no input of dsp: source-unit\.OUT5 and source-unit\.OUT6 are left open; take source-unit\.OUT5 and source-unit\.OUT6 off left-open:/,
      ),
    ]);
  });

  test('are told where one side of a pair is one of them', () => {
    expect(read(open('source-unit.OUT3')).problems).toEqual([
      expect.stringMatching(/^rear would play rear-left .* by amp\.IN3, and source-unit\.OUT3 is left open;/),
    ]);
    expect(read(processor, open('source-unit.OUT1', 'source-unit.OUT3|OUT4')).problems).toEqual([
      expect.stringMatching(/^front would play front-left .* by dsp, and source-unit\.OUT1 is left open;/),
      expect.stringMatching(/^rear would play front-left .* by dsp, and source-unit\.OUT1 is left open;/),
    ]);
  });

  test('are told by their names where nothing else is left to play', () => {
    const told =
      /^(amp|dsp) gets nothing of source-unit: source-unit\.OUT1, .* and source-unit\.\w+ are left open;/;
    expect(read(open(allLine)).problems).toEqual([expect.stringMatching(told)]);
    expect(read(processor, open(allLine, allSpeaker)).problems).toEqual([expect.stringMatching(told)]);
  });
});

describe('inputs of a processor that a job leaves open', () => {
  const inputs = 'dsp.IN3|IN4';

  test('leave a subwoofer without the pair of its signal:, which is told with their names', () => {
    const { problems } = read(processor, bass, open(rear, inputs));
    expect(problems).toEqual([
      expect.stringMatching(
        /^sub is to play the bass pair .* source-unit\.OUT5 and source-unit\.OUT6 reach no input of dsp: dsp\.IN3 and dsp\.IN4 are left open; take inputs of dsp off left-open:/,
      ),
    ]);
  });

  test('have it play the front pair where it says nothing, with the reason', () => {
    const { problems, job } = read(processor, open(rear, inputs));
    expect(problems).toEqual([]);
    const mixes = job?.proposals.filter(({ path }) => path[2] === 'mix') ?? [];
    expect(mixes.map(({ reason }) => reason)).toContain(
      'sub plays the front pair: the bass pair of the source reaches no input of dsp',
    );
  });
});

describe('what else a job leaves open', () => {
  test('the second input of a summed channel gets no output of a processor', () => {
    expect(Object.values(read(processor).links)).toContainEqual(
      expect.stringMatching(/^dsp\.OUT\d+ amp\.IN6$/),
    );
    const { links, problems } = read(processor, open('amp.IN6'));
    expect(problems).toEqual([]);
    expect(Object.values(links).filter((one) => one.endsWith('amp.IN6'))).toEqual([]);
  });

  test('a level control goes past a socket that stays empty', () => {
    const levelOf = (...changes: readonly Change[]) =>
      Object.values(linksOf(changed('estate-side-well', ...changes)).links).filter((one) =>
        one.includes('.LEVEL'),
      );
    expect(levelOf()).toEqual([expect.stringMatching(/ dsp\.LEVEL$/)]);
    expect(levelOf(open('dsp.LEVEL'))).toEqual([expect.stringMatching(/ amp-sub\.LEVEL$/)]);
  });
});

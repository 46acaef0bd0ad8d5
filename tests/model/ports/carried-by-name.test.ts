import { describe, expect, test } from 'vitest';
import { carriedBy, carriedByName } from '../../lib/model/ports/carried-by-name.ts';
import { linksOf, shopWith } from './links-of.ts';

// How outputs are marked is common practice, no source.
describe('what the name of an output tells', () => {
  test.each([
    ['FL', 'front-left'],
    ['LF', 'front-left'],
    ['FR', 'front-right'],
    ['RF', 'front-right'],
    ['RL', 'rear-left'],
    ['LR', 'rear-left'],
    ['RR', 'rear-right'],
    ['FRONT-L', 'front-left'],
    ['Front-Left', 'front-left'],
    ['FrontLeft', 'front-left'],
    ['REAR-R', 'rear-right'],
    ['R-L', 'rear-left'],
    ['F-R', 'front-right'],
    ['FR-L', 'front-left'],
    ['RR-L', 'rear-left'],
    ['OUT-RL', 'rear-left'],
    ['HI-FR', 'front-right'],
    ['SW-R', 'bass-right'],
    ['SUB', 'bass-left'],
  ])('%s carries %s', (name, carries) => {
    expect(carriedByName([name]).get(name)).toBe(carries);
  });

  test.each(['SP1', 'OUT4', 'A1', 'AUX', 'CH2', 'F-R-L'])('%s tells nothing', (name) => {
    expect(carriedByName([name]).size).toBe(0);
  });

  test('a side alone is of the next pair, whatever stands first', () => {
    expect(Object.fromEntries(carriedByName(['R1', 'L1', 'R2', 'L2']))).toEqual({
      L1: 'front-left',
      R1: 'front-right',
      L2: 'rear-left',
      R2: 'rear-right',
    });
  });

  test('what is written stands before the name, and the name before the order', () => {
    const carried = carriedBy(['RR', 'FR', 'FL', 'RL', 'X'], (name) =>
      name === 'FL' ? 'bass-left' : undefined,
    );
    expect(Object.fromEntries(carried)).toEqual({
      RR: 'rear-right',
      FR: 'front-right',
      FL: 'bass-left',
      RL: 'rear-left',
      X: 'front-left',
    });
  });

  test('names that tell nothing go by their order', () => {
    expect([...carriedBy(['SP1', 'SP2', 'SP3'], () => undefined).values()]).toEqual([
      'front-left',
      'front-right',
      'rear-left',
    ]);
  });
});

/** The hatchback with ways from its source unit to the speakers, its speaker outputs named and in the order of a plug. */
const wired = shopWith(
  'hatchback.yaml',
  '\nroutes:\n',
  `\nroutes:
  radio-left-door: { title: "Source unit to the left door", side: left, ends: [source-unit, left-door], passes: [cabin 5 ft] }
  radio-right-door: { title: "Source unit to the right door", side: right, ends: [source-unit, right-door], passes: [cabin 5 ft] }
  radio-left-rear: { title: "Source unit to the left rear", side: left, ends: [source-unit, left-rear], passes: [sill 12 ft] }
  radio-right-rear: { title: "Source unit to the right rear", side: right, ends: [source-unit, right-rear], passes: [sill 12 ft] }
`,
);
const plugOrder = wired.map(({ path, text }) => ({
  path,
  text: text
    .replaceAll('SP1..4: {', '"RR, FR, FL, RL": {')
    .replaceAll('SP1..2: {', '"FL, FR": {')
    .replaceAll('SP3..4: {', '"RL, RR": {')
    .replace(/SP(\d)(?=[+-]?: )/g, (_, at) => ['FL', 'FR', 'RL', 'RR'][Number(at) - 1] ?? ''),
}));

test('speakers hang on the outputs that are named for their row and side', () => {
  const { links, problems } = linksOf(
    `rackleaf: 1
id: door-speakers
title: "Speakers at the source unit"
issued-on: 2026-05-04
vehicle: hatchback
devices:
  front: { part: coaxial-65, in: [left-door, right-door] }
  rear: { part: coaxial-525, in: [left-rear, right-rear] }
`,
    plugOrder,
  );
  expect(problems).toEqual([]);
  expect(links).toEqual({
    'to-front-left': 'source-unit.FL front-left.C1',
    'to-front-right': 'source-unit.FR front-right.C1',
    'to-rear-left': 'source-unit.RL rear-left.C1',
    'to-rear-right': 'source-unit.RR rear-right.C1',
  });
});

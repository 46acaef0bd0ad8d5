import { describe, expect, test } from 'vitest';
import { carriedBy, carriedByName } from '../../../lib/model/ports/carried-by-name.ts';

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

import { describe, expect, it } from 'vitest';
import { inGroupsOf, labelsText, mergedPairs, mergedRuns, single } from '../../lib/draw/board/merge-names.ts';

const texts = (merged: readonly { text: string }[]): string[] => merged.map(({ text }) => text);

describe('names that share a text', () => {
  it('are the two sides of a pair', () => {
    expect(texts(mergedPairs(['B+', 'GND', 'CH1+', 'CH1-', 'CH2+']))).toEqual([
      'B+',
      'GND',
      'CH1 +-',
      'CH2+',
    ]);
  });

  it('are three or more that count up or down, in the order in which they stand', () => {
    expect(texts(mergedRuns(['IN1', 'IN2', 'IN3']))).toEqual(['IN1…3']);
    expect(texts(mergedRuns(['OUT3', 'OUT2', 'OUT1', 'LEVEL']))).toEqual(['OUT3…1', 'LEVEL']);
    expect(texts(mergedRuns(['HL1+', 'HL1-', 'HL2+', 'HL2-', 'HL3+', 'HL3-']))).toEqual(['HL1…3 +-']);
  });

  it('are never two, nor such as jump or turn round', () => {
    expect(texts(mergedRuns(['IN1', 'IN2']))).toEqual(['IN1', 'IN2']);
    expect(texts(mergedRuns(['IN1', 'IN2', 'IN1']))).toEqual(['IN1', 'IN2', 'IN1']);
    expect(texts(mergedRuns(['IN1', 'IN3', 'IN5']))).toEqual(['IN1', 'IN3', 'IN5']);
  });

  it('are any neighbours where there is no other way', () => {
    expect(texts(inGroupsOf(2)(['GAIN', 'LEVEL', 'IN1', 'IN2', 'IN3']))).toEqual(['GAIN, LEVEL', 'IN1…3']);
  });

  it('account for every name once', () => {
    const names = ['A1', 'A2', 'A3', 'B+', 'B-', 'C'];
    for (const merge of [single, mergedPairs, mergedRuns, inGroupsOf(2)])
      expect(merge(names).flatMap(({ of }) => of)).toEqual([0, 1, 2, 3, 4, 5]);
  });
});

it('labels of a route are told in few words', () => {
  expect(labelsText(['T1', 'S1+', 'S1-', 'S2+', 'S2-', 'S3+', 'S3-'])).toBe('T1, S1…3 +-');
  expect(labelsText(['', 'S5', 'S6'])).toBe('S5, S6');
});

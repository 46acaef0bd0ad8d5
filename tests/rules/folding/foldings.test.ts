import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../lib/model/finding.ts';
import { withFolded } from '../../../lib/rules/folding/folding.ts';
import { about } from '../case.ts';
import { aFinding } from './a-finding.ts';

const made = about();
/** What stands at the top of the list, and what stands under each. */
const folded = (...findings: readonly Finding[]) =>
  withFolded(findings, made).map(
    ({ rule, follows = [] }) => `${rule}: ${follows.map((one) => one.rule).join(', ')}`,
  );
const volts = { value: 1, limit: 0.5, unit: 'V' } as const;

describe('what only follows stands under its cause', () => {
  test('from a battery or alternator that is not linked: that there is none, and what the network comes to', () => {
    const cause = aFinding('fitted-source-not-linked', ['battery']);
    for (const rule of [
      'system-without-battery',
      'charging-unknown',
      'supply-not-live',
      'supply-collapse',
      'below-cut-out',
      'network-floating',
      'fuse-not-in-stock',
    ])
      expect(folded(cause, aFinding(rule, ['radio']))).toEqual([`fitted-source-not-linked: ${rule}`]);
    for (const rule of ['fuse-interrupting', 'as-built-differs', 'ground-drop', 'drop-over-limit']) {
      expect(folded(cause, aFinding(rule, ['radio'], volts))).toEqual([`fitted-source-not-linked: ${rule}`]);
      // Without a figure of the network nothing tells that it follows.
      expect(folded(cause, aFinding(rule, ['radio']))).toEqual(['fitted-source-not-linked: ', `${rule}: `]);
    }
  });

  test('from a device without a ground or a supply: what its own supply comes to, not that of another', () => {
    for (const rule of ['network-floating', 'supply-collapse', 'below-cut-out'])
      for (const cause of ['device-without-ground', 'device-without-supply']) {
        expect(folded(aFinding(cause, ['amp']), aFinding(rule, ['amp']))).toEqual([`${cause}: ${rule}`]);
        expect(folded(aFinding(cause, ['amp']), aFinding(rule, ['radio']))).toEqual([
          `${cause}: `,
          `${rule}: `,
        ]);
      }
    for (const rule of ['supply-not-live', 'fuse-not-in-stock'])
      expect(folded(aFinding('device-without-supply', ['amp']), aFinding(rule, ['amp']))).toEqual([
        `device-without-supply: ${rule}`,
      ]);
  });

  test('from a device without a supply, a turn-on or a channel: its own open end, and the one that was meant for it', () => {
    const open = (terminal: string) => aFinding('terminal-unaccounted', [terminal]);
    for (const [cause, ends] of [
      ['device-without-supply', ['amp', 'amp.B+']],
      ['turn-on-missing', ['amp.REM']],
    ] as const) {
      const [subject] = ends;
      expect(folded(aFinding(cause, ends), open(subject))).toEqual([`${cause}: terminal-unaccounted`]);
    }
    expect(folded(aFinding('device-without-supply', ['amp', 'amp.B+']), open('block.OUT1'))).toEqual([
      'device-without-supply: terminal-unaccounted',
    ]);
    expect(folded(aFinding('turn-on-missing', ['amp.REM']), open('dsp.REM-OUT'))).toEqual([
      'turn-on-missing: terminal-unaccounted',
    ]);
    expect(folded(aFinding('speaker-without-channel', ['sub']), open('sub.C+'))).toEqual([
      'speaker-without-channel: terminal-unaccounted',
    ]);
    expect(folded(aFinding('speaker-without-channel', ['sub']), open('amp.CH2+'))).toEqual([
      'speaker-without-channel: terminal-unaccounted',
    ]);
    expect(folded(aFinding('speaker-without-channel', ['sub']), open('dsp.OUT1'))).toEqual([
      'speaker-without-channel: ',
      'terminal-unaccounted: ',
    ]);
  });

  test('from a rating: limits that are no stricter, and what the fuse decides', () => {
    const cause = aFinding('fuse-over-ceiling', ['main-fuse'], { value: 100, limit: 60, unit: 'A' });
    const over = (limit: number) =>
      aFinding('fuse-over-holder', ['main-fuse'], { value: 100, limit, unit: 'A' });
    expect(folded(cause, over(80))).toEqual(['fuse-over-ceiling: fuse-over-holder']);
    expect(folded(cause, aFinding('bundle-over-hole', ['left']))).toEqual([
      'fuse-over-ceiling: bundle-over-hole',
    ]);
    expect(folded(cause, aFinding('conductor-under-need', ['feed']))).toEqual([
      'fuse-over-ceiling: conductor-under-need',
    ]);
    // The stricter limit is the cause, wherever it stands in the list.
    expect(folded(cause, over(50))).toEqual(['fuse-over-holder: fuse-over-ceiling']);
  });
});

describe('what follows stands for itself', () => {
  test('where its cause is milder', () => {
    const cause = aFinding('fitted-source-not-linked', ['battery'], { level: 'caution' });
    expect(folded(cause, aFinding('charging-unknown', ['battery']))).toEqual([
      'fitted-source-not-linked: ',
      'charging-unknown: ',
    ]);
  });

  test('and under what its cause follows from itself, where it has a cause', () => {
    const root = aFinding('fitted-source-not-linked', ['battery']);
    const drop = aFinding('ground-drop', ['board-ground', 'battery'], { ...volts, value: 0.6 });
    const long = aFinding('ground-lead-long', ['board-ground'], { value: 2, limit: 0.5, unit: 'm' });
    expect(folded(root, drop, long)).toEqual(['fitted-source-not-linked: ground-drop', 'ground-lead-long: ']);
  });
});

import { about, aboutContent, partIn } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

interface Made {
  readonly opening?: string;
  readonly free?: string;
  readonly volume?: string;
  readonly loading?: 'sealed' | 'band-pass';
  /** A second subwoofer in the same place shares the box. */
  readonly shared?: boolean;
}

/** A woofer of 250 mm, hole 230 mm, 130 mm deep, for ported boxes of 35 to 50 L, in a box as made. */
const inBox =
  ({ opening = '232 mm', free = '200 mm', volume = '40 L', loading, shared = false }: Made) =>
  () =>
    aboutContent((content) => {
      Object.assign(partIn(content, 'woofer', 'speaker'), {
        size: { width: '250 mm', depth: '250 mm', height: '130 mm' },
        'cut-out': '230 mm',
        boxes: { ported: { from: '35 L', to: '50 L' }, sealed: { from: '20 L', to: '30 L' } },
      });
      const box = partIn(content, 'vented', 'enclosure');
      Object.assign(box, { opening, 'free-depth': free, volume, ...(loading && { loading }) });
      if (shared) content.job.devices['sub-2'] = { part: 'woofer', in: 'boot' };
    });

export const subwooferBoxCases = {
  // The parts' own data; 25 mm behind the magnet are common practice, no source.
  'subwoofer-misfits-box': {
    fires: [
      {
        name: 'a hole too small for the basket',
        about: inBox({ opening: '225 mm' }),
        level: 'stop',
        subject: 'sub',
        path: '/devices/sub',
        says: /needs a hole of .*230/,
      },
      {
        name: 'a hole as wide as the frame',
        about: inBox({ opening: '250 mm' }),
        level: 'stop',
        subject: 'sub',
        says: /nothing holds it/,
      },
      { name: 'a box too shallow', about: inBox({ free: '120 mm' }), level: 'stop', subject: 'sub' },
      {
        name: 'hardly room behind the magnet',
        about: inBox({ free: '150 mm' }),
        level: 'caution',
        subject: 'sub',
        says: /behind its magnet/,
      },
      {
        name: 'a box too small',
        about: inBox({ volume: '30 L' }),
        level: 'caution',
        subject: 'sub',
        says: /30 L.*35 L to 50 L/,
      },
      {
        name: 'one box for two: half of it each',
        about: inBox({ volume: '50 L', shared: true }),
        level: 'caution',
        subject: 'sub-2',
        says: /25 L/,
      },
      {
        name: 'a way of loading that its maker does not name',
        about: inBox({ loading: 'band-pass' }),
        level: 'caution',
        subject: 'sub',
        says: /names no such box/,
      },
    ],
    quiet: [
      { name: 'a box made for it', about: inBox({}) },
      { name: 'just at the least volume', about: inBox({ volume: '35 L' }) },
      { name: 'data that do not tell', about: () => about() },
    ],
  },
} satisfies RuleCases;

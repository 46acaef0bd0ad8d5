import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cssString } from '../../../lib/publish/page/print-rules.ts';
import {
  addresses,
  drawingsFolder,
  fileOf,
  linkTo,
  revisionSegment,
  wayUp,
} from '../../../lib/publish/site/addresses.ts';

describe('addresses', () => {
  it('are what is printed on paper', () => {
    expect(addresses.job('side-well')).toBe('/jobs/side-well/');
    expect(addresses.worksheet('side-well')).toBe('/jobs/side-well/worksheet/');
    expect(addresses.revision('side-well', 'B')).toBe('/jobs/side-well/B/');
    expect(addresses.revisionChanges('side-well', 'B')).toBe('/jobs/side-well/B/changes/');
    expect(addresses.changes('side-well')).toBe('/jobs/side-well/changes/');
    expect(addresses.vehicleJob('van', 'side-well')).toBe('/vehicles/van/jobs/side-well/');
  });

  it('never let a revision take the place of another page or leave the folder', () => {
    expect(revisionSegment('worksheet')).not.toBe('worksheet');
    expect(revisionSegment('Worksheet').toLowerCase()).not.toBe('worksheet');
    expect(revisionSegment('Packet').toLowerCase()).not.toBe('packet');
    expect(revisionSegment('Changes').toLowerCase()).not.toBe('changes');
    expect(revisionSegment('Drawings').toLowerCase()).not.toBe(drawingsFolder);
    fc.assert(
      fc.property(fc.string({ minLength: 1 }), (revision) => {
        expect(revisionSegment(revision)).toMatch(/^[A-Za-z0-9_-]+$/);
      }),
    );
  });

  it('tell two revisions apart', () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1 }), fc.string({ minLength: 1 }), (one, other) => {
        fc.pre(one !== other);
        expect(revisionSegment(one)).not.toBe(revisionSegment(other));
      }),
    );
  });

  it('link to each other as URL resolution has it (WHATWG URL), below any base', () => {
    const all = [addresses.home, addresses.jobs, addresses.job('a'), addresses.revision('a', 'B')];
    for (const base of ['https://sheets.example/', 'https://sheets.example/deep/er/', 'file:///srv/dist/'])
      for (const from of all)
        for (const to of all) {
          const here = new URL(fileOf(from), base).href;
          expect(new URL(linkTo(from, to), here).href).toBe(new URL(fileOf(to), base).href);
          expect(new URL(wayUp(from), here).href).toBe(base);
        }
  });
});

describe('cssString', () => {
  it('can not end its string or its style element', () => {
    expect(cssString('A "B" \\ </style>')).toBe('"A \\22 B\\22  \\5c  \\3c /style\\3e "');
  });
});

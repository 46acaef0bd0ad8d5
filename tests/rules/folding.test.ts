import { describe, expect, test } from 'vitest';
import type { Finding } from '../../lib/model/finding.ts';
import { findingCatalogue, findingEntry } from '../../lib/model/findings/index.ts';
import { foldings } from '../../lib/rules/folding/foldings.ts';
import { judge } from '../../lib/rules/index.ts';
import { planKept } from '../plan/plan-kept.ts';
import { aboutPlan, entry, jobOf, partIn } from './case.ts';
import { drop, point, wire } from './changes.ts';
import { type Written, withoutBoard, written } from './content.ts';

/** All that is found of the small system of amplifier, processor and radio, its board left out. */
function found(change: (content: Written) => void): readonly Finding[] {
  const content = written();
  change(content);
  withoutBoard(content);
  const job = jobOf(content);
  const { plan, remarks } = planKept(job);
  return judge(job, plan, remarks);
}

const nameOf = ({ rule, related }: Finding): string => `${rule} ${related[0] ?? ''}`;
const anyway = new Set(found(() => {}).map(nameOf));

function stops(change: (content: Written) => void) {
  return found(change)
    .filter((finding) => finding.level === 'stop' && !anyway.has(nameOf(finding)))
    .map((finding) => ({
      top: nameOf(finding),
      under: (finding.follows ?? []).map((one) => `${one.rule} ${one.related[0] ?? ''}`),
    }));
}

describe('what a whole system loses by one fault stands under that fault', () => {
  test('the lead from the battery: every device without supply', () => {
    const [one, ...others] = stops(({ job }) => {
      delete job.links.feed;
    });
    expect(others).toEqual([]);
    expect(one?.top).toBe('terminal-unaccounted main-fuse.IN');
    expect(one?.under).toEqual(
      expect.arrayContaining(['supply-not-live amp', 'supply-not-live dsp', 'supply-not-live radio']),
    );
  });

  test('the lead between fuse and block: both open ends, and every device', () => {
    const [one, ...others] = stops(({ job }) => {
      delete job.links.main;
      delete job.runs?.left;
    });
    expect(others).toEqual([]);
    expect(one?.top).toBe('terminal-unaccounted block.IN');
    expect(one?.under).toEqual(
      expect.arrayContaining(['terminal-unaccounted main-fuse.OUT', 'supply-not-live amp']),
    );
  });

  test('the ground of the strip: every device that hangs on it', () => {
    const [one, ...others] = stops(({ job }) => {
      delete job.links['board-ground'];
    });
    expect(others).toEqual([]);
    expect(one?.top).toBe('terminal-unaccounted ground.G0');
    expect(one?.under).toEqual(expect.arrayContaining(['network-floating amp', 'network-floating dsp']));
  });

  test('an open output beside a forgotten supply of another kind stands for itself', () => {
    const tops = stops(({ job }) => {
      delete job.links['signal-2'];
      delete job.links['amp-feed'];
    }).map(({ top }) => top);
    expect(tops).toContain('device-without-supply amp');
    expect(tops).toContain('terminal-unaccounted amp.IN2');
  });

  test('two ways of a block open, one device unfed: which was forgotten is not guessed', () => {
    const tops = stops(({ job }) => {
      delete job.links['amp-feed'];
      delete job.links['radio-feed'];
      entry(job.devices, 'amp');
      job['left-open'] = { ...job['left-open'], 'radio.B+': 'fed by the vehicle' };
    }).map(({ top }) => top);
    expect(tops).toEqual(
      expect.arrayContaining(['terminal-unaccounted block.OUT1', 'terminal-unaccounted block.OUT3']),
    );
  });
});

describe('a battery without a fuse', () => {
  const second = (fused: boolean) => (content: Written) => {
    const { job } = content;
    Object.assign(partIn(content, 'agm', 'battery'), { 'short-circuit': '6 kA' });
    job.devices.second = { part: 'agm', in: 'boot' };
    job.links['second-ground'] = { from: 'second.NEG', to: 'body.cargo', length: '300 mm' };
    const to = fused ? 'second-fuse.IN' : 'amp.B+';
    job.links['second-tail'] = { from: 'second.POS', to, length: '2 m' };
    if (!fused) return;
    job.devices['second-fuse'] = { part: 'holder', in: 'boot' };
    job.links.link = { from: 'second-fuse.OUT', to: 'block.IN', length: '300 mm' };
  };
  const rulesOf = (findings: readonly Finding[]) =>
    findings.map(({ rule, related }) => `${rule} ${related[0]}`);

  test('what its current does to the fuses behind stands under its lead', () => {
    const findings = found(second(false));
    const cause = findings.find(
      ({ rule, related }) => rule === 'conductor-without-fuse' && related[0] === 'second-tail',
    );
    expect(cause?.remedy).toMatch(/^put a fuse at second\.POS/);
    const under = rulesOf(cause?.follows ?? []);
    expect(under).toContain('fuse-distance block.OUT1');
    expect(under).toContain('fuse-interrupting block.OUT1');
    expect(rulesOf(findings)).not.toContain('fuse-interrupting block.OUT1');
  });

  test('with a fuse that stands too far away nothing is hidden: no lead is without one', () => {
    const top = rulesOf(found(second(true)));
    expect(top.some((name) => name.startsWith('conductor-without-fuse'))).toBe(false);
    expect(top).toContain('fuse-distance second-fuse');
  });
});

describe('a ground lead that is too long', () => {
  /** The lead of the board 40 ft long, its reel with so much left, and so much of a drop that is the lead's. */
  const lead = (stockQuantity: number, short: number, leadV = 0.2) => {
    const { job, plan } = aboutPlan((made) => {
      Object.assign(wire(made, 'board-ground'), { lengthM: 12.192, part: 'reel' });
      const reel = { part: 'reel', title: 'Wire', kind: 'wire', unit: 'm' } as const;
      made.pick = [{ ...reel, quantity: 14, stockQuantity, short }];
      Object.assign(drop(made), { groundDropV: 0.25 });
      point(made, 'rated-power').elements.push({
        ...{ id: 'board-ground:conductor', of: 'board-ground', kind: 'conductor', model: 'resistance' },
        ...{ from: 'ground.G0', to: 'body.cargo', ohm: 0.002, dropV: leadV },
      });
    });
    const own = judge(job, plan, []).find(({ rule }) => rule === 'ground-lead-long');
    return (own?.follows ?? []).map(nameOf);
  };

  test('a reel that would do without it, and a drop that is its own, follow from it', () => {
    expect(lead(9.4, 12.192)).toEqual(expect.arrayContaining(['stock-short reel', 'ground-drop amp']));
  });

  test('what is short or drops anyway stands for itself', () => {
    expect(lead(2, 12.192)).not.toContain('stock-short reel');
    expect(lead(9.4, 12.5)).not.toContain('stock-short reel');
    expect(lead(9.4, 12.192, 0.04)).not.toContain('ground-drop amp');
  });
});

describe('the table of what follows from what', () => {
  const levels = ['stop', 'caution', 'note'];

  test('names findings of the catalogue, and no finding that could only be graver than its cause', () => {
    for (const [cause, bonds] of Object.entries(foldings)) {
      expect(Object.keys(findingCatalogue)).toContain(cause);
      for (const { follows } of bonds)
        for (const follower of follows) {
          const mildest = Math.max(...findingEntry(follower).levels.map((level) => levels.indexOf(level)));
          const own = Object.entries(findingCatalogue).find(([id]) => id === cause)?.[1].levels ?? [];
          const gravest = Math.min(...own.map((level) => levels.indexOf(level)));
          expect(gravest, `${cause} and ${follower}`).toBeLessThanOrEqual(mildest);
        }
    }
  });
});

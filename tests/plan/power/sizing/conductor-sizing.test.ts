import { describe, expect, test } from 'vitest';
import { awgSize } from '../../../../lib/model/quantity/wire-size.ts';
import type { ConductorRole } from '../../../../lib/model/vocabulary.ts';
import {
  greatestAmpacityA,
  type SizedConductor,
  sizeConductor,
} from '../../../../lib/plan/power/sizing/conductor-sizing.ts';
import type { ConductorTask } from '../../../../lib/plan/power/sizing/conductor-task.ts';
import type { RunZone } from '../../../../lib/power/conductor/ampacity.ts';
import { cableSm } from '../../../../lib/power/conductor/conductor-choice.ts';
import { usualRules } from '../../../power/usual-rules.ts';
import { inJob } from '../../../read/problem-case.ts';
import { type Change, smallShop } from '../../../read/small-shop.ts';
import { byId, jobOf } from '../../plan-small-shop.ts';
import { addParts, inParts, inShop } from '../../shop-changes.ts';

const cabin: RunZone = { zone: 'cabin', ambientC: 50, engineSpace: false, covered: false, bundleCount: 1 };
const bay: RunZone = { zone: 'engine-bay', ambientC: 85, engineSpace: true, covered: false, bundleCount: 1 };

/** A job of the small shop, its links and what a conductor of it comes to. */
function shop(...changes: readonly Change[]) {
  const job = jobOf(smallShop(...changes));
  const devices = new Map(job.devices.map((device) => [device.id, device]));
  const taskOf = (id: string, role: ConductorRole, more: Partial<ConductorTask>): ConductorTask => {
    return {
      link: byId(job.links, id),
      role,
      lengthM: 1,
      zones: [cabin],
      neededA: 0,
      ratedA: 1,
      leastMm2: 0,
      underMm2: Infinity,
      why: null,
      ...more,
    };
  };
  return {
    job,
    feed: (more: Partial<ConductorTask> = {}) => sizeConductor(job, devices, taskOf('feed', 'power', more)),
    ground: (more: Partial<ConductorTask> = {}) =>
      sizeConductor(job, devices, taskOf('ground', 'ground', more)),
    other: (id: string, role: ConductorRole, more: Partial<ConductorTask> = {}) =>
      sizeConductor(job, devices, taskOf(id, role, more)),
    most: (id: string, role: ConductorRole, zones: readonly RunZone[] = [cabin]) =>
      greatestAmpacityA(job, devices, byId(job.links, id), role, zones),
  };
}
const label = ({ cable }: SizedConductor) => cable.size.label;
const rules = ({ remarks }: SizedConductor) => remarks.map(({ rule, level }) => [rule, level]);
const sm = (awg: string) =>
  cableSm({ part: '', size: awgSize(awg), material: 'copper', insulationC: 105 }, usualRules);
/** A reel of 1/0 AWG, which goes into no port of the amplifier. */
const thick = addParts(
  'red-0: { kind: wire, title: "1/0", size: 1/0 AWG, insulation: 105 C, colour: RD, for: [power] }',
);
const feedGiven = (text: string) => inJob('to: amp.B+ }', `to: amp.B+, ${text} }`);

// The shop has 8 and 4 AWG of 105 C. 33 CFR 183.425, Table 5: 80 and 160 A; at 50 C 0.85 of it, 68 and 136 A.
describe('a conductor that is left open', () => {
  test('is the thinnest that carries its fuse, to the ampere', () => {
    expect(label(shop().feed({ neededA: 68 }))).toBe('8 AWG');
    expect(label(shop().feed({ neededA: 68.1 }))).toBe('4 AWG');
    expect(shop().feed({ neededA: 68 })).toMatchObject({
      chosen: 'computed',
      neededA: 68,
      lengthM: 1,
      byFeed: false,
      remarks: [],
      alternatives: [],
    });
    expect(shop().feed({ neededA: 68.1 }).reason).toMatch(/^4 AWG/);
  });

  test('is no thinner than it was, than its port takes and than its feed', () => {
    const ports = inParts(
      'GND: { role: supply-negative, joint: set-screw, takes: { from: 8 AWG',
      'GND: { role: supply-negative, joint: set-screw, takes: { from: 4 AWG',
    );
    expect(label(shop().ground())).toBe('8 AWG');
    expect(label(shop(ports).ground())).toBe('4 AWG');
    const grown = shop().ground({ leastMm2: awgSize('4').areaMm2, why: 'its drop asks for it' });
    expect([label(grown), grown.reason, grown.byFeed]).toEqual([
      '4 AWG',
      '4 AWG: its drop asks for it',
      false,
    ]);
    const feed = { conductanceSm: sm('4'), why: 'at least as large as its feed feed, 4 AWG' };
    const under = shop().ground({ feed });
    expect([label(under), under.reason, under.byFeed]).toEqual([
      '4 AWG',
      '4 AWG: at least as large as its feed feed, 4 AWG',
      true,
    ]);
    expect(label(shop().ground({ feed: { ...feed, conductanceSm: sm('8') } }))).toBe('8 AWG');
  });

  test('stays under what has no room for its bend, as long as something thinner carries its fuse', () => {
    const { areaMm2 } = awgSize('4');
    const warm = (neededA: number, underMm2: number) =>
      shop().feed({ neededA, underMm2, leastMm2: areaMm2, why: 'its drop asks for it' });
    // What was grown for its drop alone is asked for no more: a drop is told, a kink stops.
    const { reason, ...thin } = shop().feed({ neededA: 68, underMm2: areaMm2 });
    expect(thin.cable.size.label).toBe('8 AWG');
    expect(reason).toBe(
      '8 AWG: 4 AWG has no room for its bend on the board; 8 AWG is the smallest on the shelf, and fits',
    );
    expect(label(shop().feed({ neededA: 68.1, underMm2: areaMm2 }))).toBe('4 AWG');
    expect(label(warm(68, areaMm2 * 1.01))).toBe('4 AWG');
    // A ground is not taken under its feed for a bend.
    const feed = { conductanceSm: sm('4'), why: 'at least as large as its feed feed, 4 AWG' };
    expect(label(shop().ground({ feed, underMm2: areaMm2 }))).toBe('4 AWG');
    expect(label(shop().ground({ feed: { ...feed, conductanceSm: sm('8') }, underMm2: areaMm2 }))).toBe(
      '8 AWG',
    );
  });

  test('has the reason of what was asked before only where that decides its size', () => {
    // 4 AWG for its fuse alone: the 8 AWG that was asked for before say nothing.
    const { reason } = shop().feed({
      neededA: 100,
      leastMm2: awgSize('8').areaMm2,
      why: 'its drop asks for it',
    });
    expect(reason).not.toMatch(/its drop/);
    expect(reason).toMatch(/^4 AWG/);
    // Nothing was asked for: the choice speaks for itself.
    expect(shop().feed({ leastMm2: awgSize('4').areaMm2 }).reason).toMatch(/4 AWG/);
  });

  test('is held against the true ambient as a feed, which a ground has no fuse for', () => {
    // At 85 C sqrt(20 / 75) of 80 A: 41 A. The published figure of the engine space is 68 A.
    expect(label(shop().feed({ neededA: 60, zones: [bay] }))).toBe('4 AWG');
    expect(label(shop().feed({ neededA: 41, zones: [bay] }))).toBe('8 AWG');
    expect(label(shop().ground({ neededA: 60, zones: [bay] }))).toBe('8 AWG');
  });

  test('of no length at all is judged all the same', () => {
    expect(label(shop().feed({ neededA: 60, lengthM: 0 }))).toBe('8 AWG');
  });
});

describe('a shelf that is short', () => {
  const short = [
    inShop('red-8: { reels: [30 ft] }', 'red-8: { reels: [3 ft] }'),
    inShop('red-4: { reels: [30 ft] }', 'red-4: { reels: [3 ft] }'),
  ];

  test('takes a thicker one that lies there, else what must be bought, with a caution', () => {
    const [first] = short;
    if (!first) throw new Error('There is a change.');
    expect(label(shop(first).feed({ neededA: 60, lengthM: 1 }))).toBe('4 AWG');
    const bought = shop(...short).feed({ neededA: 60, lengthM: 1 });
    expect(label(bought)).toBe('8 AWG');
    expect(bought.remarks).toEqual([
      {
        of: ['feed'],
        rule: 'conductor-not-on-shelf',
        level: 'caution',
        message: 'no reel on the shelf has 8 AWG in one piece for feed',
        remedy: expect.stringMatching(/pick list/),
      },
    ]);
    expect(shop(...short).feed({ neededA: 60, lengthM: 0.9 }).remarks).toEqual([]);
  });

  test('is no matter for a size that the job gives: a rule holds it against the stock', () => {
    const given = shop(...short, feedGiven('size: 8 AWG')).feed({ neededA: 60, lengthM: 3 });
    expect([label(given), given.remarks]).toEqual(['8 AWG', []]);
  });

  test('without a reel for the use at all stops, by the use', () => {
    const none = shop(inParts('colour: BU, for: [turn-on]', 'colour: BU, for: [signal]')).other(
      'turn-on',
      'turn-on',
    );
    expect(rules(none)).toEqual([['conductor-no-reel', 'stop']]);
    expect(none.remarks[0]).toMatchObject({
      of: ['turn-on'],
      message: 'no reel of the catalogue is for turn-on conductors',
    });
    expect(none.remarks[0]?.remedy).toMatch(
      /^put a reel for it into the catalogue \(.*with for: \[turn-on\]\)/,
    );
    expect(none).toMatchObject({ judged: null, cable: { part: '', size: { label: 'none', areaMm2: 0 } } });
    const signal = shop().other('ground', 'signal');
    expect(signal.remarks[0]?.remedy).toMatch(/^put a reel for it into the catalogue/);
  });
});

describe('a conductor that nothing fits', () => {
  test('stops, and stands with what comes nearest', () => {
    const none = shop().feed({ neededA: 200 });
    expect(rules(none)).toEqual([['conductor-none-fits', 'stop']]);
    // Both carry too little: the thicker one is nearer.
    expect(label(none)).toBe('4 AWG');
    expect(none.judged).not.toBeNull();
  });

  test('stands with what misses fewest limits, though another is thicker', () => {
    const thick = addParts(
      'red-0: { kind: wire, title: "1/0", size: 1/0 AWG, insulation: 60 C, colour: RD, for: [power] }',
    );
    // 1/0 AWG neither goes in nor bears the zone; 4 AWG only carries too little.
    const none = shop(thick).feed({ neededA: 200, zones: [bay] });
    expect(label(none)).toBe('4 AWG');
  });
});

describe('a ground that can not be as large as its feed', () => {
  const asked = { conductanceSm: sm('1/0'), why: 'at least as large as its feed feed, 1/0 AWG' };

  test('is the best conducting one that its ports take, with what it misses', () => {
    const ground = shop().ground({ neededA: 60, feed: asked });
    expect(label(ground)).toBe('4 AWG');
    expect(ground.reason).toMatch(
      /^4 AWG: the largest that fits, where it should be at least as large as its feed feed, 1\/0 AWG; 4 AWG: /,
    );
    expect(ground.reason).toMatch(/; 4 AWG: \w/);
    expect(ground.reason).not.toMatch(/undefined/);
    expect([ground.byFeed, ground.remarks]).toEqual([false, []]);
  });

  test('is from the shelf, though a larger one could be bought', () => {
    const reels = [inShop('black-4: { reels: [30 ft] }', 'black-4: { reels: [2 ft] }')];
    const short = shop(...reels).ground({ neededA: 60, feed: asked, lengthM: 2 });
    expect([label(short), short.remarks]).toEqual(['8 AWG', []]);
    const none = shop(...reels, inShop('black-8: { reels: [30 ft] }', 'black-8: { reels: [2 ft] }'));
    const bought = none.ground({ neededA: 60, feed: asked, lengthM: 2 });
    expect([label(bought), rules(bought)]).toEqual(['4 AWG', [['conductor-not-on-shelf', 'caution']]]);
  });

  test('stops where it would not carry what its fuses let through', () => {
    const ground = shop().ground({ neededA: 200, feed: asked });
    expect(rules(ground)).toEqual([['conductor-none-fits', 'stop']]);
    expect(ground.reason).not.toMatch(/largest that fits/);
  });

  test('is chosen by conductance, not by area: clad aluminium of one size more conducts less', () => {
    const clad = addParts(
      'clad-3: { kind: wire, title: Clad, size: 3 AWG, material: copper-clad-aluminium, insulation: 105 C, colour: BK, for: [ground] }',
    );
    const wide = inParts(
      'GND: { role: supply-negative, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }',
      'GND: { role: supply-negative, joint: set-screw, takes: { from: 8 AWG, to: 3 AWG } }',
    );
    const stock = inShop('  black-8: {', '  clad-3: { reels: [30 ft] }\n  black-8: {');
    expect(label(shop(clad, wide, stock).ground({ neededA: 60, feed: asked }))).toBe('4 AWG');
  });
});

describe('a conductor that the job gives', () => {
  test('stays what it is; where it carries its fuse there is nothing to put in its place', () => {
    const kept = shop(feedGiven('size: 8 AWG')).feed({ neededA: 68 });
    expect(kept).toMatchObject({
      chosen: 'given',
      reason: 'given: 8 AWG',
      remarks: [],
      alternatives: [],
      byFeed: false,
    });
    expect(label(kept)).toBe('8 AWG');
  });

  test('too thin for its fuse is kept, with what would carry it, thin to thick, on the shelf or not', () => {
    const thin = (...changes: readonly Change[]) =>
      shop(...changes, feedGiven('size: 8 AWG')).feed({ neededA: 68.1 });
    expect(label(thin())).toBe('8 AWG');
    const instead = (one: SizedConductor) => one.alternatives.map(({ candidate }) => candidate.size.label);
    expect(instead(thin())).toEqual(['4 AWG']);
    expect(instead(thin(inShop('red-4: { reels: [30 ft] }', 'red-4: { reels: [1 in] }')))).toEqual(['4 AWG']);
    // 1/0 AWG would carry it.
    expect(instead(thin(thick))).toEqual(['4 AWG']);
  });

  test("of the vehicle is its maker's: nothing is put in its place", () => {
    const { job, other } = shop();
    const strap = job.links.find(({ id }) => id.endsWith('strap'));
    const fitted = other(strap?.id ?? '', 'ground', { neededA: 500 });
    expect(fitted).toMatchObject({ chosen: 'given', alternatives: [], remarks: [], cable: { part: '' } });
    expect(label(fitted)).toBe('4 AWG');
    // Not even where the catalogue has what would carry it.
    const thick = addParts(
      'black-0: { kind: wire, title: "1/0", size: 1/0 AWG, insulation: 105 C, colour: BK, for: [ground] }',
    );
    expect(shop(thick).other(strap?.id ?? '', 'ground', { neededA: 200 }).alternatives).toEqual([]);
  });
});

describe('the most that a conductor could carry', () => {
  test('is that of the best cable that goes into its ports', () => {
    expect(shop().most('feed', 'power')).toBe(136);
    expect(shop(thick).most('feed', 'power')).toBe(136);
    // 285 A of 1/0 AWG times 0.85: the tail leads from a stud into a holder that takes it.
    expect(shop(thick).most('tail', 'power')).toBe(242);
  });

  test('is that of the cable which is given, whatever else there is', () => {
    expect(shop(feedGiven('size: 8 AWG')).most('feed', 'power')).toBe(68);
    // A given size is judged by rules: its port does not bound it here.
    expect(shop(feedGiven('size: 1/0 AWG')).most('feed', 'power')).toBeGreaterThan(0);
  });

  test('is nothing where no cable is for it, or none bears its zone', () => {
    expect(shop().most('feed', 'signal')).toBe(0);
    expect(shop().most('feed', 'power', [{ ...bay, ambientC: 120 }])).toBe(0);
  });

  test('of a cable of the vehicle is that of its own size', () => {
    const { job, most } = shop();
    const strap = job.links.find(({ id }) => id.endsWith('strap'));
    expect(most(strap?.id ?? '', 'ground')).toBeGreaterThan(0);
    expect(most(strap?.id ?? '', 'ground')).toBeLessThanOrEqual(136);
  });
});

import { describe, expect, test } from 'vitest';
import { awgSize } from '../../../../lib/model/quantity/wire-size.ts';
import { conductorSizer } from '../../../../lib/plan/power/sizing/conductor-sizer.ts';
import { LeastSizes } from '../../../../lib/plan/power/sizing/least-sizes.ts';
import { ratingsOf, sizePower } from '../../../../lib/plan/power/sizing/size-power.ts';
import { inJob } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { byId } from '../../plan-small-shop.ts';
import { addParts, inParts, inShop } from '../../shop-changes.ts';
import { settledShop, sizedAnew } from '../settled-power.ts';

/** The sizes of the small shop's supply in one pass, from nothing. */
function sized(...changes: readonly Change[]) {
  const sizing = sizedAnew(settledShop(...changes).sizing);
  const least = new LeastSizes();
  const { conductors, fuses } = sizePower({ ...sizing, least });
  const of = (id: string) => {
    const found = conductors.get(id);
    if (!found) throw new Error(`${id} is not sized.`);
    return found;
  };
  const label = (id: string) => of(id).cable.size.label;
  return { sizing, conductors, fuses, least, of, label };
}
const fuse = (ampere: number) => inJob('holder-a, in: bay', `holder-a, in: bay, fuse: ${ampere} A`);
const tailGiven = (text: string) =>
  inJob('main-fuse.IN, length: 6 in }', `main-fuse.IN, length: 6 in, ${text} }`);
const mm2 = (awg: string) => awgSize(awg).areaMm2;

// The shop has 8 and 4 AWG of 105 C: 68 and 136 A at 50 C (33 CFR 183.425, Table 5: 80 and 160 A, times 0.85); in the
// engine bay 8 AWG keeps 41 A at its true ambient, 33 A under loom.
describe('the rating that conductors are sized for', () => {
  test('is that of the fuse, or what it would be without a bound; of none it is nothing', () => {
    const { fuses, sizing } = sized(fuse(80));
    expect(ratingsOf(fuses, sizing.job)('main-fuse')).toBe(80);
    const open = fuses.map((one) => ({ ...one, ratingA: null, ratedA: 40 }));
    // 40 A times 1.25, common practice, no source.
    expect(ratingsOf(open, sizing.job)('main-fuse')).toBe(50);
    expect(ratingsOf(fuses, sizing.job)('no-fuse')).toBe(0);
  });

  test('is chosen for what its conductors could carry at their thickest', () => {
    const [main] = sized().fuses;
    // 4 AWG is the thickest reel that goes into the amplifier: 136 A.
    expect(main).toMatchObject({
      ratingA: 60,
      duty: { protects: [{ id: 'feed at its thickest', ampacityA: 136, sideBySide: 1 }] },
    });
  });

  test('is what a feed, its tail and its ground must carry', () => {
    const { of } = sized(fuse(60));
    for (const id of ['feed', 'tail', 'ground']) expect(of(id).neededA, id).toBe(60);
  });

  test('stands beside what flows at rated power, which the drop of each is judged by', () => {
    const { of, sizing } = sized(fuse(60));
    const ratedA = sizing.loads.find(({ item }) => item === 'amp')?.ratedA ?? Number.NaN;
    for (const id of ['feed', 'tail', 'ground'])
      expect(
        of(id).judged?.dropV.trace.inputs.map(({ value }) => value),
        id,
      ).toContain(ratedA);
  });
});

describe('the lead from a battery to its fuse', () => {
  const thick = inJob('to: amp.B+ }', 'to: amp.B+, size: 4 AWG }');

  test('is as thick as what leaves the fuse, and says so', () => {
    const { label, of } = sized(fuse(30), thick);
    expect(label('tail')).toBe('4 AWG');
    expect(of('tail').reason).toBe('4 AWG: as thick as feed behind its fuse, 4 AWG');
  });

  test('is no thicker than its fuse asks for where what leaves it is not', () => {
    const { label, of } = sized(fuse(30), inJob('to: amp.B+ }', 'to: amp.B+, size: 8 AWG }'));
    expect(label('tail')).toBe('8 AWG');
    expect(of('tail').reason).not.toMatch(/behind its fuse/);
  });

  test('stays as it is given', () => {
    const { of, least } = sized(fuse(30), thick, tailGiven('size: 8 AWG'));
    expect(of('tail')).toMatchObject({ chosen: 'given', cable: { size: { label: '8 AWG' } } });
    expect(least.of('tail').areaMm2).toBe(mm2('8'));
  });

  test('is as thick as the thickest of several that leave the fuse', () => {
    const two = (first: string, second: string) =>
      sized(
        fuse(30),
        inJob('to: amp.B+ }', `to: amp.B+, size: ${first} AWG }`),
        inJob(
          '  speaker: {',
          `  second: { from: main-fuse.OUT, to: amp.B+, length: 3 m, size: ${second} AWG }\n  speaker: {`,
        ),
      ).label('tail');
    expect([two('4', '8'), two('8', '4'), two('8', '8')]).toEqual(['4 AWG', '4 AWG', '8 AWG']);
  });

  test('is as thick as its port takes bare: of what leaves the fuse the thickest that goes in', () => {
    const port = inParts(
      'IN: { role: feed-in, joint: stud, stud: M8, takes: { from: 8 AWG, to: 1/0 AWG } }\n      OUT: ',
      'IN: { role: feed-in, joint: stud, stud: M8, takes: { from: 8 AWG, to: 8 AWG } }\n      OUT: ',
    );
    expect(sized(fuse(30), thick, port).label('tail')).toBe('8 AWG');
  });

  test('a lead that a fuse protects is not thickened with its neighbours', () => {
    const block: readonly Change[] = [
      inJob('  sub: {', '  block: { part: block-a, in: boot }\n  sub: {'),
      inJob(
        '  feed: { from: main-fuse.OUT, to: amp.B+ }',
        '  feed: { from: main-fuse.OUT, to: block.IN, size: 8 AWG }',
      ),
      inJob(
        '  speaker: {',
        '  lead: { from: block.OUT1, to: amp.B+, length: 1 m, size: 4 AWG }\n  speaker: {',
      ),
    ];
    const { label } = sized(fuse(30), ...block);
    expect([label('tail'), label('feed'), label('lead')]).toEqual(['8 AWG', '8 AWG', '4 AWG']);
  });
});

describe('a ground', () => {
  test('is at least as large as its feed, and says so', () => {
    const { label, of } = sized(fuse(30), inJob('to: amp.B+ }', 'to: amp.B+, size: 4 AWG }'));
    expect(label('ground')).toBe('4 AWG');
    expect(of('ground')).toMatchObject({
      byFeed: true,
      reason: '4 AWG: at least as large as its feed feed, 4 AWG',
    });
  });

  test('is as large as its fuse asks for where its feed is smaller', () => {
    const { label, of } = sized(fuse(80), inJob('to: amp.B+ }', 'to: amp.B+, size: 8 AWG }'));
    expect(label('ground')).toBe('4 AWG');
    expect(of('ground').byFeed).toBe(false);
  });
});

describe('what one pass hands to the next', () => {
  test('is the size of every conductor of the job, with what asked for it', () => {
    const { least } = sized(fuse(30), inJob('to: amp.B+ }', 'to: amp.B+, size: 4 AWG }'));
    expect(least.of('ground')).toEqual({
      areaMm2: mm2('4'),
      why: 'at least as large as its feed feed, 4 AWG',
    });
    expect(least.of('tail').why).toBe('as thick as feed behind its fuse, 4 AWG');
    expect(least.of('feed').areaMm2).toBe(mm2('4'));
  });

  test('is the size of one that must be bought too', () => {
    const { least, of } = sized(
      fuse(30),
      inShop('red-8: { reels: [30 ft] }', 'red-8: { reels: [1 in] }'),
      inShop('red-4: { reels: [30 ft] }', 'red-4: { reels: [1 in] }'),
    );
    expect(of('feed').remarks.map(({ rule }) => rule)).toEqual(['conductor-not-on-shelf']);
    expect(least.of('feed').areaMm2).toBe(of('feed').cable.size.areaMm2);
  });

  test('is nothing of a conductor that fits nowhere: it must not drag the others along', () => {
    const { least, of } = sized(fuse(200));
    expect(of('feed').remarks.map(({ rule }) => rule)).toEqual(['conductor-none-fits']);
    expect(least.of('feed').areaMm2).toBe(0);
  });

  test('is kept: what was grown before is no thinner now, for the same reason', () => {
    const { sizing } = settledShop(fuse(30));
    const least = new LeastSizes();
    least.raise('feed', mm2('4'), 'its drop');
    const { conductors } = sizePower({ ...sizing, least });
    expect(conductors.get('feed')).toMatchObject({
      cable: { size: { label: '4 AWG' } },
      reason: '4 AWG: its drop',
    });
  });
});

test('the most that conductors could carry is asked of each by itself', () => {
  const thick = addParts(
    'red-0: { kind: wire, title: "1/0", size: 1/0 AWG, insulation: 105 C, colour: RD, for: [power] }',
  );
  const { sizing } = settledShop(thick);
  const { job, devices, circuit } = sizing;
  const sizer = conductorSizer(job, devices, circuit.roles);
  const mostA = (id: string) => sizer.mostA(byId(job.links, id), 'power', 1);
  // Into the amplifier goes 4 AWG, from battery to fuse 1/0 AWG: 160 and 285 A, at 50 C 0.85 of it.
  expect([mostA('feed'), mostA('tail'), mostA('feed')]).toEqual([136, 242, 136]);
});

describe('the zones of a conductor', () => {
  /** What lowers its warm ampacity: loaded conductors beside it in its run, for one. */
  const lowered = (link: string, ...changes: readonly Change[]) => {
    const { sizing } = settledShop(...changes);
    const { job, devices, circuit, lengths } = sizing;
    const one = conductorSizer(job, devices, circuit.roles).size({
      link: byId(job.links, link),
      role: circuit.roles.get(link) ?? 'power',
      lengthM: lengths(link).lengthM,
      neededA: 1,
      ratedA: 1,
      leastMm2: 0,
      why: null,
    });
    return new Set(one.judged?.ampacity.limits.flatMap(({ cautionGoverned }) => cautionGoverned));
  };
  const inRun = (...links: readonly string[]) =>
    inJob(
      '  power: { route: left-sill, links: [feed]',
      `  power: { route: left-sill, links: [${links.join(', ')}]`,
    );
  const more = (...ids: readonly string[]) =>
    inJob(
      '  speaker: {',
      `${ids.map((id) => `  ${id}: { from: main-fuse.OUT, to: body.cargo }\n`).join('')}  speaker: {`,
    );

  // 33 CFR 183.425: three loaded conductors in one bundle carry less.
  test('count the loaded conductors of its run as one bundle, itself included', () => {
    const two = [more('one', 'two'), inRun('feed', 'one', 'two')];
    expect(lowered('feed', ...two)).toContain('bundle');
    expect(lowered('two', ...two)).toContain('bundle');
    expect(lowered('feed', more('one'), inRun('feed', 'one'))).not.toContain('bundle');
  });

  test('count no signal and no turn-on wire, which carry next to nothing', () => {
    const control = inJob('  control: { route: right-sill, links: [turn-on] }\n', '');
    expect(lowered('feed', more('one'), inRun('feed', 'one', 'turn-on'), control)).not.toContain('bundle');
  });

  test('know no bundle of a conductor that lies in no run, however many others do', () => {
    const two = [more('one', 'two'), inRun('feed', 'one', 'two')];
    expect(lowered('tail', ...two)).not.toContain('bundle');
  });
});

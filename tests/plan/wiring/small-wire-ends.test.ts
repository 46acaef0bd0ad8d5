import { describe, expect, test } from 'vitest';
import type { PlanWire } from '../../../lib/model/plan/index.ts';
import { prepareWireEnd } from '../../../lib/plan/wiring/wire-ends.ts';
import { inJob } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId } from '../plan-small-shop.ts';
import { addParts, inParts, inShop } from '../shop-changes.ts';
import { small, told, wiring } from './small-wiring.ts';

const ends = (wire: PlanWire) => wire.ends.map(({ form }) => form);

describe('the end of a wire', () => {
  const terminals = addParts(
    'ferrule-8: { kind: terminal, title: F, form: ferrule, takes: { from: 8 AWG, to: 8 AWG } }',
    'ferrule-4: { kind: terminal, title: F, form: ferrule, takes: { from: 4 AWG, to: 4 AWG }, strip: 18 mm, die: "25 mm2" }',
    'ferrule-wide: { kind: terminal, title: F, form: ferrule, takes: { from: 12 AWG, to: 2 AWG } }',
    'lug-m8: { kind: terminal, title: L, form: ring-lug, takes: { from: 8 AWG, to: 4 AWG }, stud: M8, die: hex }',
    'lug-m6: { kind: terminal, title: L, form: ring-lug, takes: { from: 8 AWG, to: 4 AWG }, stud: M6 }',
    'tab: { kind: terminal, title: T, form: blade-receptacle, takes: { from: 22 AWG, to: 18 AWG } }',
    'sleeve: { kind: terminal, title: S, form: solder-sleeve, takes: { from: 20 AWG, to: 16 AWG } }',
  );
  const widths = [
    addParts(
      'tab-narrow: { kind: terminal, title: N, form: blade-receptacle, tab: 2.8 mm, takes: { from: 22 AWG, to: 18 AWG } }',
      'tab-wide: { kind: terminal, title: W, form: blade-receptacle, tab: 6.3 mm, takes: { from: 22 AWG, to: 18 AWG } }',
    ),
  ];
  const tabbed = (tab: string) =>
    inParts(
      'REM: { role: turn-on-in }',
      `REM: { role: turn-on-in, joint: blade-tab, ${tab}takes: { from: 22 AWG, to: 18 AWG } }`,
    );
  const fourGauge = inJob('to: amp.B+ }', 'to: amp.B+, size: 4 AWG }');

  test('has the terminal of the catalogue with the narrowest range that takes it, on a stud the one for the stud', () => {
    const { wires, placed } = wiring(small(terminals, fourGauge));
    const [post, port] = byId(wires, 'feed').ends;
    expect(post).toMatchObject({
      form: 'lug',
      part: 'lug-m8',
      stud: 'M8',
      holeM: 0.0084,
      die: 'hex',
      prep: 'ring lug M8',
    });
    expect(port).toMatchObject({ form: 'ferrule', part: 'ferrule-4', stripM: 0.018, die: '25 mm2' });
    expect(port).not.toHaveProperty('stud');
    expect(port).not.toHaveProperty('holeM');
    expect(placed.filter(({ remark }) => remark.rule === 'terminal-not-in-catalogue')).toEqual([]);
    expect(ends(byId(wires, 'vehicle.charge'))).toEqual(['as-fitted', 'as-fitted']);
    expect(ends(byId(wires, 'signal'))).toEqual(['made-up', 'made-up']);
  });

  test('without a terminal in the catalogue says which is missing', () => {
    const { wires, placed } = wiring(small(fourGauge));
    expect(byId(wires, 'feed').ends.map(({ part }) => part)).toEqual([null, null]);
    const own = placed.filter(({ remark }) => remark.of[0] === 'feed');
    expect(own.map(({ remark }) => remark.message)).toEqual(
      expect.arrayContaining([
        'no ring lug for 4 AWG is in the catalogue',
        'no ferrule for 4 AWG is in the catalogue',
      ]),
    );
  });

  test('on a tab is a receptacle, in a plug a contact, soldered where the part says so', () => {
    const joint = (name: string) =>
      wiring(
        small(
          terminals,
          inParts(
            'REM: { role: turn-on-in }',
            `REM: { role: turn-on-in, joint: ${name}, takes: { from: 22 AWG, to: 18 AWG } }`,
          ),
        ),
      ).wires;
    expect(byId(joint('blade-tab'), 'turn-on').ends[1]).toMatchObject({
      part: 'tab',
      prep: 'crimped blade receptacle',
    });
    expect(byId(joint('plug'), 'turn-on').ends[1]).toMatchObject({
      part: null,
      prep: 'crimped plug contact',
      form: 'crimp',
    });
    expect(byId(joint('solder'), 'turn-on').ends[1]).toMatchObject({
      part: null,
      prep: 'solder',
      form: 'solder',
    });
  });

  // Widths of tabs: IEC 61210 has 2.8, 4.8 and 6.3 mm; 1/4 in (6.35 mm) is the last of these by the inch.
  test.each([
    ['6.3 mm', 'tab-wide', 'crimped blade receptacle 6.3 mm'],
    ['1/4 in', 'tab-wide', 'crimped blade receptacle 6.3 mm'],
    ['2.8 mm', 'tab-narrow', 'crimped blade receptacle 2.8 mm'],
  ])('on a tab of %s is the receptacle of that width: %s', (width, part, prep) => {
    const { wires } = wiring(small(terminals, ...widths, tabbed(`tab: ${width}, `)));
    expect(byId(wires, 'turn-on').ends[1]).toMatchObject({ part, prep });
  });

  test('on a tab of a width that no receptacle has is none, and that is told with the width', () => {
    const { wires, placed } = wiring(small(terminals, ...widths, tabbed('tab: 4.8 mm, ')));
    expect(byId(wires, 'turn-on').ends[1]).toMatchObject({ part: null });
    const [own] = placed.filter(({ remark }) => remark.of.includes('amp.REM'));
    expect(own?.remark).toMatchObject({
      rule: 'terminal-not-in-catalogue',
      message: expect.stringMatching(
        /^no blade receptacle for \S+ AWG on a tab of 4\.8 mm is in the catalogue$/,
      ),
      remedy: expect.stringContaining('with tab: 4.8 mm'),
    });
  });

  test('on a tab whose width nobody tells is the widest', () => {
    const { wires } = wiring(small(...widths, tabbed('')));
    expect(byId(wires, 'turn-on').ends[1]).toMatchObject({
      part: 'tab-wide',
      prep: 'crimped blade receptacle',
    });
  });

  /** The turn-on of 18 AWG from the plug of the vehicle's source, to a lead of the amplifier's maker. */
  const turnOn = (lead: string, ...more: readonly Change[]) => {
    const found = wiring(
      small(
        inJob('to: amp.REM }', 'to: amp.REM, size: 18 AWG }'),
        inParts('REM: { role: turn-on-in }', `REM: { role: turn-on-in, joint: supplied-lead${lead} }`),
        ...more,
      ),
    );
    const [tap, end] = byId(found.wires, 'turn-on').ends;
    return {
      tap,
      end,
      lacking: told(found, 'terminal-not-in-catalogue').filter(({ remark }) => remark.of[0] === 'turn-on'),
    };
  };
  const splices = addParts(
    'butt-18: { kind: terminal, title: B, form: butt-splice, takes: { from: 22 AWG, to: 18 AWG }, strip: 8 mm, die: oval }',
    'sleeve-16: { kind: terminal, title: S, form: solder-sleeve, takes: { from: 20 AWG, to: 16 AWG } }',
  );

  test("at a lead of a device's maker has the splice that takes both, and says what a lead is taken for whose size nobody tells", () => {
    const open = turnOn('', splices);
    expect(open.end).toMatchObject({
      ...{ form: 'supplied-lead', part: 'butt-18', stripM: 0.008, die: 'oval' },
      prep: "joined to the maker's own lead, taken as 20 AWG",
    });
    expect(open.lacking).toEqual([]);
    const thin = turnOn(', lead: 22 AWG', splices);
    expect(thin.end).toMatchObject({ part: 'butt-18', prep: "joined to the maker's own lead, 22 AWG" });
    // 600 mm are 23.6 in, never told as more than there is.
    expect(turnOn(', lead: 22 AWG, lead-length: 600 mm', splices).end.prep).toBe(
      "joined to the maker's own lead, 22 AWG, 23 9/16 in long",
    );
    // Both take 18 AWG on 20 AWG, and the sleeve is the narrower one: what is crimped goes first.
    const wide = addParts(
      'butt-wide: { kind: terminal, title: W, form: butt-splice, takes: { from: 20 AWG, to: 16 AWG } }',
      'sleeve-18: { kind: terminal, title: S, form: solder-sleeve, takes: { from: 20 AWG, to: 18 AWG } }',
    );
    expect(turnOn(', lead: 20 AWG', wide).end.part).toBe('butt-wide');
    // 16 AWG is beyond the barrel of the butt splice, and within the sleeve.
    expect(turnOn(', lead: 16 AWG', splices).end.part).toBe('sleeve-16');
  });

  test("at the plug of the vehicle's own source is joined to the lead there, which goes on: three ends in one sleeve", () => {
    const { tap } = turnOn('', splices);
    // Two of 18 AWG side by side are more than the barrel of the butt splice takes.
    expect(tap).toMatchObject({
      ...{ form: 'tap', part: 'sleeve-16' },
      prep: 'joined to the lead at the plug, taken as 20 AWG',
    });
    expect(tap).not.toHaveProperty('torqueNm');
  });

  test('that no splice of the catalogue joins to its lead is told, once for each end, and another is not', () => {
    const thick = turnOn(', lead: 8 AWG', splices);
    expect(thick.end.part).toBeNull();
    expect(thick.lacking.map(({ remark }) => remark.of)).toEqual([['turn-on', 'amp.REM']]);
    expect(thick.lacking[0]?.remark.message).toMatch(
      /no butt splice or solder sleeve .* turn-on \(18 AWG\) .* maker's own lead, 8 AWG/,
    );
    expect(turnOn('').lacking.map(({ remark }) => remark.of)).toEqual([
      ['turn-on', 'radio.REM'],
      ['turn-on', 'amp.REM'],
    ]);
  });

  /** The speaker wire of a size at the coil's lead of 18 AWG, with splices for 16 to 14 AWG beside those for thin wire. */
  const onCoil = (lead: string, ...more: readonly Change[]) => {
    const found = wiring(
      small(
        splices,
        inJob('  speaker: {', '  speaker: { size: 16 AWG,'),
        addParts('red-16: { kind: wire, title: W, size: 16 AWG, insulation: 80 C, for: [speaker] }'),
        inParts(
          'C1+: { role: coil-positive }, C1-: { role: coil-negative }',
          `C1+: { role: coil-positive, joint: supplied-lead${lead} }, C1-: { role: coil-negative }`,
        ),
        ...more,
      ),
    );
    return byId(found.wires, 'speaker.+').ends[1];
  };
  const blue = addParts(
    'butt-14: { kind: terminal, title: B, form: butt-splice, takes: { from: 16 AWG, to: 14 AWG }, strip: 8 mm }',
  );

  test('that is thicker than its lead has no splice that is too wide for the lead, whether that is told or not', () => {
    expect(onCoil('', blue)).toMatchObject({ part: 'sleeve-16' });
    expect(onCoil(', lead: 20 AWG', blue)).toMatchObject({ part: 'sleeve-16' });
    expect(onCoil(', lead: 22 AWG', blue)).toMatchObject({ part: null });
  });

  test('has the lead folded back double in a splice of the shelf where no other takes both', () => {
    const shelved = inShop('  large-60:', '  butt-14: { pieces: 20 }\n  large-60:');
    expect(onCoil(', lead: 18 AWG', blue, shelved)).toMatchObject({
      ...{ part: 'butt-14', folded: 'lead' },
      prep: "joined to the maker's own lead, 18 AWG, the lead folded back double in the splice",
    });
    expect(onCoil(', lead: 16 AWG', blue, shelved)).not.toHaveProperty('folded');
  });

  test('that its port does not take is refused with what would do', () => {
    const found = wiring(
      small(
        fourGauge,
        inParts(
          'B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }',
          'B+: { role: supply-positive, joint: set-screw, takes: { from: 10 AWG, to: 8 AWG } }',
        ),
      ),
    );
    expect(byId(found.wires, 'feed').ends[1]).toMatchObject({ form: 'refused', part: null });
    const [refused] = told(found, 'port-refuses-conductor');
    expect(refused?.remark).toMatchObject({ level: 'stop', of: ['feed', 'amp.B+'] });
    expect(refused?.remark.remedy).toMatch(
      /^a reducer to .*; or a port for a larger conductor; or a thinner/,
    );
  });

  test('that shares its port with another has one twin ferrule with it, made for the thicker, noted once for all', () => {
    const clamp = (sign: string) =>
      inParts(
        `CH1${sign === 'positive' ? '+' : '-'}: { role: speaker-out-${sign} }`,
        `CH1${sign === 'positive' ? '+' : '-'}: { role: speaker-out-${sign}, joint: set-screw, takes: { from: 18 AWG, to: 4 AWG }, conductors: 2 }`,
      );
    const found = wiring(
      small(
        addParts(
          'twin-10: { kind: terminal, title: T, form: twin-ferrule, takes: { from: 10 AWG, to: 10 AWG } }',
          'twin-12: { kind: terminal, title: T, form: twin-ferrule, takes: { from: 12 AWG, to: 12 AWG } }',
          'white-10: { kind: wire, title: W, size: 10 AWG, insulation: 80 C, colour: WH, for: [speaker] }',
        ),
        clamp('positive'),
        clamp('negative'),
        inJob('  sub: { part', '  sub-2: { part: woofer-a, in: boot }\n  sub: { part'),
        inJob(
          '  speaker: {',
          '  second: { from: amp.CH1, to: sub-2.C1, length: 3 ft, size: 10 AWG }\n  speaker: {',
        ),
      ),
    );
    for (const id of ['speaker.+', 'second.+'])
      expect(byId(found.wires, id).ends[0]).toMatchObject({ form: 'twin-ferrule', part: 'twin-10' });
    const [note, ...others] = told(found, 'port-note').filter(({ remark }) => /twin/.test(remark.message));
    expect(others).toEqual([]);
    expect(note).toMatchObject({ path: '/links/second', file: 'job' });
    expect(note?.remark.message).toBe(
      'twin ferrules are not in DIN 46228-4, and stand in amp.CH1+ (second.+ and speaker.+), amp.CH1- (second.- and speaker.-)',
    );
  });

  test('that shares its port with one of no size yet is prepared by itself', () => {
    const { job, devices, settled } = small(
      terminals,
      fourGauge,
      inParts(
        'B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }',
        'B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG }, conductors: 2 }',
      ),
      inJob('  sub: { part', '  spare-fuse: { part: holder-a, in: bay }\n  sub: { part'),
      inJob('  speaker: {', '  spare: { from: spare-fuse.OUT, to: amp.B+, length: 1 m }\n  speaker: {'),
    );
    const feed = byId(job.links, 'feed');
    const own = settled.all.get('feed');
    if (!own) throw new Error('The feed is sized.');
    const alone = new Map([['feed', own]]);
    expect(prepareWireEnd(job, devices, feed, feed.to, alone, new Map()).end).toMatchObject({
      form: 'ferrule',
      part: 'ferrule-4',
    });
  });

  test('on a stud that no heat-shrink goes over says so', () => {
    const bare = told(wiring(small()), 'heat-shrink-none-fits');
    expect(bare.map(({ remark }) => remark.of)).toContainEqual(['tail', 'battery.POS']);
  });

  test('tells how far heat-shrink goes, and how thick the wire is taken to be, where it has some', () => {
    const { wires, traces } = wiring(
      small(
        addParts(
          'shrink: { kind: covering, title: S, form: heat-shrink, bore: 12 mm, shrunk-bore: 4 mm, withstands: 110 C }',
        ),
      ),
    );
    expect(byId(wires, 'tail').ends[0].shrink?.part).toBe('shrink');
    expect(traces['wires.tail.ends.A.stripM']).toBeDefined();
    // A is the end that the link names first: a stud; B a set screw, which strips as its port says.
    const [from, to] = byId(wires, 'feed').ends;
    expect(from.stripM).not.toBe(to.stripM);
    expect(traces['wires.feed.ends.A.stripM']?.value).toBe(from.stripM);
    expect(traces['wires.feed.ends.B.stripM']?.value).toBe(to.stripM);
    expect([from.shrink?.part, to.shrink]).toEqual(['shrink', undefined]);
    expect(traces['wires.feed.outsideM']).toBeDefined();
    expect(traces['wires.tail.ends.A.shrinkM']?.value).toBe(byId(wires, 'tail').ends[0].shrink?.lengthM);
    expect(traces['wires.tail.outsideM']).toBeDefined();
    expect(traces['wires.turn-on.outsideM']).toBeUndefined();
  });
});

import { describe, expect, test } from 'vitest';
import { inJob } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId, smallPlan } from '../plan-small-shop.ts';
import { addParts, inParts } from '../shop-changes.ts';

const shopFile = 'content/shop.yaml';
const ferrules = addParts(
  'ferrule-18: { kind: terminal, title: Ferrule, form: ferrule, takes: { from: 18 AWG, to: 18 AWG }, strip: 8 mm, die: "1.0 mm2 square" }',
  'ferrule-8: { kind: terminal, title: Ferrule, form: ferrule, takes: { from: 8 AWG, to: 8 AWG }, strip: 12 mm, die: "10 mm2 square" }',
  'ferrule-4: { kind: terminal, title: Ferrule, form: ferrule, takes: { from: 4 AWG, to: 4 AWG }, strip: 18 mm, die: "25 mm2 square" }',
  'lug-4: { kind: terminal, title: Lug, form: ring-lug, takes: { from: 4 AWG, to: 4 AWG }, stud: M8, strip: 16 mm, die: 4 AWG hex }',
  'twin-10: { kind: terminal, title: "Twin ferrule", form: twin-ferrule, takes: { from: 10 AWG, to: 10 AWG }, strip: 14 mm }',
  'twin-12: { kind: terminal, title: "Twin ferrule", form: twin-ferrule, takes: { from: 12 AWG, to: 12 AWG }, strip: 14 mm }',
  'receptacle-18: { kind: terminal, title: Receptacle, form: blade-receptacle, takes: { from: 22 AWG, to: 18 AWG }, strip: 7 mm, die: "22 to 18 AWG oval" }',
);

describe('the end of a wire gets what its port takes, and the pick list counts it', () => {
  test('in a set screw: a ferrule, its strip length and its die', () => {
    const { plan } = smallPlan(ferrules);
    const [, port] = byId(plan.wires, 'feed').ends;
    expect(port).toMatchObject({ part: 'ferrule-4', stripM: 0.018, die: '25 mm2 square' });
    // DIN 46228-4 names a ferrule by what it takes: 4 AWG is 21.15 mm2, so 25 mm2.
    expect(port.prep).toBe('ferrule 25 mm2');
    const inScrews = plan.wires.flatMap(({ ends }) => ends).filter(({ part }) => part === 'ferrule-4').length;
    expect(plan.pick.find(({ part }) => part === 'ferrule-4')?.quantity).toBe(inScrews);
  });

  test('on a stud: a lug for it, with the hole, and the torque of the house on a bolt of the body', () => {
    const { plan } = smallPlan(ferrules);
    const [post] = byId(plan.wires, 'tail').ends;
    // ISO 273, fine: 8.4 mm for M8.
    expect(post).toMatchObject({ part: 'lug-4', stripM: 0.016, stud: 'M8', holeM: 0.0084, die: '4 AWG hex' });
    expect(post.torqueNm).toBeUndefined();
    const [, body] = byId(plan.wires, 'ground').ends;
    // Common practice, no source: a steel M8 takes 25 N m, the rivet nut that it counts as being in 20 N m.
    expect(body).toMatchObject({ stud: 'M8', torqueNm: 20 });
  });

  test('on a stud whose size the part does not tell: refused, and no lug is counted for it', () => {
    const lugs = (...changes: readonly Change[]) => {
      const { plan, remarks } = smallPlan(ferrules, ...changes);
      const refusals = remarks.filter(
        ({ rule, of }) => rule === 'port-refuses-conductor' && of.includes('battery.POS'),
      );
      const counted = plan.pick.find(({ part }) => part === 'lug-4')?.quantity ?? 0;
      return { refusals, counted, post: byId(plan.wires, 'tail').ends[0] };
    };
    const known = lugs();
    expect(known.refusals).toEqual([]);
    const unknown = lugs(
      inParts(
        'POS: { role: source-positive, joint: stud, stud: M8,',
        'POS: { role: source-positive, joint: stud,',
      ),
    );
    expect(unknown.refusals).toEqual([
      expect.objectContaining({
        level: 'stop',
        message: expect.stringMatching(/stud size of battery\.POS is not known/),
      }),
    ]);
    expect(unknown.post).toMatchObject({ prep: 'refused', part: null });
    expect(unknown.counted).toBe(known.counted - 1);
  });

  test('on a blade: a receptacle', () => {
    const tab = inParts(
      'REM: { role: turn-on-in }',
      'REM: { role: turn-on-in, joint: blade-tab, takes: { from: 22 AWG, to: 18 AWG } }',
    );
    const { plan } = smallPlan(ferrules, tab);
    expect(byId(plan.wires, 'turn-on').ends[1]).toMatchObject({
      part: 'receptacle-18',
      prep: 'crimped blade receptacle',
      stripM: 0.007,
    });
  });

  const second = addParts(
    'white-10: { kind: wire, title: "10 AWG white", size: 10 AWG, insulation: 80 C, colour: WH, for: [speaker] }',
  );
  const speaker = (conductors: number): readonly Change[] => [
    inParts('CH1+: { role: speaker-out-positive }', clamp('CH1+', 'positive', conductors)),
    inParts('CH1-: { role: speaker-out-negative }', clamp('CH1-', 'negative', conductors)),
    inJob(
      '  sub: { part: woofer-a, in: boot }',
      '  sub: { part: woofer-a, in: boot }\n  sub-2: { part: woofer-a, in: boot }',
    ),
    inJob(
      '  speaker: { from: amp.CH1, to: sub.C1, length: 3 ft }',
      '  speaker: { from: amp.CH1, to: sub.C1, length: 3 ft }\n  speaker-2: { from: amp.CH1, to: sub-2.C1, length: 3 ft, size: 10 AWG }',
    ),
  ];
  const clamp = (name: string, sign: string, conductors: number): string =>
    `${name}: { role: speaker-out-${sign}, joint: set-screw, takes: { from: 18 AWG, to: 4 AWG }, conductors: ${conductors} }`;

  test('two conductors in a port that allows them: one twin ferrule, made for the thicker', () => {
    const { plan, remarks } = smallPlan(ferrules, second, ...speaker(2));
    const shared = plan.wires.flatMap(({ ends }) => ends).filter(({ terminal }) => terminal === 'amp.CH1+');
    expect(shared.map(({ prep, part }) => [prep, part])).toEqual([
      ['twin ferrule 6 mm2', 'twin-10'],
      ['twin ferrule 6 mm2', 'twin-10'],
    ]);
    // One on the plus, one on the minus.
    expect(plan.pick.find(({ part }) => part === 'twin-10')?.quantity).toBe(2);
    expect(plan.pick.find(({ part }) => part === 'twin-12')).toBeUndefined();
    const notes = remarks.filter(({ message }) => /DIN 46228-4/.test(message));
    expect(notes.map(({ message }) => message)).toEqual([
      'twin ferrules are not in DIN 46228-4, and stand in amp.CH1+ (speaker.+ and speaker-2.+), amp.CH1- (speaker.- and speaker-2.-)',
    ]);
  });

  test('two conductors in a port whose maker allows one: refused, with what would do', () => {
    const { plan, remarks } = smallPlan(ferrules, second, ...speaker(1));
    const shared = plan.wires.flatMap(({ ends }) => ends).filter(({ terminal }) => terminal === 'amp.CH1+');
    expect(shared.map(({ prep }) => prep)).toEqual(['refused', 'refused']);
    expect(remarks.find(({ rule }) => rule === 'port-refuses-conductor')?.remedy).toMatch(
      /distribution part/,
    );
    // Once a port, with both of its wires.
    const refusals = remarks.filter(({ rule }) => rule === 'port-refuses-conductor');
    expect(refusals.map(({ of }) => of)).toEqual([
      ['speaker.+', 'speaker-2.+', 'amp.CH1+'],
      ['speaker.-', 'speaker-2.-', 'amp.CH1-'],
    ]);
    expect(refusals[0]?.message).toMatch(/two conductors in it: speaker\.\+ and speaker-2\.\+$/);
  });

  test('more lugs than the house allows on a stud: refused', () => {
    const { remarks } = smallPlan(ferrules, [shopFile, 'stock:', 'rules: { lugs-on-stud: 1 }\nstock:']);
    expect(
      remarks.filter(({ rule }) => rule === 'port-refuses-conductor').map(({ message }) => message),
    ).toContain(
      '2 lugs are on battery.POS, at most 1 may be (ABYC E-11, from memory): tail and vehicle.charge',
    );
  });
});

describe('a size that a port at either end does not take', () => {
  const thick = inParts(
    'red-8: { kind: wire, title: "8 AWG red", size: 8 AWG',
    'red-8: { kind: wire, title: "2 AWG red", size: 2 AWG',
  );

  test('is not chosen, though the thinner one is what it would take', () => {
    const { plan, remarks } = smallPlan(
      ferrules,
      thick,
      inParts(
        'red-4: { kind: wire, title: "4 AWG red", size: 4 AWG',
        'red-4: { kind: wire, title: "10 AWG red", size: 10 AWG',
      ),
    );
    // Of 10 and 2 AWG the port takes neither: the one is too thin for the fuse, the other too thick for the port.
    expect(byId(plan.power.conductors, 'feed').reason).toMatch(/nothing fits/);
    expect(remarks.some(({ level, of }) => level === 'stop' && of.includes('feed'))).toBe(true);
  });
});

import { describe, expect, test } from 'vitest';
import { partSchema } from '../../../../lib/model/kinds/index.ts';
import type { Circuit } from '../../../../lib/plan/power/circuit/circuit.ts';
import { inflowsOf } from '../../../../lib/plan/power/short/fuse-inflow.ts';
import { parts } from '../../../rules/parts.ts';
import { circuitOf, ring, tree, twoBatteries } from '../circuits.ts';

const inflow = (circuit: Circuit, node: string, without: string) => inflowsOf(circuit).into(node, without);
const jointInflowA = (circuit: Circuit, ...asked: Parameters<ReturnType<typeof inflowsOf>['jointA']>) =>
  inflowsOf(circuit).jointA(...asked);
const each = (ratings: Readonly<Record<string, number>>) => (fuse: string) => ratings[fuse] ?? Number.NaN;
const names = (fuses: readonly { readonly id: string }[]) => fuses.map(({ id }) => id);

/** The circuit with one of its sources a charger of 30 A, which gives no more whatever hangs on it. */
function withCharger(circuit: Circuit, id: string): Circuit {
  const spec = partSchema.parse(parts().charger);
  return {
    ...circuit,
    sources: circuit.sources.map((one) =>
      one.device.id === id ? { ...one, type: 'charger', device: { ...one.device, spec } } : one,
    ),
  };
}

/** A battery behind a fuse and a charger that feed one block, from which a fused way leads on. */
const besideCharger = (): Circuit =>
  withCharger(
    circuitOf({
      batteries: ['bat', 'charger'],
      feeds: [
        ['tail', 'bat.POS', 'main.IN'],
        ['feed', 'main.OUT', 'block.IN'],
        ['charge', 'charger.POS', 'block.IN'],
        ['lead', 'block.OUT1', 'amp.B+'],
      ],
      fuses: [
        ['main', 'main.IN', 'main.OUT'],
        ['way-1', 'block.IN', 'block.OUT1'],
      ],
      loads: ['amp'],
    }),
    'charger',
  );

describe('what limits itself', () => {
  test('lets in no more than its limit, beside what the fuses let in', () => {
    const at = inflow(besideCharger(), 'block.IN', '');
    expect(at.bare).toBe(false);
    expect(at.mostA(each({ main: 80, 'way-1': 60 }))).toBe(110);
    expect(jointInflowA(besideCharger(), ['block.IN'], each({ main: 80, 'way-1': 60 }))).toBe(110);
    expect(names(at.fuses)).toEqual(['main', 'charger']);
  });

  test('is bounded by a smaller fuse behind it, and bounds a larger one', () => {
    const at = inflow(besideCharger(), 'amp.B+', '');
    expect(at.mostA(each({ main: 80, 'way-1': 60 }))).toBe(60);
    expect(at.mostA(each({ main: 80, 'way-1': 200 }))).toBe(110);
    expect(names(at.fuses)).toEqual(['way-1']);
  });

  test('is no bare source at its own post either', () => {
    const { bare, mostA } = inflow(besideCharger(), 'charger.POS', 'charge');
    expect(bare).toBe(false);
    // Its lead cut, 30 A of its own are all that arrive at the post.
    expect(mostA(each({ main: 80, 'way-1': 60 }))).toBe(30);
  });

  test('does not bound a battery at the same post', () => {
    const { sources, ...rest } = besideCharger();
    const [bat] = sources;
    const both = { ...rest, sources: sources.map((one) => ({ ...one, positive: bat?.positive ?? '' })) };
    expect(inflow(both, 'bat.POS', '').bare).toBe(true);
  });
});

describe('what flows into a node', () => {
  test('comes through a fuse alone, a source beyond it that is bare is bounded', () => {
    const at = inflow(tree(), 'block.IN', '');
    expect(at.bare).toBe(false);
    expect(names(at.fuses)).toEqual(['main']);
    expect(at.mostA(each({ main: 80, 'way-1': 30, 'way-2': 30 }))).toBe(80);
  });

  test('at the post of a battery comes through no fuse', () => {
    const at = inflow(tree(), 'main.IN', '');
    expect(at).toMatchObject({ bare: true, fuses: [] });
    expect(at.mostA(each({ main: 80, 'way-1': 30, 'way-2': 30 }))).toBe(0);
  });

  test('is nothing behind a conductor that is cut', () => {
    const at = inflow(tree(), 'block.IN', 'feed');
    expect(at).toMatchObject({ bare: false, fuses: [] });
    expect(at.mostA(each({ main: 80, 'way-1': 30, 'way-2': 30 }))).toBe(0);
  });

  test('comes by the lead beside it while one of two is cut', () => {
    expect(names(inflow(ring(), 'block.IN', 'feed-1').fuses)).toEqual(['main']);
  });

  test('from two batteries is bare at one of them and still comes through the fuse of the other', () => {
    const at = inflow(twoBatteries(), 'rear.POS', '');
    expect(at.bare).toBe(true);
    expect(names(at.fuses)).toEqual(['fuse-rear']);
    // 60 A behind 80 A: the smaller bounds what the front battery gives.
    expect(at.mostA(each({ 'fuse-front': 60, 'fuse-rear': 80, board: 40 }))).toBe(60);
    expect(
      jointInflowA(twoBatteries(), ['rear.POS'], each({ 'fuse-front': 60, 'fuse-rear': 80, board: 1 })),
    ).toBe(60);
  });

  test('is nothing at a node that hangs on nothing, whatever the sources give', () => {
    const at = inflow(tree(), 'nowhere.X', '');
    expect(at).toMatchObject({ bare: false, fuses: [] });
    expect(at.mostA(each({ main: 80, 'way-1': 30, 'way-2': 30 }))).toBe(0);
    expect(jointInflowA(tree(), ['nowhere.X'], () => 80)).toBe(0);
    expect(jointInflowA(tree(), [], () => 80)).toBe(0);
  });

  test('comes through no fuse that a conductor passes by', () => {
    const circuit = circuitOf({
      batteries: ['bat'],
      feeds: [
        ['tail', 'bat.POS', 'main.IN'],
        ['feed', 'main.OUT', 'amp.B+'],
        ['by', 'main.IN', 'main.OUT'],
      ],
      fuses: [['main', 'main.IN', 'main.OUT']],
      loads: ['amp'],
    });
    expect(inflow(circuit, 'amp.B+', '')).toMatchObject({ bare: true, fuses: [] });
    expect(inflow(circuit, 'amp.B+', '').mostA(() => 80)).toBe(0);
    expect(names(inflow(circuit, 'amp.B+', 'by').fuses)).toEqual(['main']);
  });

  test('comes through no fuse beyond which there is no source, however many fuses follow', () => {
    const branch = circuitOf({
      batteries: ['bat'],
      feeds: [
        ['tail', 'bat.POS', 'main.IN'],
        ['feed', 'main.OUT', 'block.IN'],
        ['onward', 'block.OUT1', 'small.IN'],
        ['lead', 'small.OUT1', 'lamp.B+'],
      ],
      fuses: [
        ['main', 'main.IN', 'main.OUT'],
        ['way-1', 'block.IN', 'block.OUT1'],
        ['small', 'small.IN', 'small.OUT1'],
      ],
      loads: ['lamp'],
    });
    expect(names(inflow(branch, 'block.IN', '').fuses)).toEqual(['main']);
  });

  test('is no more because of a source that hangs on nothing', () => {
    const [first] = tree().sources;
    if (!first) throw new Error('The tree has a source.');
    const loose = { ...tree(), sources: [...tree().sources, { ...first, positive: 'loose.POS' }] };
    const ratings = each({ main: 40, 'way-1': 60, 'way-2': 60 });
    expect(jointInflowA(loose, ['a.B+'], ratings)).toBe(40);
    expect(inflow(loose, 'a.B+', '').mostA(ratings)).toBe(40);
  });

  test('is bounded by each of several sources that limit themselves', () => {
    const circuit = circuitOf({
      batteries: ['bat', 'rear', 'charger'],
      // The amplifier is named first, so that its node is the first of all.
      feeds: [
        ['lead', 'amp.B+', 'block.OUT1'],
        ['tail', 'bat.POS', 'main.IN'],
        ['feed', 'main.OUT', 'block.IN'],
        ['rear-tail', 'rear.POS', 'rear-fuse.IN'],
        ['rear-feed', 'rear-fuse.OUT', 'block.IN'],
        ['charge', 'charger.POS', 'block.OUT1'],
      ],
      fuses: [
        ['way-1', 'block.IN', 'block.OUT1'],
        ['main', 'main.IN', 'main.OUT'],
        ['rear-fuse', 'rear-fuse.IN', 'rear-fuse.OUT'],
      ],
      loads: ['amp'],
    });
    const at = inflow(withCharger(circuit, 'charger'), 'amp.B+', '');
    expect(at.bare).toBe(false);
    expect(names(at.fuses)).toEqual(['way-1', 'charger']);
    expect(at.mostA(each({ 'way-1': 60, main: 20, 'rear-fuse': 25 }))).toBe(75);
    const both = withCharger(withCharger(circuit, 'charger'), 'rear');
    expect(inflow(both, 'amp.B+', '').mostA(each({ 'way-1': 200, main: 20, 'rear-fuse': 100 }))).toBe(80);
  });

  test('is nothing from a source that hangs on nothing, a charger or a battery', () => {
    const loose = (circuit: Circuit): Circuit => {
      const [first] = circuit.sources;
      return first
        ? { ...circuit, sources: [...circuit.sources, { ...first, positive: 'loose.POS' }] }
        : circuit;
    };
    const battery = inflow(loose(tree()), 'block.IN', '');
    expect(names(battery.fuses)).toEqual(['main']);
    const charger = withCharger(loose(tree()), 'bat');
    expect(inflow(charger, 'nowhere.X', '').fuses).toEqual([]);
  });
});

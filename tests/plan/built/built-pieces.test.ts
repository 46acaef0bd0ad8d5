import { describe, expect, test } from 'vitest';
import type { BuiltJob } from '../../../lib/model/content/built.ts';
import type { Job } from '../../../lib/model/content/resolved-job.ts';
import { computeAnew } from '../../../lib/model/keep.ts';
import { awgSize } from '../../../lib/model/quantity/wire-size.ts';
import { builtJob } from '../../../lib/plan/built/built-job.ts';
import { compareBuilt } from '../../../lib/plan/built/compare-built.ts';
import { withFittingPlaces } from '../../../lib/plan/built/fit-places.ts';
import { withFittingWires, withOpenSizes } from '../../../lib/plan/built/fit-wires.ts';
import { samplePlan } from '../../publish/sample/sample-plan.ts';
import { inJob } from '../../read/problem-case.ts';
import { smallShop } from '../../read/small-shop.ts';
import { oneBoard } from '../board/one-board.ts';
import { byId, jobOf } from '../plan-small-shop.ts';
import { settledShop } from '../power/settled-power.ts';

const plan = samplePlan();
const [sampleWire] = plan.wires;
const [sampleItem] = plan.items;
if (!sampleWire || !sampleItem) throw new Error('The sample plan has a wire and an item.');

/** Two devices, one of the vehicle, and two wires, one with a reel. */
const today = {
  boards: plan.boards.slice(0, 1),
  runs: plan.runs,
  items: [
    { ...sampleItem, id: 'amp', part: 'amp-a', origin: 'job' as const, board: 'main', seat: null },
    { ...sampleItem, id: 'bat', part: 'battery-a', origin: 'vehicle' as const },
  ],
  wires: [
    {
      ...{ ...sampleWire, id: 'feed', label: 'P1', origin: 'job' as const, from: 'bat.POS', to: 'amp.B+' },
      ...{ part: 'red-4', lengthM: 2, run: null },
    },
    {
      ...{ ...sampleWire, id: 'lead', label: 'S1', origin: 'job' as const, from: 'radio.OUT', to: 'amp.IN' },
      ...{ part: null, lengthM: 3, run: null },
    },
    { ...sampleWire, id: 'charge', origin: 'vehicle' as const },
  ],
};
const built: BuiltJob = builtJob({ ...today, proposals: [], job: { revision: 'A' } });

describe('what a released plan built', () => {
  test('is the devices and wires of the job, where everything stands, and what each board was cut from', () => {
    expect(built.revision).toBe('A');
    expect(built.items).toEqual({ amp: { part: 'amp-a', board: 'main', seat: null } });
    expect(Object.keys(built.wires)).toEqual(['feed', 'lead']);
    expect(built.wires.feed).toMatchObject({ label: 'P1', part: 'red-4', lengthM: 2, route: null });
    const [board] = today.boards;
    expect(built.boards[board?.id ?? '']).toMatchObject({ sheet: board?.sheet, space: board?.space });
    expect(Object.keys(built.places)).toEqual(board?.placements.map(({ item }) => item));
    const proposal = { rule: 'supply', reason: 'near', path: ['links', 'feed'] } as const;
    const proposals = [{ id: 'links.feed', ...proposal, path: [...proposal.path], says: '{"a":1}' }];
    expect(builtJob({ ...today, proposals, job: { revision: 'A' } }).proposals).toEqual([
      { ...proposal, value: { a: 1 } },
    ]);
  });

  test('stays as it is, or is told with what it was and what it is', () => {
    const same = compareBuilt({ built }, today);
    expect(same?.changed).toEqual([]);
    expect(same?.unchanged).toEqual(expect.arrayContaining(['amp', 'feed', 'lead']));
    const [item, ...items] = today.items;
    const [feed, lead, ...wires] = today.wires;
    if (!item || !feed || !lead) throw new Error('They are there.');
    const changed = compareBuilt(
      { built },
      {
        ...today,
        items: [{ ...item, part: null }, ...items],
        wires: [{ ...feed, lengthM: 2.5 }, { ...lead, label: 'S2' }, ...wires],
      },
    );
    expect(
      changed?.changed.map(({ id, was, is }) => [id, was.replace(/,.*/, ''), is.replace(/,.*/, '')]),
    ).toEqual([
      ['amp', 'amp-a at main', 'none at main'],
      ['feed', 'P1 red-4 bat.POS to amp.B+', 'P1 red-4 bat.POS to amp.B+'],
      ['lead', 'S1 radio.OUT to amp.IN', 'S2 radio.OUT to amp.IN'],
    ]);
    expect(compareBuilt({ built }, { ...today, wires: [] })?.changed).toContainEqual(
      expect.objectContaining({ id: 'feed', is: 'nothing' }),
    );
    expect(compareBuilt({ built: null }, today)).toBeNull();
  });
});

describe('a device where the revision before had it', () => {
  /** The amplifier of 100 by 80 mm on a board of 500 by 300 mm, as far right as is said. */
  const held = (xMm: number) => {
    const { job } = oneBoard(
      undefined,
      inJob('at: { x: 200 mm, y: 110 mm }', `at: { x: ${xMm} mm, y: 110 mm }`),
    );
    const own: Job = {
      ...job,
      held: { revision: 'A', places: ['amp'], reels: [], lengths: ['ground', 'tail'] },
    };
    return { own, fitting: withFittingPlaces(own, computeAnew) };
  };
  const lengthOf = (job: Job, id: string) => byId(job.links, id).given?.length;

  test('stays where it still fits, and so do the lengths of its wires', () => {
    const { own, fitting } = held(200);
    expect(fitting).toBe(own);
  });

  test('is placed anew past the edge, and what is joined to it is measured anew: nothing else', () => {
    const { fitting } = held(450);
    expect(byId(fitting.devices, 'amp').given?.at).toBeUndefined();
    expect(fitting.held).toMatchObject({ places: [], lengths: ['tail'] });
    expect(lengthOf(fitting, 'ground')).toBeUndefined();
    expect(lengthOf(fitting, 'tail')).toBeCloseTo(0.1524, 9);
    expect(lengthOf(fitting, 'speaker.+')).toBeCloseTo(0.9144, 9);
  });

  test('that the job itself writes stays there, whatever stops', () => {
    const { own } = held(450);
    const written: Job = { ...own, held: { revision: 'A', places: [], reels: [], lengths: [] } };
    expect(withFittingPlaces(written, computeAnew)).toBe(written);
    const other: Job = {
      ...own,
      held: { revision: 'A', places: ['sub'], reels: [], lengths: [] },
    };
    expect(withFittingPlaces(other, computeAnew)).toBe(other);
  });
});

describe('a wire of the revision before', () => {
  const job = jobOf(
    smallShop(inJob('to: body.cargo, length: 12 in', 'to: body.cargo, wire: black-4, length: 12 in')),
  );
  const own: Job = {
    ...job,
    held: { revision: 'A', places: [], reels: ['ground'], lengths: ['ground'] },
  };
  const asked = (awg: string, material: 'copper' | 'copper-clad-aluminium' = 'copper') => {
    const sized = settledShop().all.get('ground');
    if (!sized) throw new Error('The ground is sized.');
    const cable = { ...sized.cable, size: awgSize(awg), material };
    const { held, links } = withFittingWires(own, new Map([['ground', { ...sized, cable }]]));
    return { held, given: byId(links, 'ground').given };
  };

  test('stays where it is as thick as is asked for today, or thicker', () => {
    for (const awg of ['4', '8'])
      expect(asked(awg)).toMatchObject({
        held: { reels: ['ground'], lengths: ['ground'] },
        given: { wire: 'black-4', length: expect.closeTo(0.3048, 9) },
      });
  });

  test('is cut anew where it is thinner, or of another metal: neither reel nor length stay', () => {
    for (const found of [asked('2'), asked('8', 'copper-clad-aluminium')]) {
      expect(found.held).toMatchObject({ reels: [], lengths: [] });
      expect(found.given).not.toHaveProperty('wire');
      expect(found.given).not.toHaveProperty('length');
    }
  });

  test('leaves its size open while it is asked what it comes to today', () => {
    const open = withOpenSizes(own);
    expect(byId(open.links, 'ground').given).not.toHaveProperty('wire');
    expect(byId(open.links, 'ground').given?.length).toBeCloseTo(0.3048, 9);
    expect(open.held).toMatchObject({ reels: [], lengths: ['ground'] });
    expect(withOpenSizes(job)).toBe(job);
  });
});

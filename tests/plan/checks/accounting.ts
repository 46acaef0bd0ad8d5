import { expect, test } from 'vitest';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { outsideCheck } from '../../outside-check.ts';

type Board = BuildPlan['boards'][number];

/** Whether a board, turned or not, comes out of an off-cut; each demo job has one board, without rails or pads. */
function takes({ sheet, widthM, heightM }: BuildPlan['offCuts'][number], board: Board): boolean {
  const [short = 0, long = 0] = [board.widthM, board.heightM].toSorted((a, b) => a - b);
  return sheet === board.sheet && short <= Math.min(widthM, heightM) && long <= Math.max(widthM, heightM);
}

/** Terminals, cables and the pick list: each thing accounted for, and once. */
export function accountingChecks(plan: () => BuildPlan): void {
  const addedUp = outsideCheck('picks-added-up');

  test('every terminal of every item is connected or left open with a reason', () => {
    const { terminals, items, wires } = plan();
    expect(terminals.filter(({ state }) => state === 'unaccounted')).toEqual([]);
    const named = items
      .filter(({ kind }) => kind !== 'body')
      .flatMap((item) => item.terminals.map(({ name }) => `${item.id}.${name}`));
    expect(terminals.map(({ item, terminal }) => `${item}.${terminal}`).sort()).toEqual(named.sort());
    for (const { item, terminal, wires: own, state, reason } of terminals) {
      const ends = wires
        .filter(({ from, to }) => [from, to].includes(`${item}.${terminal}`))
        .map(({ id }) => id);
      expect([...own].sort(), `${item}.${terminal}`).toEqual(ends.sort());
      expect(state).toBe(own.length > 0 ? 'connected' : 'open');
      if (state === 'open') expect(reason).toMatch(/\S/);
    }
  });

  test('every conductor of every cable carries one wire or is spare', () => {
    const { cables, wires } = plan();
    for (const { id, conductors } of cables) {
      const carried = conductors.flatMap(({ wire }) => wire ?? []);
      expect(new Set(carried).size).toBe(carried.length);
      expect([...carried].sort()).toEqual(
        wires
          .filter(({ cable }) => cable === id)
          .map((wire) => wire.id)
          .sort(),
      );
    }
  });

  test('the pick list has each item, fuse, end and metre of wire once', () => {
    const { pick, items, power, wires, boards, runs, offCuts } = plan();
    const line = (part: string) => pick.find((one) => one.part === part);
    expect(new Set(pick.map(({ part }) => part)).size).toBe(pick.length);
    const own = wires.filter(({ origin }) => origin === 'job');
    // Two conductors that share a port share their twin ferrule.
    const ends = own.flatMap((wire) => wire.ends);
    const isTwin = (part: string) => line(part)?.title.startsWith('Twin') ?? false;
    const onEnds = ends.filter(
      ({ part, terminal }, at) =>
        part !== null &&
        !(isTwin(part) && ends.findIndex((end) => end.part === part && end.terminal === terminal) < at),
    );
    const pieces = [
      ...items.filter(({ origin }) => origin === 'job').map(({ part }) => part),
      ...power.fuses.map(({ part }) => part),
      ...onEnds.map(({ part }) => part),
      ...boards.filter((board) => !offCuts.some((one) => takes(one, board))).map(({ sheet }) => sheet),
      ...boards.flatMap(({ pieces: below }) =>
        below.flatMap(({ parts }) => parts.flatMap(({ part, count }) => new Array<string>(count).fill(part))),
      ),
      ...runs.flatMap(({ grommets }) => grommets.map(({ part }) => part)),
    ].filter((part): part is string => part !== null);
    for (const part of new Set(pieces))
      expect(line(part)?.quantity, part).toBe(pieces.filter((one) => one === part).length);
    for (const reel of new Set(own.flatMap(({ part }) => part ?? []))) {
      const totalM = own.filter(({ part }) => part === reel).reduce((sum, { lengthM }) => sum + lengthM, 0);
      expect(line(reel), reel).toMatchObject({ unit: 'm' });
      expect(Math.abs(addedUp.differs(line(reel)?.quantity ?? 0, totalM) - totalM), reel).toBeLessThan(
        0.0006,
      );
    }
    for (const { quantity, short } of pick) {
      expect(quantity).toBeGreaterThan(0);
      expect(short).toBeGreaterThanOrEqual(0);
      expect(short).toBeLessThanOrEqual(quantity);
    }
  });

  test('labels are one to a wire; a pair shares its number and differs in its sign', () => {
    const own = plan().wires.filter(({ origin }) => origin === 'job');
    expect(new Set(own.map(({ label }) => label)).size).toBe(own.length);
    for (const { id, label, link } of own) {
      const sign = id === link ? '' : id.slice(-1);
      expect(label.endsWith(sign), id).toBe(true);
      const mates = own.filter((wire) => wire.link === link).map((wire) => wire.label.replace(/[+-]$/, ''));
      expect(new Set(mates).size, link).toBe(1);
    }
  });

  test('the two conductors of a speaker pair are never of one colour', () => {
    const own = plan().wires.filter(({ origin, role }) => origin === 'job' && role === 'speaker');
    for (const positive of own.filter(({ id }) => id.endsWith('.+'))) {
      const negative = own.find(({ id }) => id === `${positive.link}.-`);
      expect(negative?.size, positive.link).toEqual(positive.size);
      expect(negative?.colour, positive.link).not.toBe(positive.colour);
    }
  });

  test('a wire is measured where its two ends are, and has two of them', () => {
    const { wires, items } = plan();
    const known = new Set(items.flatMap((item) => item.terminals.map(({ name }) => `${item.id}.${name}`)));
    for (const { from, to, ends, lengthM, zones, id } of wires) {
      expect(
        ends.map(({ terminal }) => terminal),
        id,
      ).toEqual([from, to]);
      expect(known.has(from) && known.has(to), id).toBe(true);
      expect(lengthM, id).toBeGreaterThan(0);
      const zonesM = zones.reduce((sum, zone) => sum + zone.lengthM, 0);
      // Service loops lie in no zone of the way.
      expect(zonesM, id).toBeGreaterThan(0);
      expect(zonesM, id).toBeLessThanOrEqual(lengthM + 1e-9);
    }
  });
}

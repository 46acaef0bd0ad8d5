import { describe, expect, test } from 'vitest';
import { packetDrawings } from '../../lib/draw/packet/index.ts';
import { fusesText, numberedFuses, numbersText } from '../../lib/draw/packet/numbered-fuses.ts';
import type { PacketDrawing } from '../../lib/draw/packet/packet-drawing.ts';
import { drawingText } from '../../lib/draw/surface.ts';
import type { BuildPlan } from '../../lib/model/plan/index.ts';
import type { Panel } from '../../lib/model/vocabulary.ts';
import { fixedJobs, fixedPlan } from '../boards/fixed-jobs.ts';
import { demoJobs, demoPlan } from '../plan/demo.ts';
import { samplePlan } from '../publish/sample/sample-plan.ts';
import { shippedMetrics } from './lettering/shipped-metrics.ts';
import { overlapsOn } from './overlaps.ts';

const plans = new Map<string, BuildPlan>([
  ['sample', samplePlan()],
  ...demoJobs.map((job) => [`demo ${job}`, demoPlan(job)] as const),
  ...fixedJobs.map((job) => [`fixed ${job}`, fixedPlan(job)] as const),
]);

function all(plan: BuildPlan): PacketDrawing[] {
  const { vehicle, boards, oneLine, levels } = packetDrawings(plan, shippedMetrics, numberedFuses(plan));
  return [vehicle, ...boards, oneLine, levels].filter((one) => one !== null);
}

describe.each([...plans])('the drawings of a packet, %s', (_, plan) => {
  const drawings = all(plan);
  const fuses = numberedFuses(plan);

  test('let no text meet another, a line or the rim, and leave none out', () => {
    for (const one of drawings) {
      expect(overlapsOn(one), one.id).toEqual([]);
      expect(one.unplaced, one.id).toEqual([]);
    }
  });

  test('are read on a phone: capitals of the least type are 7 px high at 390 px with the margins of the page', () => {
    for (const { drawing } of drawings) {
      const least = Math.min(...drawing.texts.map(({ box }) => box.bottomMm - box.topMm));
      expect((least * 350) / drawing.widthMm).toBeGreaterThan(7);
    }
  });

  test('number the fuses of the job alone, each once, and show each of them where it is', () => {
    const own = plan.power.fuses.filter(({ item }) =>
      plan.items.some(({ id, origin }) => id === item && origin === 'job'),
    );
    expect(fuses.map(({ fuse }) => fuse.id).toSorted()).toEqual(own.map(({ id }) => id).toSorted());
    expect(fuses.map(({ number }) => number)).toEqual(own.map((_, index) => index + 1));
    const vehicle = drawings[0]?.drawing.texts.map(({ text }) => text) ?? [];
    for (const { number, holder } of fuses) {
      if (holder.board === null) expect(vehicle).toContain(String(number));
      else expect(drawings.map(({ id }) => id)).toContain(`board-${holder.board}`);
    }
  });

  test('tell every rating on the one line', () => {
    const line = drawings.find(({ id }) => id === 'one-line')?.drawing.texts.map(({ text }) => text) ?? [];
    for (const { number, fuse } of fuses)
      expect(line.some((text) => text.includes(`Fuse ${number}: ${fuse.ratingA} A`))).toBe(true);
  });

  test('are the same bytes of the same plan', () => {
    const texts = (): string[] =>
      all(plan).map(({ drawing }) => drawingText(drawing, { colours: 'properties' }));
    expect(texts()).toEqual(texts());
  });
});

describe('the order of the fuses of a block', () => {
  const plan = fixedPlan('van-three-amps');
  const block = 'dist';

  /** The pictures of the block, by their ids, with the numbers and ratings from the top, where these panels hold its ways. */
  function pictures(panelOf: Readonly<Record<string, Panel | null>>) {
    const items = plan.items.map((item) => ({
      ...item,
      terminals: item.terminals.map((terminal) => ({
        ...terminal,
        panel:
          item.id === block && terminal.name in panelOf ? (panelOf[terminal.name] ?? null) : terminal.panel,
      })),
    }));
    return packetDrawings({ ...plan, items }, shippedMetrics, numberedFuses({ ...plan, items }))
      .boards.filter(({ id }) => id.startsWith(`ways-${block}`) && !id.startsWith('ways-dist-small'))
      .map((one) => {
        expect(overlapsOn(one), one.id).toEqual([]);
        const texts = one.drawing.texts.map(({ text }) => text);
        return {
          id: one.id,
          numbers: texts.filter((text) => /^\d+$/.test(text)).map(Number),
          first: texts[0],
        };
      });
  }
  const numberOf = (way: string): number =>
    numberedFuses(plan).find(({ holder, fuse }) => holder.id === block && fuse.way === way)?.number ?? 0;

  test('is one picture where all leave by one side, and one a side where they leave by two', () => {
    const ways = plan.power.fuses.filter(({ item }) => item === block).map(({ way }) => way);
    expect(ways.length).toBeGreaterThan(2);
    const [whole, ...others] = pictures({});
    expect(others).toEqual([]);
    expect(whole?.id).toBe('ways-dist');
    expect(whole?.numbers.toSorted()).toEqual(ways.map(numberOf).toSorted());
    const split = pictures({ OUT1: 'right' });
    expect(split.flatMap(({ numbers }) => numbers).toSorted()).toEqual(ways.map(numberOf).toSorted());
    expect(split).toHaveLength(2);
    expect(split.map(({ numbers }) => numbers)).toContainEqual([numberOf('OUT1')]);
    for (const { first } of split)
      expect(first).toMatch(
        /^On the board, (left|right|upper|lower) side, from (top to bottom|left to right)$/,
      );
  });

  test('is not guessed of a way on the face of the block, or on no panel', () => {
    for (const panel of ['face', null] as const) {
      const told = pictures({ OUT1: panel });
      expect(told.flatMap(({ numbers }) => numbers)).not.toContain(numberOf('OUT1'));
      expect(told.map(({ first }) => first).join()).toContain(' side, ');
      expect(pictures({ OUT1: panel, OUT2: panel, OUT3: panel, OUT4: panel })).toEqual([]);
    }
  });
});

test('numbers are told as a reader says them', () => {
  expect([[3], [3, 4], [3, 4, 5], [1, 3, 5]].map(numbersText)).toEqual([
    '3',
    '3 and 4',
    '3 to 5',
    '1, 3 and 5',
  ]);
  expect(fusesText([2])).toBe('fuse 2');
  expect(fusesText([2, 3])).toBe('fuses 2 and 3');
});

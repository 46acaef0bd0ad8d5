import { parseHTML } from 'linkedom';
import { describe, expect, test } from 'vitest';
import { drawJobPages, type JobPage } from '../../../lib/draw/draw-job.ts';
import { shortName } from '../../../lib/draw/power/feed-words.ts';
import { drawingText } from '../../../lib/draw/surface.ts';
import { type BuildPlan, buildPlanSchema } from '../../../lib/model/plan/index.ts';
import { visibleTo } from '../../../lib/publish/site/visible-to.ts';
import { fixedJobs, fixedPlan } from '../../boards/fixed-jobs.ts';
import { expectGolden } from '../../golden.ts';
import { crowded } from '../../plan/board/crowded-board.ts';
import { demoJobs, demoPlan } from '../../plan/demo.ts';
import { shippedMetrics } from '../lettering/shipped-metrics.ts';
import { overlapsOn } from '../overlaps.ts';
import { samplePlan } from '../sample/sample-plan.ts';

const picturesOf = (plan: BuildPlan): JobPage[] =>
  drawJobPages(plan, shippedMetrics).filter(({ page }) => page.documentType === 'Picture');
const svgOf = ({ drawing }: JobPage): string => drawingText(drawing, { colours: 'resolved' });

const plans = new Map<string, BuildPlan>([
  ...demoJobs.map((job) => [`demo ${job}`, demoPlan(job)] as const),
  ...fixedJobs.map((job) => [`fixed ${job}`, fixedPlan(job)] as const),
  ['raised', crowded().plan],
]);

describe.each([...plans])('the picture of a finished board, %s', (_, plan) => {
  const pictures = picturesOf(plan);

  test('is one of each board, among the text of the cover, where a page of either paper and a phone have room for it', () => {
    const furnished = plan.boards.filter(({ placements }) => placements.length > 0);
    expect(pictures).toHaveLength(furnished.length);
    for (const { sheet, openTo, drawing } of pictures) {
      expect({ sheet, openTo }).toEqual({ sheet: 'cover', openTo: 'everyone' });
      expect(drawing.widthMm).toBeLessThanOrEqual(186);
      // At 390 px with the margins of the page, capitals of the least type are 7 px high.
      const least = Math.min(
        ...drawing.texts.map(({ box }) => Math.min(box.bottomMm - box.topMm, box.rightMm - box.leftMm)),
      );
      expect((least * 350) / drawing.widthMm).toBeGreaterThan(7);
    }
  });

  test('lets no name meet another, a line or the rim, and leaves none out', () => {
    for (const page of pictures) {
      expect(overlapsOn(page)).toEqual([]);
      expect(page.unplaced).toEqual([]);
    }
  });

  test('names every part in the picture, and with its place in what is read out', () => {
    pictures.forEach(({ drawing, page }) => {
      const board = plan.boards.find(({ id }) => page.id === `picture-${id}`);
      const said = drawing.texts.map(({ text }) => text).join(' ');
      for (const { item } of board?.placements ?? []) {
        const of = plan.items.find(({ id }) => id === item);
        const name = of ? shortName(of) : item;
        for (const word of name.split(' ')) expect(said).toContain(word);
        expect(page.description).toContain(`${name} `);
      }
    });
  });

  test('tells nothing that the customer may not see', () => {
    const words = wordsIn(visibleTo(buildPlanSchema, plan, 'customer'));
    for (const page of pictures) {
      const { document } = parseHTML(svgOf(page));
      const told = [...document.querySelectorAll('text, title, desc')].map(
        ({ textContent }) => textContent ?? '',
      );
      const subjects = [...document.querySelectorAll('[data-of]')].map(
        (one) => one.getAttribute('data-of') ?? '',
      );
      for (const word of told.flatMap((text) => text.split(apart)))
        expect(words.has(word.toLowerCase()) || own.has(word.toLowerCase()), word).toBe(true);
      const ids = new Set([...plan.boards.map(({ id }) => id), ...plan.items.map(({ id }) => id)]);
      for (const subject of subjects) expect(ids.has(subject.replace(/^name /, '')), subject).toBe(true);
    }
  });
});

const apart = /[\s,:;.-]+/;

/** Words that are the picture's own. */
const own = new Set(
  [
    'with its parts and looms seen from the mounting side above right left in middle low half way up high raised',
    'finished on the edges of parts strokes for terminals squares for controls',
    'draft superseded not released checking building findings stop this job do build from sheet a later one stands',
  ].flatMap((text) => ['', ...text.split(' ')]),
);

function wordsIn(value: unknown): Set<string> {
  if (typeof value === 'string') return new Set(value.toLowerCase().split(apart));
  if (typeof value !== 'object' || value === null) return new Set();
  return new Set(Object.values(value).flatMap((inner) => [...wordsIn(inner)]));
}

describe('the picture among the drawings of a job', () => {
  test('has no number, and no number is left out for it', () => {
    const pages = drawJobPages(fixedPlan('estate-side-well'), shippedMetrics);
    const framed = pages.filter(({ page }) => page.documentType !== 'Picture');
    framed.forEach(({ drawing }, index) => {
      expect(drawing.texts.map(({ text }) => text)).toContain(`${index + 1} of ${framed.length}`);
    });
  });

  test('is as it was', () => {
    const shape = {
      amplifiers: [4, 1],
      processor: true,
      secondBattery: false,
      boardWidthM: 0.9,
      boardHeightM: 0.5,
    };
    const rest = {
      paper: 'letter',
      units: 'inch',
      released: true,
      unsolved: false,
      longNames: false,
    } as const;
    const files = [samplePlan({ ...shape, ...rest }), crowded().plan]
      .flatMap(picturesOf)
      .map((page, index) => [`picture-${index + 1}.svg`, svgOf(page)]);
    expectGolden(new URL('../golden/picture/', import.meta.url), Object.fromEntries(files));
  });
});

import { describe, expect, it } from 'vitest';
import { drawJob, drawJobPages, type JobPage } from '../../lib/draw/draw-job.ts';
import { sheetSize } from '../../lib/draw/sheet/sheet-format.ts';
import { drawingText } from '../../lib/draw/surface.ts';
import { type BuildPlan, buildPlanSchema } from '../../lib/model/plan/index.ts';
import { expectGolden } from '../golden.ts';
import { demoJobs, demoPlan } from '../plan/demo.ts';
import { shippedMetrics } from './lettering/shipped-metrics.ts';
import { overlapsOn } from './overlaps.ts';
import { samplePlan } from './sample/sample-plan.ts';
import { middling } from './sample/sample-shape.ts';
import { xmlFault } from './well-formed.ts';

const cases: readonly (readonly [string, () => BuildPlan])[] = [
  ...demoJobs.map((id) => [id, () => demoPlan(id)] as const),
  ['a made-up job', () => samplePlan(middling)],
];

function ofDocument(pages: readonly JobPage[], document: string): JobPage[] {
  return pages.filter(({ page }) => page.documentType === document);
}

function textsOf(pages: readonly JobPage[]): string[] {
  return pages.flatMap(({ drawing }) => drawing.texts.map(({ text }) => text));
}

function subjectsOf(pages: readonly JobPage[]): Set<string> {
  const svg = pages.map(({ drawing }) => drawingText(drawing, { colours: 'resolved' })).join('');
  return new Set([...svg.matchAll(/data-of="([^"]*)"/g)].map(([, subject = '']) => subject));
}

/**
 * The labels that the texts of a wiring drawing stand for: of a tag what is between terminal and facts; `L1 +-` for two,
 * `S1…4` for four, `S5, S6` for two.
 */
function labelsIn(texts: readonly string[]): string[] {
  return texts
    .map((text) => text.replace(/^.* \/ /, '').replace(/: .*$|( in [\w-]+)? \[[\d, ]+\]$/, ''))
    .flatMap((text) => text.split(', '))
    .flatMap((text) => {
      const [, letter = '', from = '', to = from, signs = ''] =
        /^([A-Z])(\d+)(?:…(\d+))?(?: ?([+-]{1,2}))?$/.exec(text) ?? [];
      if (letter === '') return [];
      const [low, high] = [Math.min(Number(from), Number(to)), Math.max(Number(from), Number(to))];
      const numbers = Array.from({ length: high - low + 1 }, (_, index) => low + index);
      return numbers.flatMap((n) => (signs === '' ? [''] : [...signs]).map((sign) => `${letter}${n}${sign}`));
    });
}

describe.each(cases)('drawings of %s', (_, plan) => {
  let drawn: readonly JobPage[] | null = null;
  const pages = (): readonly JobPage[] => {
    drawn ??= drawJobPages(plan(), shippedMetrics);
    return drawn;
  };
  const pagesOf = (document: string): JobPage[] => ofDocument(pages(), document);

  it('let no text meet a text, a line, a hatch or the rim of the sheet', () => {
    const found = pages().flatMap((page) => overlapsOn(page).map((what) => `${page.page.id}: ${what}`));
    expect(found.length, found.join('\n')).toBe(0);
  });

  it('leave nothing out', () => {
    expect(pages().flatMap(({ page, unplaced }) => unplaced.map((what) => `${page.id}: ${what}`))).toEqual(
      [],
    );
  });

  it('are well-formed, named for a screen reader, with ids of their own', () => {
    const drawings = drawJob(plan(), shippedMetrics);
    const ids = drawings.flatMap(({ svg }) => [...svg.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id));
    expect(new Set(ids).size).toBe(ids.length);
    expect(new Set(drawings.map(({ id }) => id)).size).toBe(drawings.length);
    for (const { id, svg, title } of drawings) {
      expect(xmlFault(svg), id).toBeNull();
      expect(svg).toContain(`>${title.replaceAll('&', '&amp;')}</title>`);
      expect(svg).toMatch(/<desc [^>]*>[^<]{20,}<\/desc>/);
      for (const [, used] of svg.matchAll(/url\(#([^)]*)\)/g)) expect(ids).toContain(used);
    }
  });

  it('are numbered one after the other', () => {
    const all = pages().filter(({ page }) => page.documentType !== 'Picture');
    all.forEach(({ drawing }, index) => {
      expect(drawing.texts.some(({ text }) => text === `${index + 1} of ${all.length}`)).toBe(true);
    });
  });

  it('show every conductor of the feed and every way of the signal', () => {
    const power = subjectsOf(pagesOf('Power diagram'));
    const signal = subjectsOf(pagesOf('Signal diagram'));
    const signalText = textsOf(pagesOf('Signal diagram')).join('\n');
    for (const { id, role, label } of plan().wires) {
      if (role === 'power' || role === 'ground') expect(power, id).toContain(id);
      else if (!signal.has(id)) expect(signalText, id).toContain(`${label}: `);
    }
  });

  it('carry the label of every signal wire at both of its ends', () => {
    const texts = textsOf(pagesOf('Signal diagram'));
    for (const { id, role, label } of plan().wires.filter(({ role: own }) => own === 'signal'))
      expect(texts.filter((text) => text === label).length, `${role} ${id}`).toBeGreaterThanOrEqual(2);
  });

  it('show every hole by its number, from both sides, and every item on its board', () => {
    for (const board of plan().boards) {
      const drill = pages().filter(({ page }) => page.id.startsWith('drill-'));
      expect(drill).toHaveLength(2 * plan().boards.length);
      for (const page of drill) {
        const texts = textsOf([page]);
        for (const { n } of board.holes)
          expect(
            texts.some((text) => new RegExp(`^[A-Z]${n}$`).test(text)),
            `hole ${n}`,
          ).toBe(true);
      }
      const shown = subjectsOf(pagesOf('Placement'));
      for (const { item } of board.placements) expect(shown).toContain(item);
      const wired = subjectsOf(pagesOf('Wiring'));
      for (const { wire } of board.routes) expect(wired).toContain(wire);
    }
  });

  it('name every item of a board, and label every wire of its routes at both ends', () => {
    const wiring = textsOf(pagesOf('Wiring'));
    const labels = labelsIn(wiring);
    for (const board of plan().boards) {
      for (const { along } of board.routes)
        for (const id of along) {
          const label = plan().wires.find((wire) => wire.id === id)?.label ?? '';
          expect(labels.filter((each) => each === label).length, `${id} ${label}`).toBeGreaterThanOrEqual(2);
        }
      for (const texts of [wiring, textsOf(pagesOf('Placement'))])
        for (const { item } of board.placements) {
          const title = plan().items.find(({ id }) => id === item)?.title ?? '';
          const words = texts.join(' ').split(' ');
          for (const word of title.split(' ')) expect(words, title).toContain(word);
        }
    }
  });

  it('draw a board as large as its scale says', () => {
    for (const board of plan().boards) {
      const cut = pages().find(({ page }) => page.id === `cut-${board.id}`);
      const svg = cut ? drawingText(cut.drawing, { colours: 'resolved' }) : '';
      const inGroup = svg.slice(svg.indexOf('__board"'));
      const outline = / d="([^"]*)"/.exec(inGroup)?.[1] ?? '';
      const ends = [...outline.matchAll(/(-?[\d.]+) (-?[\d.]+)(?=[MLAZ])/g)].map(([, x]) => Number(x));
      const wide = Math.max(...ends) - Math.min(...ends);
      expect(wide).toBeCloseTo((board.widthM * 1000) / (cut?.page.scale ?? Number.NaN), 2);
    }
  });
});

describe('drawJob', () => {
  it('draws a plan of the plan document', () => {
    expect(buildPlanSchema.safeParse(samplePlan(middling)).error).toBeUndefined();
  });

  it('gives the same bytes for the same plan', () => {
    const text = (): string =>
      drawJob(samplePlan(middling), shippedMetrics)
        .map(({ svg }) => svg)
        .join('');
    expect(text()).toBe(text());
  });

  it('keeps its look', () => {
    const drawings = drawJob(samplePlan(middling), shippedMetrics);
    const files = drawings.map(({ id, svg }) => [`${id}.svg`, svg]);
    expectGolden(new URL('golden/job/', import.meta.url), Object.fromEntries(files));
  });

  it('marks every sheet of a draft, and none of a release', () => {
    const marked = (released: boolean): boolean[] =>
      drawJobPages(samplePlan({ ...middling, released }), shippedMetrics).map(({ drawing }) =>
        drawing.texts.some(({ text }) => text === 'DRAFT'),
      );
    expect(new Set(marked(false))).toEqual(new Set([true]));
    expect(new Set(marked(true))).toEqual(new Set([false]));
  });

  it('says where a fuse has no rating and where the network has no solution', () => {
    const plan = samplePlan({ ...middling, unsolved: true });
    const unsolved = drawJobPages(plan, shippedMetrics);
    const texts = textsOf(ofDocument(unsolved, 'Power diagram'));
    expect(texts).toContain('NO RATING');
    expect(texts.some((text) => text.endsWith(', NOT SOLVED'))).toBe(true);
    expect(texts.join(' ')).toContain('NOT SOLVED: Rated power');
    expect(textsOf(ofDocument(unsolved, 'Signal diagram')).join(' ')).toContain('LOAD NOT SOLVED');
  });

  it.each(['letter', 'a4'] as const)('draws on %s, lying or standing', (paper) => {
    const name = paper === 'a4' ? 'A4' : 'Letter';
    const sizes = (['portrait', 'landscape'] as const).map((orientation) => sheetSize({ name, orientation }));
    const drawn = drawJob(samplePlan({ ...middling, paper }), shippedMetrics);
    // A picture stands among the text of a page.
    for (const { widthMm, heightMm } of drawn.filter(({ sheet }) => sheet !== 'cover'))
      expect(sizes).toContainEqual({ widthMm, heightMm });
  });

  it('writes texts as outlines where no font can be counted on', () => {
    const plan = samplePlan(middling);
    const outlined = drawJob(plan, shippedMetrics, { colours: 'resolved', outlines: shippedMetrics });
    for (const { svg } of outlined) {
      expect(svg).not.toMatch(/<text|font-family|var\(/);
      expect(xmlFault(svg)).toBeNull();
    }
    const live = drawJob(plan, shippedMetrics, { colours: 'resolved' });
    const count = (svg: string | undefined, pattern: RegExp): number => svg?.match(pattern)?.length ?? 0;
    outlined.forEach(({ svg }, index) => {
      const texts = count(live[index]?.svg, /<text /g);
      expect(count(svg, /<path /g)).toBe(count(live[index]?.svg, /<path /g) + texts);
    });
  });

  it('draws nothing of a plan that has nothing to draw', () => {
    const plan = samplePlan(middling);
    expect(drawJob({ ...plan, boards: [], wires: [], items: [] }, shippedMetrics)).toEqual([]);
  });
});

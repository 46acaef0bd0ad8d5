import { describe, expect, it } from 'vitest';
import { drawJobPages, type JobPage } from '../../../lib/draw/draw-job.ts';
import { drawingText } from '../../../lib/draw/surface.ts';
import { leastWidthMm } from '../../../lib/draw/wiring/conductor-body.ts';
import { wiringLayers } from '../../../lib/draw/wiring/wiring-layers.ts';
import { linkEndOf } from '../../../lib/model/content/resolved-job.ts';
import type { BuildPlan, PlanWire } from '../../../lib/model/plan/index.ts';
import { shownTerminal } from '../../../lib/model/plan/shown-names.ts';
import { fixedJobs, fixedPlan } from '../../boards/fixed-jobs.ts';
import { casesOf } from '../../long-run.ts';
import { demoJobs, demoPlan } from '../../plan/demo.ts';
import { shippedMetrics } from '../lettering/shipped-metrics.ts';
import { overlapsOn } from '../overlaps.ts';

const papers = [
  { paper: 'letter', largerPaper: 'tabloid' },
  { paper: 'a4', largerPaper: null },
  { paper: 'a4', largerPaper: 'a3' },
  { paper: 'letter', largerPaper: null },
] as const;

/** Parts of a board that a wire lies on, as pages of its layer. */
function pagesOfLayer(pages: readonly JobPage[], wire: PlanWire, board: string): JobPage[] {
  const layer = wiringLayers.find(({ roles }) => roles.includes(wire.role));
  return pages.filter(({ page }) => page.id.startsWith(`wiring-${layer?.id}-${board}`));
}

function textsOf(pages: readonly JobPage[]): string[] {
  return pages.flatMap(({ drawing }) => drawing.texts.map(({ text }) => text));
}

/** Label and sign as a text may tell them: by itself, as one of a pair, or as one of a run. */
function tells(text: string, { label }: PlanWire): boolean {
  const [, stem = label, sign = ''] = /^(.*?)([+-]?)$/.exec(label) ?? [];
  const [, letter = '', digits = ''] = /^([A-Z]+)(\d+)$/.exec(stem) ?? [];
  return text.split(', ').some((each) => {
    const bare = each.replace(/ in .*$| ?\[.*$/, '').trim();
    const [, runLetter, from, to, signs = ''] = /^([A-Z]+)(\d+)…(\d+) ?([+-]*)$/.exec(bare) ?? [];
    const isInRun =
      runLetter === letter &&
      Number(digits) >= Math.min(Number(from), Number(to)) &&
      Number(digits) <= Math.max(Number(from), Number(to)) &&
      signs.includes(sign);
    return (
      bare === label ||
      (sign !== '' && bare === `${stem} +-`) ||
      (sign !== '' && bare === `${stem} -+`) ||
      isInRun
    );
  });
}

/** Every reference at a cut, with the labels of what is cut, which stand on the line above it. */
function referencesOn({ texts }: JobPage['drawing']): { label: string; reference: string }[] {
  return texts.flatMap(({ text }, index) =>
    text.startsWith('to part ') ? [{ label: texts[index - 1]?.text ?? '', reference: text }] : [],
  );
}

/** The ends of a wire that stand on a board: item and terminal as sheets call them. */
function endsOn(plan: BuildPlan, wire: PlanWire, board: string): string[] {
  return [wire.from, wire.to].flatMap((id) => {
    const { device, terminal } = linkEndOf(id);
    const item = plan.items.find((one) => one.id === device);
    return item?.board === board ? [shownTerminal(item, terminal)] : [];
  });
}

const all = demoJobs.flatMap((job) => papers.map((paper) => ({ job, ...paper })));
const cases = casesOf(all, (_, index) => index % papers.length === Math.floor(index / papers.length));

describe.each(cases)('wiring sheets of $job on $paper and $largerPaper', ({ job, paper, largerPaper }) => {
  const plan: BuildPlan = { ...demoPlan(job), shop: { ...demoPlan(job).shop, paper, largerPaper } };
  let drawn: readonly JobPage[] | null = null;
  const wiring = (): readonly JobPage[] => {
    drawn ??= drawJobPages(plan, shippedMetrics).filter(({ page }) => page.documentType === 'Wiring');
    return drawn;
  };
  const routed = plan.boards.flatMap((board) =>
    board.routes.flatMap(({ along }) =>
      along.flatMap((id) => {
        const wire = plan.wires.find((each) => each.id === id);
        return wire ? [{ board, wire }] : [];
      }),
    ),
  );

  it('leave nothing out, and let no text meet a text, a conductor or the rim', () => {
    const found = wiring().flatMap((page) =>
      [...overlapsOn(page), ...page.unplaced].map((what) => `${page.page.id}: ${what}`),
    );
    expect(found).toEqual([]);
  });

  it('tag every conductor at each end with terminal, label, size, colour and step', () => {
    for (const { board, wire } of routed) {
      const texts = textsOf(pagesOfLayer(wiring(), wire, board.id));
      for (const terminal of endsOn(plan, wire, board.id)) {
        const stem = terminal.replace(/[+-]$/, '');
        const heads = texts.filter((text) => {
          const [terminals = '', rest = ''] = text.split(' / ');
          return (
            (terminals.includes(stem) ||
              (terminals.includes('…') && terminals.includes(stem.replace(/\d+$/, '')))) &&
            tells(rest.split(': ')[0] ?? '', wire)
          );
        });
        expect(heads.length, `${wire.id} at ${terminal}`).toBeGreaterThan(0);
      }
      const step = plan.steps.findIndex(({ installs }) => installs.includes(wire.id)) + 1;
      const facts = texts.filter(
        (text) =>
          text.includes(wire.size.label) &&
          (wire.colour === null || text.includes(wire.colour) || text.includes(' in ')),
      );
      expect(facts.length, `size and colour of ${wire.id}`).toBeGreaterThan(0);
      if (step > 0)
        expect(
          texts.some((text) => text.includes(`[${step}`) || text.includes(`, ${step}]`)),
          `step of ${wire.id}`,
        ).toBe(true);
    }
  });

  it('show the sign of every speaker conductor that has one', () => {
    for (const { wire } of routed.filter((each) => each.wire.role === 'speaker' && each.wire.sign))
      expect(wire.label, wire.id).toMatch(/[+-]$/);
  });

  it('name at every cut the part and the zone where the line goes on; there it is named as well', () => {
    for (const { page, drawing } of wiring()) {
      for (const { label, reference } of referencesOn(drawing)) {
        const [, other = '', zone = ''] = /^to part (\d+), ([A-H]\d+)$/.exec(reference) ?? [];
        expect(zone, reference).not.toBe('');
        const there = wiring().find(({ page: each }) => each.id === page.id.replace(/\d+$/, other));
        // Sheets overlap: a line that one of them cuts may be whole on the other, and is then named at its end alone.
        const names = there?.drawing.texts.map(({ text }) => text) ?? [];
        const [stem = label] = label.split(/[ ,]/);
        const isNamed = names.some((text) => text.split(/[ ,/:]+/).includes(stem));
        expect(isNamed, `${page.id}: ${label} ${reference}`).toBe(true);
      }
    }
  });

  it('draw no leader that could be a conductor: it is finer than any, and runs aslant', () => {
    for (const { page, drawing } of wiring()) {
      const svg = drawingText(drawing, { colours: 'resolved' });
      const bodies = [
        ...svg.slice(svg.indexOf('__routes"'), svg.indexOf('__labels"')).matchAll(/stroke-width="([\d.]+)"/g),
      ];
      if (!page.title.includes('looms')) expect(bodies.length).toBeGreaterThan(0);
      const leaders = svg
        .slice(svg.indexOf('__labels"'))
        .matchAll(/<path d="M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)"[^>]*stroke-width="([\d.]+)"\/>\s*<circle/g);
      for (const [, x1, y1, x2, y2, wide] of leaders) {
        const [across, down] = [Math.abs(Number(x2) - Number(x1)), Math.abs(Number(y2) - Number(y1))];
        expect(Number(wide)).toBeLessThan(leastWidthMm / 2);
        if (!page.title.includes('looms'))
          expect(Math.min(across, down), `${page.id}: leader at ${x1} ${y1}`).toBeGreaterThan(
            0.19 * Math.max(across, down),
          );
      }
    }
  });
});

/** What of a drawing is between two of its groups. */
function groupOf({ drawing }: JobPage, from: string, to: string): string {
  const svg = drawingText(drawing, { colours: 'resolved' });
  const start = svg.indexOf(`__${from}"`);
  return start < 0 ? '' : svg.slice(start, svg.indexOf(`__${to}"`, start));
}

function wiringOn(
  plan: BuildPlan,
  paper: BuildPlan['shop']['paper'],
  largerPaper: BuildPlan['shop']['largerPaper'],
): JobPage[] {
  return drawJobPages({ ...plan, shop: { ...plan.shop, paper, largerPaper } }, shippedMetrics).filter(
    ({ page }) => page.documentType === 'Wiring',
  );
}

const fixed = fixedJobs.flatMap((job) => papers.map((paper) => ({ job, ...paper })));
const fixedCases = casesOf(fixed, (_, index) => index % papers.length === Math.floor(index / papers.length));

describe.each(fixedCases)('a layer of $job on $paper and $largerPaper', ({ job, paper, largerPaper }) => {
  const plan = fixedPlan(job);

  it('stands on one sheet, at 1:10 or larger', () => {
    const pages = wiringOn(plan, paper, largerPaper);
    const layers = wiringLayers.filter((layer) =>
      plan.boards.some(({ routes }) =>
        routes.some(({ along }) =>
          plan.wires.some((wire) => along.includes(wire.id) && layer.roles.includes(wire.role)),
        ),
      ),
    );
    expect(pages.length).toBe(1 + layers.length);
    for (const { page } of pages) expect(page.scale, page.id).toBeLessThanOrEqual(10);
  });
});

describe('larger paper', () => {
  const plan = fixedPlan('van-three-amps');

  it('is taken where a layer then stands on it at a scale that reads well; what does so on the usual paper stays there', () => {
    const [usual, larger] = [wiringOn(plan, 'letter', null), wiringOn(plan, 'letter', 'tabloid')];
    expect(larger.length).toBe(usual.length);
    for (const { drawing } of usual)
      expect(Math.max(drawing.widthMm, drawing.heightMm)).toBeCloseTo(279.4, 6);
    for (const { page, drawing } of larger)
      expect(Math.max(drawing.widthMm, drawing.heightMm)).toBeCloseTo(page.large ? 431.8 : 279.4, 6);
    larger.forEach(({ page }, nth) => {
      if (!page.large) return;
      expect(page.scale, page.id).toBe(5);
      expect(usual[nth]?.page.scale, page.id).toBe(10);
    });
    expect(larger.filter(({ page }) => page.large).length).toBeGreaterThan(0);
  });
});

/** A plan with its boards and all upon them so many times as large: no paper of a shop takes them whole. */
function stretched(plan: BuildPlan, times: number): BuildPlan {
  const along = new Set(['xM', 'yM', 'widthM', 'heightM', 'depthM', 'atM']);
  return JSON.parse(JSON.stringify(plan), (key, value: unknown) =>
    typeof value === 'number' && along.has(key) ? value * times : value,
  );
}

describe('a board that must be cut', () => {
  const pages = (): JobPage[] => {
    const plan = fixedPlan('van-three-amps');
    const large = stretched(plan, 2.4);
    return wiringOn({ ...plan, boards: large.boards, items: large.items }, 'letter', 'tabloid');
  };

  it('has no sheet without a wire of its layer, and no other scale than it needs', () => {
    const cut = pages().filter(({ page }) => / part \d+ of \d+$/.test(page.title));
    expect(cut.length).toBeGreaterThan(2);
    for (const page of cut.filter(({ page: { title } }) => !title.includes('looms')))
      expect(groupOf(page, 'routes', 'insulations'), page.page.id).toMatch(/<path/);
    for (const { page } of cut) expect(page.scale, page.id).toBe(10);
  });
});

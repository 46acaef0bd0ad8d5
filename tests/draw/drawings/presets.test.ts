import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { itemOnBoard } from '../../../lib/draw/board/item-on-board.ts';
import { presets } from '../../../lib/draw/drawings/presets.ts';
import { type NumberedPage, numberPage } from '../../../lib/draw/page.ts';
import { at } from '../../../lib/draw/paper.ts';
import { travelOf } from '../../../lib/draw/presets/control-shape.ts';
import { panelStrips } from '../../../lib/draw/presets/panel-strips.ts';
import type { PlanView } from '../../../lib/draw/sheet/scale.ts';
import { drawingText } from '../../../lib/draw/surface.ts';
import type { BuildPlan, PlanControl, PlanItem } from '../../../lib/model/plan/index.ts';
import { fixedJobs, fixedPlan } from '../../boards/fixed-jobs.ts';
import { expectGolden } from '../../golden.ts';
import { shippedMetrics } from '../lettering/shipped-metrics.ts';
import { overlapsOn } from '../overlaps.ts';
import { xmlFault } from '../well-formed.ts';

function drawn(plan: BuildPlan): NumberedPage[] {
  return presets.pages(plan, shippedMetrics).map((page) => numberPage(page, { drawing: 1, drawings: 1 }));
}

function svgOf({ drawing }: NumberedPage): string {
  return drawingText(drawing, { colours: 'properties' });
}

function textsOf(pages: readonly NumberedPage[]): string[] {
  return pages.flatMap(({ drawing }) => drawing.texts.map(({ text }) => text));
}

interface MadeControl extends Partial<PlanControl> {
  readonly control: string;
  readonly form?: string;
  readonly positions?: readonly string[];
}

/** The plan of a fixed job whose first device with controls has these ones, and no other device has any. */
function planWith(made: readonly MadeControl[]): BuildPlan {
  const plan = fixedPlan('under-seat-five');
  const device = plan.items.find(({ controls }) => controls.length > 0);
  if (!device) throw new Error('the job has no device with controls');
  const controls = made.map(({ form: _, positions: __, ...own }, index): PlanControl => {
    const preset = own.preset ?? 'fully counter-clockwise';
    const base = { item: device.id, preset, why: 'nothing is heard yet', safeState: preset, safe: true };
    const final = { state: preset, why: 'stays', chosen: 'computed', during: 'presets' } as const;
    return { ...base, final, panel: 'left', atM: index / 100, order: index + 1, chosen: 'computed', ...own };
  });
  const item: PlanItem = {
    ...device,
    controls: made.map(({ control, form = 'knob', positions = [], panel = 'left' }, index) => {
      return { name: control, what: 'gain', form, panel, atM: index / 100, positions: [...positions] };
    }),
  };
  return { ...plan, controls, items: plan.items.map((one) => (one.id === device.id ? item : one)) };
}

describe.each(fixedJobs)('presets of %s', (job) => {
  it('lets no text meet another or a line, and finds room for all', () => {
    const pages = drawn(fixedPlan(job));
    expect(pages.length).toBeGreaterThan(0);
    for (const page of pages) {
      expect(overlapsOn(page)).toEqual([]);
      expect(page.unplaced).toEqual([]);
      expect(xmlFault(svgOf(page))).toBeNull();
    }
  });

  it('shows each control of the job once, with its preset', () => {
    const plan = fixedPlan(job);
    const pages = drawn(plan);
    const subjects = pages.flatMap((page) =>
      [...svgOf(page).matchAll(/data-of="([^"]*)"/g)].map(([, subject]) => subject),
    );
    const written = textsOf(pages).join(' ').replaceAll('- ', '-');
    for (const { item, control, order, preset } of plan.controls) {
      expect(subjects.filter((subject) => subject === `${item}.${control}`)).toHaveLength(1);
      expect(written).toContain(`${order}: ${control}`);
      expect(written).toContain(preset);
    }
  });

  // The board's own drawings place the same controls: facing a panel with the board as the ground, the left hand is
  // at the top where it looks left, at the right where it looks up, at the bottom right, at the left down.
  it('has the controls of a panel in the order in which one who faces it sees them', () => {
    const plan = fixedPlan(job);
    const view: PlanView = { ratio: 1, datum: at(0, 0), mirrored: false };
    let compared = 0;
    for (const { item, controls } of panelStrips(plan)) {
      const placement = plan.boards
        .flatMap(({ placements }) => placements)
        .find((one) => one.item === item.id);
      if (!placement) continue;
      const onBoard = itemOnBoard(item, placement, view);
      const marks = controls.flatMap(({ set }) => onBoard.mark(set.panel, set.atM) ?? []);
      const towards = { left: 1, top: -1, right: -1, bottom: 1 };
      for (const [index, mark] of marks.slice(1).entries()) {
        const before = marks[index];
        if (!before) continue;
        expect(Math.sign(mark.alongMm - before.alongMm)).toBe(towards[mark.side]);
        compared += 1;
      }
    }
    expect(compared).toBeGreaterThan(3);
  });

  it('is the same bytes each time', () => {
    expect(drawn(fixedPlan(job)).map(svgOf)).toEqual(drawn(fixedPlan(job)).map(svgOf));
  });
});

it('keeps its look', () => {
  const pages = drawn(fixedPlan('estate-side-well'));
  const files = pages.map((page) => [`${page.page.id}.svg`, svgOf(page)]);
  expectGolden(new URL('../golden/presets/', import.meta.url), Object.fromEntries(files));
});

describe('presets', () => {
  it('has no page for a job without controls', () => {
    expect(drawn({ ...fixedPlan('under-seat-five'), controls: [] })).toEqual([]);
  });

  it('says in words that a preset is not the safe state, and what that is', () => {
    const made = { control: 'MUTE', form: 'switch', positions: ['MUTED', 'OPEN'], preset: 'OPEN' };
    const texts = textsOf(drawn(planWith([{ ...made, safe: false, safeState: 'MUTED' }])));
    expect(texts).toContain('NOT SAFE');
    expect(texts.join(' ')).toContain('safe is MUTED');
  });

  it('points no knob that is set by its own scale, and says so', () => {
    expect(textsOf(drawn(planWith([{ control: 'FREQ', preset: '80 Hz' }])))).toContain('by its scale');
    expect(textsOf(drawn(planWith([{ control: 'GAIN' }])))).not.toContain('by its scale');
  });

  it('cuts a long panel into parts and goes on over sheets', () => {
    const made = Array.from({ length: 40 }, (_, index) => ({ control: `CONTROL-${index + 1}` }));
    const pages = drawn(planWith(made));
    expect(pages.length).toBeGreaterThan(1);
    expect(textsOf(pages).filter((text) => text.includes('CONTROL-'))).toHaveLength(40);
    expect(pages.flatMap(overlapsOn)).toEqual([]);
  });

  it('lets no text meet another or a line, whatever the controls are called', () => {
    const word = fc.stringMatching(/^[A-Za-z0-9]{1,14}$/);
    const made = fc.record({
      form: fc.constantFrom('knob', 'switch', 'slide', 'menu'),
      positions: fc.array(word, { maxLength: 5 }),
      preset: fc.array(word, { minLength: 1, maxLength: 3 }).map((words) => words.join(' ')),
      panel: fc.constantFrom('left', 'right', 'top', 'bottom', 'face'),
      safe: fc.boolean(),
      word,
    });
    fc.assert(
      fc.property(fc.array(made, { minLength: 1, maxLength: 9 }), (list) => {
        const named = list.map((one, index) => ({ ...one, control: `${one.word}-${index}` }));
        for (const page of drawn(planWith(named)))
          expect([...overlapsOn(page), ...page.unplaced]).toEqual([]);
      }),
      { numRuns: 25, seed: 11 },
    );
  });
});

describe('travelOf', () => {
  // On a clock face an hour is 30 degrees; a knob that ends at 7 and 5 o'clock turns 150 degrees each way.
  it.each([
    ['fully counter-clockwise', -1],
    ['fully clockwise', 1],
    ['lowest', -1],
    ['Maximum', 1],
    ["12 o'clock", 0],
    ["7 o'clock", -1],
    ["5 o'clock", 1],
    ["9 o'clock", -0.6],
    ["6 o'clock", null],
    ['80 Hz', null],
    ['not clockwise', null],
  ])('reads %s', (preset, travel) => {
    if (travel === null) expect(travelOf(preset)).toBeNull();
    else expect(travelOf(preset)).toBeCloseTo(travel, 9);
  });

  it('turns a knob to the stop at which its OFF lies', () => {
    expect(travelOf('OFF', 'highest')).toBe(1);
    expect(travelOf('OFF', 'lowest')).toBe(-1);
    expect(travelOf('OFF')).toBe(-1);
    expect(travelOf('fully counter-clockwise', 'highest')).toBe(-1);
  });
});

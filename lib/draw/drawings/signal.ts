import type { BuildPlan } from '../../model/plan/index.ts';
import { paintFeed } from '../feed/feed-paint.ts';
import { type Page, roomOf } from '../page.ts';
import { heightMm, type PaperBox, widthMm } from '../paper.ts';
import { layOutSignal, type SignalLayout } from '../signal/signal-layout.ts';
import { type SignalModel, type SignalUnit, signalModel } from '../signal/signal-model.ts';
import { paintSignal, type SignalView, signalWidths } from '../signal/signal-paint.ts';
import { turnOnViews } from '../signal/turn-on-chain.ts';
import type { Drawing } from '../surface.ts';
import type { TextMetrics } from '../text-metrics.ts';
import type { DrawingKind } from './kind.ts';

/** Signal and speaker diagram: sources at the left, speakers at the right, after IEC 60617 (mem). */
export const signal: DrawingKind = {
  sheet: 'signal-diagram',
  pages: (plan, metrics) => {
    const model = signalModel(plan);
    return model.edges.length === 0 ? [] : signalPages(plan, model, metrics);
  },
};

type Base = Omit<Page, 'paint' | 'id' | 'title'>;

function signalPages(plan: BuildPlan, model: SignalModel, metrics: TextMetrics): Page[] {
  const base: Base = {
    subject: plan.vehicle.title,
    documentType: 'Signal diagram',
    description: describe(plan),
    scale: null,
    orientation: 'landscape',
    projection: null,
    notes: ['Colours of conductors: letters of IEC 60757', 'LR Linkwitz-Riley, BW Butterworth, BE Bessel'],
  };
  const room = roomOf(plan, metrics, { ...base, id: 'signal', title: 'Signal' });
  const views = spans(model).find((each) =>
    each.every(
      ([from, to]) =>
        signalWidths(viewOf(plan, model, metrics, from, to, leaders(model)), metrics).totalMm <=
        widthMm(room),
    ),
  );
  const chosen = views ?? spans(model).at(-1) ?? [];
  const parts = chosen.flatMap(([from, to]) =>
    groupsThatFit(plan, model, metrics, from, to, room).map((view) => ({
      view,
      title: titleOf(model, from, to),
    })),
  );
  const size = { widthMm: widthMm(room), heightMm: heightMm(room) };
  const chains = turnOnViews(plan, metrics, size);
  const drawn = parts.map(({ view, title }, index): Panel => {
    const same = parts.filter((part) => part.title === title);
    const nth = same.findIndex((part) => part.view === view) + 1;
    return {
      id: parts.length > 1 ? `signal-${index + 1}` : 'signal',
      title: same.length > 1 ? `${title}, part ${nth} of ${same.length}` : title,
      heightMm: view.layout.heightMm,
      paint: (drawing, box) => paintSignal(drawing, view, box),
    };
  });
  const turnOn = chains.map(({ view, heightMm: high }, index): Panel => {
    return {
      id: chains.length > 1 ? `turn-on-${index + 1}` : 'turn-on',
      title: chains.length > 1 ? `Turn-on, part ${index + 1} of ${chains.length}` : 'Turn-on',
      heightMm: high,
      paint: (drawing, box) => paintFeed(drawing, view, box),
    };
  });
  return joined([...drawn, ...turnOn], size.heightMm).map((panels) => panelPage(base, panels));
}

/** A drawing that shares a sheet with others, one below the other. */
interface Panel {
  readonly id: string;
  readonly title: string;
  readonly heightMm: number;
  readonly paint: (drawing: Drawing, box: PaperBox) => void;
}

const panelGapMm = 8;

/** Puts each panel on the first sheet that still has room for it. */
function joined(panels: readonly Panel[], heightMm: number): Panel[][] {
  const sheets: Panel[][] = [];
  for (const panel of panels) {
    const free = (sheet: readonly Panel[]): number =>
      heightMm - sheet.reduce((sum, each) => sum + each.heightMm + panelGapMm, 0);
    const open = sheets.find((sheet) => free(sheet) >= panel.heightMm);
    if (open) open.push(panel);
    else sheets.push([panel]);
  }
  return sheets;
}

function panelPage(base: Base, panels: readonly Panel[]): Page {
  const [first] = panels;
  const totalMm = panels.reduce((sum, { heightMm: high }) => sum + high, 0);
  return {
    ...base,
    id: first?.id ?? 'signal',
    title: panels.map(({ title }, index) => (index === 0 ? title : lowerFirst(title))).join('; '),
    paint: (drawing, inside) => {
      const spareMm = Math.max(0, heightMm(inside) - totalMm) / (panels.length + 1);
      let topMm = inside.topMm + spareMm;
      for (const panel of panels) {
        panel.paint(drawing, { ...inside, topMm, bottomMm: topMm + panel.heightMm });
        topMm += panel.heightMm + spareMm;
      }
      return [];
    },
  };
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** Ways of showing the columns: all on one sheet, or cut at the amplifiers, which then stand on both. */
function spans({ amplifiers, columns }: SignalModel): (readonly (readonly [number, number])[])[] {
  return [
    [[0, columns - 1]],
    [
      [0, amplifiers],
      [amplifiers, columns - 1],
    ],
  ];
}

function titleOf({ amplifiers, columns }: SignalModel, from: number, to: number): string {
  if (to === columns - 1 && from === 0) return 'Signal and speakers';
  return to === amplifiers ? 'Signal, sources to amplifiers' : 'Speakers';
}

/** The units that lead the layout: amplifiers, or what stands in for them where a job has none. */
function leaders({ units, amplifiers }: SignalModel): SignalUnit[] {
  return units.filter(({ column }) => column === amplifiers);
}

function viewOf(
  plan: BuildPlan,
  model: SignalModel,
  metrics: TextMetrics,
  from: number,
  to: number,
  leading: readonly SignalUnit[],
): SignalView {
  const layout: SignalLayout = layOutSignal({ plan, model, metrics, from, to, leading });
  return { plan, model, layout, from, to };
}

/** As many amplifiers on each sheet as its height takes, in their order. */
function groupsThatFit(
  plan: BuildPlan,
  model: SignalModel,
  metrics: TextMetrics,
  from: number,
  to: number,
  room: PaperBox,
): SignalView[] {
  const views: SignalView[] = [];
  let open: SignalUnit[] = [];
  for (const unit of leaders(model)) {
    const more = viewOf(plan, model, metrics, from, to, [...open, unit]);
    if (open.length === 0 || more.layout.heightMm <= heightMm(room)) open = [...open, unit];
    else {
      views.push(viewOf(plan, model, metrics, from, to, open));
      open = [unit];
    }
  }
  return open.length === 0 ? views : [...views, viewOf(plan, model, metrics, from, to, open)];
}

function describe({ audio: { channels, speakers } }: BuildPlan): string {
  const driven = channels.filter(({ speakers: own }) => own.length > 0);
  return `The way of the signal from the sources over ${driven.length} amplifier channels to ${speakers.length} speakers.`;
}

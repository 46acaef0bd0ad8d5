import type { BuildPlan } from '../../model/plan/index.ts';
import { inSentence } from '../../model/printed/in-sentence.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { drawPage, type Page, roomOf } from '../page.ts';
import { heightMm, type PaperBox, widthMm } from '../paper.ts';
import { paintFeed } from '../power/feed-paint.ts';
import { type SignalModel, signalModel } from '../signal/signal-model.ts';
import { paintSignal, signalWidths } from '../signal/signal-paint.ts';
import { type SignalSpan, signalSheets, wholeView } from '../signal/signal-sheets.ts';
import { turnOnViews } from '../signal/turn-on-chain.ts';
import type { Drawing } from '../surface.ts';
import type { DrawingKind } from './kind.ts';

/** Signal and speaker diagram: sources at the left, speakers at the right, after IEC 60617 (mem). */
export const signal: DrawingKind = {
  sheet: 'signal-diagram',
  pages: (plan, metrics) => {
    const model = signalModel(plan);
    if (model.edges.length === 0) return [];
    return signalPages(plan, model, metrics).map((page) => drawPage(plan, metrics, page));
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
  const ways = spans(model).map((each) =>
    each.map(([from, to]): SignalSpan => ({ plan, model, metrics, from, to })),
  );
  const isWide = (span: SignalSpan): boolean =>
    signalWidths(wholeView(span), metrics).totalMm > widthMm(room);
  const chosen = ways.find((each) => !each.some(isWide)) ?? ways.at(-1) ?? [];
  const parts = chosen.flatMap((span) =>
    signalSheets(span, heightMm(room)).map((view) => {
      return { view, title: titleOf(model, span.from, span.to), wide: isWide(span) };
    }),
  );
  const size = { widthMm: widthMm(room), heightMm: heightMm(room) };
  const chains = turnOnViews(plan, metrics, size);
  const drawn = parts.map(({ view, title, wide }, index): Panel => {
    const same = parts.filter((part) => part.title === title);
    const nth = same.findIndex((part) => part.view === view) + 1;
    return {
      id: parts.length > 1 ? `signal-${index + 1}` : 'signal',
      title: same.length > 1 ? `${title}, part ${nth} of ${same.length}` : title,
      heightMm: view.layout.heightMm,
      left: wide || view.layout.heightMm > size.heightMm ? [`${title}: larger than its sheet`] : [],
      paint: (drawing, box) => paintSignal(drawing, view, box),
    };
  });
  const turnOn = chains.map(({ view, heightMm: high, widthMm: wide }, index): Panel => {
    return {
      id: chains.length > 1 ? `turn-on-${index + 1}` : 'turn-on',
      title: chains.length > 1 ? `Turn-on, part ${index + 1} of ${chains.length}` : 'Turn-on',
      heightMm: high,
      left: high > size.heightMm || wide > size.widthMm ? ['Turn-on: larger than its sheet'] : [],
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
  /** What of it does not fit. */
  readonly left: readonly string[];
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
    title: panels.map(({ title }, index) => (index === 0 ? title : inSentence(title))).join('; '),
    paint: (drawing, inside) => {
      const spareMm = Math.max(0, heightMm(inside) - totalMm) / (panels.length + 1);
      let topMm = inside.topMm + spareMm;
      for (const panel of panels) {
        panel.paint(drawing, { ...inside, topMm, bottomMm: topMm + panel.heightMm });
        topMm += panel.heightMm + spareMm;
      }
      return panels.flatMap(({ left }) => left);
    },
  };
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

function describe({ audio: { channels, speakers } }: Pick<BuildPlan, 'audio'>): string {
  const driven = channels.filter(({ speakers: own }) => own.length > 0);
  return `The way of the signal from the sources over ${driven.length} amplifier channels to ${speakers.length} speakers.`;
}

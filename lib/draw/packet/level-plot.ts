import type { BuildPlan, PlanChannel } from '../../model/plan/index.ts';
import { baselineFor, drawLines, drawText, linePitchMm, wrapText } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { lines, types } from '../line-styles.ts';
import { at, type PaperBox } from '../paper.ts';
import { drawLine } from '../pen.ts';
import { shortName } from '../power/feed-words.ts';
import { drawAxes, drawGrid } from '../response/response-axes.ts';
import { curveIn, pathLooks } from '../response/response-paint.ts';
import { type Drawing, openGroup } from '../surface.ts';
import { openPacketDrawing, type PacketDrawing, packetWidthMm } from './packet-drawing.ts';

const rimMm = 5;
const headMm = 7;
const fieldHighMm = 48;
const axisMm = 8;
const wordsMm = 6;
const sampleMm = 14;
/** Those that have room beside each other in this width. */
const writtenHz = [20, 50, 100, 200, 500, 1000, 2000, 5000, 20_000] as const;

/** What speakers play alike: one curve of the plot. */
interface Way {
  readonly speakers: string;
  readonly levelsDb: readonly number[];
}

/** Which tones each speaker is given: level over frequency of its filters, alike ones once. Null where none is filtered. */
export function levelPlot(plan: BuildPlan, metrics: TextMetrics): PacketDrawing | null {
  const ways = waysOf(plan);
  if (ways.every(({ levelsDb }) => levelsDb.length === 0)) return null;
  const keys = ways.map(({ speakers }) =>
    wrapText(metrics, speakers, packetWidthMm - 2 * rimMm - sampleMm - 3, types.terminal),
  );
  const keyMm = keys.map((texts) => texts.length * linePitchMm(types.terminal) + 1.6);
  const [id, title] = ['levels', 'Which tones each speaker plays'];
  const description = `Level over the height of the tone, 20 Hz to 20 kHz, for: ${ways.map(({ speakers }) => speakers).join('; ')}.`;
  const field: PaperBox = {
    leftMm: rimMm + 11,
    rightMm: packetWidthMm - rimMm - 4,
    topMm: headMm,
    bottomMm: headMm + fieldHighMm,
  };
  const belowMm = field.bottomMm + axisMm + wordsMm;
  const heightMm = Math.ceil(belowMm + keyMm.reduce((sum, high) => sum + high, 0) + rimMm);
  const drawing = openPacketDrawing(plan, metrics, { id, title, description, heightMm });
  drawField(drawing, field);
  ways.forEach(({ levelsDb }, index) => {
    const look = pathLooks[index % pathLooks.length] ?? lines.part;
    const levels = levelsDb.length > 0 ? levelsDb : plan.audio.curves.frequenciesHz.map(() => 0);
    for (const run of curveIn(field, plan.audio.curves.frequenciesHz, levels))
      drawLine(drawing.svg, run, look);
    const topMm = belowMm + keyMm.slice(0, index).reduce((sum, high) => sum + high, 0);
    const middleMm = topMm + linePitchMm(types.terminal) / 2;
    drawLine(drawing.svg, [at(rimMm, middleMm), at(rimMm + sampleMm, middleMm)], look);
    const first = at(rimMm + sampleMm + 3, baselineFor(middleMm, types.terminal));
    drawLines(drawing, drawing.svg, keys[index] ?? [], first, { type: types.terminal });
  });
  return { id, title, drawing, unplaced: [] };
}

function drawField(drawing: Drawing, field: PaperBox): void {
  drawGrid(openGroup(drawing), field);
  drawAxes(drawing, openGroup(drawing), field, writtenHz);
  const type = types.note;
  const baseMm = field.bottomMm + axisMm + type.capMm + 0.6;
  drawText(drawing, drawing.svg, 'low tones', at(field.leftMm, baseMm), { type });
  drawText(drawing, drawing.svg, 'high tones', at(field.rightMm, baseMm), { type, align: 'end' });
}

/** Channels that play the same, in the order of the plan, by the names of their speakers. */
function waysOf({ audio, items }: Pick<BuildPlan, 'audio' | 'items'>): Way[] {
  const alike = new Map<string, PlanChannel[]>();
  for (const channel of audio.channels) {
    if (channel.speakers.length === 0) continue;
    const look = JSON.stringify(channel.levelsDb);
    alike.set(look, [...(alike.get(look) ?? []), channel]);
  }
  return [...alike.values()].map((channels) => {
    const ids = new Set(channels.flatMap(({ speakers }) => speakers));
    const names = items.filter(({ id }) => ids.has(id)).map(shortName);
    return { speakers: names.join(', '), levelsDb: channels[0]?.levelsDb ?? [] };
  });
}

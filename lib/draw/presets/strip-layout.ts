import { type FittedText, fitText, linePitchMm, wrapText } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { types } from '../line-styles.ts';
import { shortName } from '../power/feed-words.ts';
import { needsScale, shapeSize } from './control-shape.ts';
import type { PanelControl, PanelStrip } from './panel-strips.ts';

const leastPitchMm = 30;
const mostPitchMm = 40;
/** The least width in which what is said of a panel reads well. */
const leastWidthMm = 70;
const cellPadMm = 1.5;
const presetLines = 3;

/** Heights inside a strip. */
export const strip = { nameMm: 6, captionMm: 4.5, padMm: 1.5, gapMm: 1.8 } as const;

/** A panel with the room that it takes, ready to be drawn. */
export interface LaidStrip {
  readonly strip: PanelStrip;
  readonly pitchMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Height of the panel itself. */
  readonly panelMm: number;
  readonly heading: readonly string[];
  readonly lies: readonly string[];
  readonly presets: readonly FittedText[];
  /** Height of the rows of presets, below the panel. */
  readonly presetMm: number;
  readonly reasons: readonly string[];
}

/** Lays a panel out for a width: evenly spaced, in rows where one is too short. */
export function layStrip(metrics: TextMetrics, panel: PanelStrip, roomMm: number): LaidStrip[] {
  const least = Math.max(leastPitchMm, ...panel.controls.map((control) => needMm(metrics, control)));
  const perRow = Math.max(1, Math.floor(roomMm / least));
  const rows = Math.ceil(panel.controls.length / perRow);
  const share = Math.ceil(panel.controls.length / rows);
  const pitchMm = Math.max(least, Math.min(mostPitchMm, roomMm / share));
  return Array.from({ length: rows }, (_, row) => {
    const controls = panel.controls.slice(row * share, (row + 1) * share);
    const of = rows > 1 ? `, part ${row + 1} of ${rows}` : '';
    return laid(metrics, { ...panel, panel: panel.panel + of, controls }, pitchMm, roomMm);
  });
}

/** Width below which a control's texts would run into those beside it. */
function needMm(metrics: TextMetrics, control: PanelControl): number {
  const words = breakable(control.set.preset)
    .split(/\s+/)
    .map((word) => metrics.widthMm(word, types.terminal));
  const name = metrics.widthMm(nameOf(control), types.terminal);
  return Math.max(name, shapeSize(metrics, control).widthMm, ...words) + 2 * cellPadMm;
}

/** The number in which the panels present it, and the name that stands beside it on the part. */
export function nameOf({ set }: PanelControl): string {
  return `${set.order}: ${set.control}`;
}

function laid(metrics: TextMetrics, panel: PanelStrip, pitchMm: number, roomMm: number): LaidStrip {
  const { item, controls } = panel;
  const widthMm = Math.min(roomMm, Math.max(leastWidthMm, controls.length * pitchMm));
  const title = `${shortName(item)} (${item.id}), ${panel.panel}`;
  const heading = wrapText(metrics, title, widthMm, types.item);
  const lies = wrapText(metrics, capital(panel.lies), widthMm, types.note);
  const reasons = wrapText(metrics, reasonsOf(controls).join('; '), widthMm, types.note);
  const presets = controls.map(({ set }) => presetText(metrics, set.preset, pitchMm - 2 * cellPadMm));
  const rows = controls.map(({ set }, index) => {
    const fitted = presets[index];
    const high = fitted ? fitted.lines.length * linePitchMm(fitted.type) : 0;
    return high + (set.safe ? 0 : linePitchMm(types.terminal));
  });
  const presetMm = Math.max(0, ...rows);
  const shapes = Math.max(...controls.map((control) => shapeSize(metrics, control).heightMm));
  const panelMm = strip.nameMm + shapes + (controls.some(needsScale) ? strip.captionMm : 0) + 2 * strip.padMm;
  const heightMm =
    heading.length * linePitchMm(types.item) +
    (lies.length + reasons.length) * linePitchMm(types.note) +
    panelMm +
    presetMm +
    3 * strip.gapMm;
  return {
    strip: panel,
    pitchMm,
    widthMm: Math.max(widthMm, controls.length * pitchMm),
    heightMm,
    panelMm,
    heading,
    lies,
    presets,
    presetMm,
    reasons,
  };
}

function presetText(metrics: TextMetrics, preset: string, widthMm: number): FittedText {
  const heightMm = presetLines * linePitchMm(types.item);
  const fitted = fitText(metrics, breakable(preset), { widthMm, heightMm }, [types.item, types.terminal]);
  return { ...fitted, lines: fitted.lines.map((each) => each.replace(/(\p{L}-) (?=\p{L})/gu, '$1')) };
}

/** A text that may also be broken after a hyphen inside a word. */
function breakable(text: string): string {
  return text.replace(/(\p{L}-)(?=\p{L})/gu, '$1 ');
}

/** Why each control is set as it is: a reason that several share is told once, with their numbers. */
function reasonsOf(controls: readonly PanelControl[]): string[] {
  const numbers = new Map<string, number[]>();
  for (const { set } of controls.toSorted((a, b) => a.set.order - b.set.order)) {
    const why = set.safe ? set.why : `safe is ${set.safeState}: ${set.why}`;
    numbers.set(why, [...(numbers.get(why) ?? []), set.order]);
  }
  return [...numbers].map(([why, orders]) => `${orders.join(', ')}: ${why}`);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

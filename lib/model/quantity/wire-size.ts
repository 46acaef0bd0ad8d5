import { awgAreaMm2, awgSizes } from '../tables/awg-sizes.ts';

/** A conductor size as it is sold: by AWG, or by area in mm2. */
export interface WireSize {
  /** As written and printed: `4 AWG`, `1/0 AWG`, `16 mm2`. */
  readonly label: string;
  readonly awg: string | null;
  readonly areaMm2: number;
}

/** The size of an AWG number such as `4` or `1/0`. Throws on an unknown one: that is a bug of the caller. */
export function awgSize(awg: string): WireSize {
  return { label: `${awg} AWG`, awg, areaMm2: awgAreaMm2(awg) };
}

/** Conductors are made from a hair of 30 AWG to a bar of 500 mm2; past these an area is mistyped (mm2). */
const leastMm2 = 0.05;
const mostMm2 = 500;

/** Reads `4 AWG`, `1/0 AWG` or `16 mm2`; null where it is neither. */
export function parseWireSize(text: string): WireSize | null {
  const trimmed = text.trim();
  const awg = /^(\d{1,2}|[1-4]\/0) ?AWG$/.exec(trimmed)?.[1];
  if (awg !== undefined) return awgSizes.includes(awg) ? awgSize(awg) : null;
  const area = /^(\d+(?:\.\d+)?) ?(?:mm2|mm²)$/.exec(trimmed)?.[1];
  if (area === undefined || Number(area) < leastMm2 || Number(area) > mostMm2) return null;
  return { label: `${Number(area)} mm2`, awg: null, areaMm2: Number(area) };
}

/** Names of the sizes above 1 AWG as they are also told, by how they are written here. */
const zeros: Readonly<Record<string, string>> = { '0': '1/0', '00': '2/0', '000': '3/0', '0000': '4/0' };

/** What is meant by a size that is written otherwise: `4 ga`, `AWG 4`, `#4`, `1/0`, `00 AWG`, `2,5 mm2`, `16 sq mm`; null where that is not certain. */
export function meantWireSize(text: string): string | null {
  const spaced = text
    .trim()
    .replace(/\s+/g, ' ')
    .replace(/ ?\/ ?/g, '/');
  const [, area] = /^(\d+(?:[.,]\d{1,2})?) ?(?:mm ?\^? ?[2\u00b2]|sq\.? ?mm|mm ?sq|qmm)$/i.exec(spaced) ?? [];
  const [, behind] = /^#? ?([1-4]\/0|\d+)[ -]?(?:awg|ga\.?|gauge)$/i.exec(spaced) ?? [];
  const [, alone] = /^([1-4]\/0)$/.exec(spaced) ?? [];
  const [, before] = /^(?:awg|ga\.?|gauge|#) ?#? ?([1-4]\/0|\d+)$/i.exec(spaced) ?? [];
  const awg = behind ?? before ?? alone;
  const meant =
    area !== undefined
      ? `${area.replace(',', '.')} mm2`
      : awg === undefined
        ? null
        : `${zeros[awg] ?? awg} AWG`;
  return meant !== null && parseWireSize(meant) ? meant : null;
}

import type { Row } from '../ask/rows.ts';
import { filled, type Named } from '../yaml-text.ts';

/** Controls as a file has them. */
export function controlsOf(rows: readonly Row[]): Named {
  return Object.fromEntries(
    rows.map(({ cells: { name, sets, slope, channels, ...cells } }) => [
      String(name),
      {
        ...cells,
        ...(channels !== undefined && { channels: String(channels).split(/\s+/) }),
        ...setFields(
          String(cells.what),
          sets === undefined ? null : String(sets),
          slope === undefined ? null : String(slope),
        ),
      },
    ]),
  );
}

/** What it sets and to what: of a knob a range, of a switch its positions with what each of them passes. */
function setFields(what: string, sets: string | null, slope: string | null): Named {
  const shape = slope === null ? {} : slopeOf(slope);
  if (sets === null) return filled('filter', shape);
  const range =
    /^(?:(high-pass|low-pass|subsonic)\s+)?(?:(\d\S* ?[kM]?Hz)\s+)?([^=]*\S\s+to\s+\S[^=]*)$/.exec(sets);
  if (!range) return switchFields(sets, shape);
  const [, pass, centre, span = ''] = range;
  const [from = '', to = ''] = span.split(/\s+to\s+/);
  if (what === 'boost')
    return { form: 'knob', boost: { ...(centre !== undefined && { centre }), range: { from, to } } };
  return { form: 'knob', filter: { ...shape, ...(pass !== undefined && { pass }), range: { from, to } } };
}

function switchFields(sets: string, shape: Named): Named {
  const positions = sets.split(/\s+/).map((word) => word.split('='));
  const passes = Object.fromEntries(
    positions.flatMap(([position = '', pass]) => (pass === undefined ? [] : [[position, pass]])),
  );
  return {
    form: 'switch',
    positions: positions.map(([position = '']) => position),
    ...filled('filter', { ...shape, ...filled('passes', passes) }),
  };
}

/** `butterworth 12 dB`: six decibels an octave for each order. */
export function slopeOf(slope: string): Named {
  const [, type, steepness] =
    /^(?:([a-z-]+)\s+)?(\d+)\s*dB(?:\s*(?:\/|per)\s*oct(?:ave)?)?$/.exec(slope.trim()) ?? [];
  if (steepness === undefined) return { type: slope };
  return { ...(type !== undefined && { type }), order: Number(steepness) / 6 };
}

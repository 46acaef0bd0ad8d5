import type { Filter } from '../../lib/audio/filter/filter-response.ts';
import type { ShapedPeak } from '../../lib/audio/filter/peak.ts';
import { complex, type Spice } from './spice.ts';

/** Filters that a ladder between equal resistances makes, Linkwitz-Riley as two Butterworth ones in a row. */
function laddersOf({ pass, type, order, cornerHz }: Filter) {
  if (type === 'bessel') throw new Error('No ladder of Bessel filters is kept here.');
  const [each, count] = type === 'butterworth' ? [order, 1] : [order / 2, 2];
  const elements = Array.from({ length: each }, (_, k) => 2 * Math.sin(((2 * k + 1) * Math.PI) / (2 * each)));
  return Array.from({ length: count }, () => ({ elements, cornerHz, isLow: pass === 'low-pass' }));
}

/**
 * The level in dB of filters and peaks in a row, as ngspice computes it: each filter a ladder between 1 ohm and 1 ohm
 * (Butterworth, g_k = 2 sin((2k - 1) pi / 2n)) behind a source that makes up for its ends; each peak a series resonant
 * circuit across a divider, in the way of the signal for a cut, in a feedback path for a boost.
 */
export async function levelsInSpice(
  spice: Spice,
  { filters, peaks = [] }: { readonly filters: readonly Filter[]; readonly peaks?: readonly ShapedPeak[] },
  { perOctave, fromHz, toHz }: { readonly perOctave: number; readonly fromHz: number; readonly toHz: number },
): Promise<readonly { readonly hz: number; readonly db: number }[]> {
  const lines = ['vin p0 0 dc 0 ac 1'];
  let out = 'p0';
  let count = 0;
  for (const { elements, cornerHz, isLow } of filters.flatMap(laddersOf)) {
    count += 1;
    const stage = `s${count}`;
    lines.push(`e${stage} ${stage}a 0 ${out} 0 2`, `r${stage} ${stage}a ${stage}n0 1`);
    let node = `${stage}n0`;
    for (const [index, g] of elements.entries()) {
      // Shunt elements first; each of value g, or 1 / g of the other kind for a high-pass.
      const scaled = (isLow ? g : 1 / g) / (2 * Math.PI * cornerHz);
      const isCapacitor = isLow === (index % 2 === 0);
      const next = index % 2 === 0 ? '0' : `${stage}n${index}`;
      lines.push(`${isCapacitor ? 'c' : 'l'}${stage}${index} ${node} ${next} ${scaled}`);
      if (next !== '0') lines.push(`rb${stage}${index} ${next} 0 1e12`);
      node = next === '0' ? node : next;
    }
    lines.push(`rl${stage} ${node} 0 1`);
    out = node;
  }
  for (const { centreHz, gainDb, q } of peaks) {
    count += 1;
    const stage = `s${count}`;
    // A cut by A^2 = r / (r + R) at the centre, R = 1: its poles have the sharpness A Q.
    const a = 10 ** (-Math.abs(gainDb) / 40);
    const r = (a * a) / (1 - a * a);
    const omega = 2 * Math.PI * centreHz;
    const henry = (a * q * (r + 1)) / omega;
    const divider = (from: string, to: string) => [
      `rr${stage} ${from} ${to} 1`,
      `rs${stage} ${to} ${stage}x ${r}`,
      `l${stage} ${stage}x ${stage}y ${henry}`,
      `c${stage} ${stage}y 0 ${1 / (omega * omega * henry)}`,
      `rg${stage} ${stage}y 0 1e12`,
    ];
    if (gainDb < 0) {
      lines.push(`e${stage} ${stage}i 0 ${out} 0 1`, ...divider(`${stage}i`, `${stage}o`));
      out = `${stage}o`;
    } else {
      lines.push(`e${stage} ${stage}o 0 ${out} ${stage}f 1e9`, ...divider(`${stage}o`, `${stage}f`));
      out = `${stage}o`;
    }
  }
  lines.push(`.ac oct ${perOctave} ${fromHz} ${toHz}`);
  const analysis = await spice(lines);
  const hertz = complex(analysis, 'frequency').map(({ real }) => real);
  return complex(analysis, `v(${out})`).map(({ real, img }, index) => {
    return { hz: hertz[index] ?? Number.NaN, db: 20 * Math.log10(Math.hypot(real, img)) };
  });
}

import { describe, expect, it } from 'vitest';
import type { Item } from '../../../lib/board/layout/item.ts';
import { type LayoutTask, settingOf } from '../../../lib/board/layout/layout-setting.ts';
import { type Link, overWantedM, type WantedLength } from '../../../lib/board/layout/score/links.ts';
import { wiredLayout } from '../../../lib/board/propose/wired-layout.ts';
import { shapeOf } from '../shapes.ts';
import { searchLayouts, usualHouse, usualRouting, usualScore } from '../usual-board.ts';

const shape = shapeOf({ rectangle: { width: '1500 mm', height: '300 mm' } });
const amp: Item = {
  ...{ id: 'amp', widthM: 0.1, depthM: 0.1, heightM: 0.05, massKg: 0.1, kind: 'amplifier', rooms: {} },
  terminals: [
    { id: 'amp.OUT', side: 'top', alongM: 0.05, layer: 'speaker' },
    { id: 'amp.B-', side: 'left', alongM: 0.05, layer: 'ground' },
  ],
};
const ground = (wanted?: WantedLength): Link => ({
  id: 'ground',
  from: { item: 'amp', terminal: 'amp.B-' },
  to: { exit: 'left' },
  layer: 'ground',
  ...(wanted && { wanted }),
});
const task = (links: readonly Link[]): LayoutTask => ({ board: { shape }, items: [amp], given: [], links });

describe('a ground lead that is to be short', () => {
  it('is too long by its way and what lies between the edge and the farthest place that it may meet the rim at', () => {
    const rim = [
      { xM: -0.03, yM: 0.14 },
      { xM: -0.03, yM: 0.06 },
    ];
    // Triangles of 3, 4 and 5: from (0, 0.1) to either is 50 mm.
    expect(overWantedM(0.2, { xM: 0, yM: 0.1 }, { lengthM: 0.22, rim })).toBeCloseTo(0.03, 12);
    expect(overWantedM(0.2, { xM: 0, yM: 0.1 }, { lengthM: 0.26, rim })).toBe(0);
    expect(overWantedM(0.2, { xM: 0, yM: 0.1 }, { lengthM: 0.15, rim: [] })).toBeCloseTo(0.05, 12);
    // The rest of it is longer than all of it is to be.
    expect(overWantedM(0.2, { xM: 0, yM: 0.1 }, { lengthM: -0.1, rim: [] })).toBeCloseTo(0.3, 12);
  });

  it('draws its part to the edge that it leaves by, though more wires draw it to the other', () => {
    const outputs = [1, 2, 3].map(
      (n): Link => ({
        ...{ id: `speaker-${n}`, layer: 'speaker' },
        ...{ from: { item: 'amp', terminal: 'amp.OUT' }, to: { exit: 'right' } },
      }),
    );
    const leftOf = (wanted?: WantedLength) => {
      const { proposals } = searchLayouts(task([...outputs, ground(wanted)]), {
        rules: usualScore,
        evaluations: 4000,
      });
      return proposals[0]?.placements[0]?.xM ?? Number.NaN;
    };
    expect(leftOf()).toBeGreaterThan(1);
    expect(leftOf({ lengthM: 0.25, rim: [] })).toBeLessThan(0.25);
  });

  it('counts as a caution and by how much it is too long, once it is laid', () => {
    const laid = (wanted: WantedLength) => {
      const setting = settingOf(task([ground(wanted)]), usualScore, usualHouse.stepM);
      const site = setting.open[0]?.sites.list.find(({ xM, turnDeg }) => xM > 0.39 && turnDeg === 0);
      if (!site) throw new Error('The part can stand there.');
      const end = { item: 'amp', terminal: 'amp.B-' };
      const wire = { id: 'ground', layer: 'ground', diameterM: 0.005 } as const;
      const wiring = {
        ...{ shape, items: [amp], barriers: [], house: usualRouting },
        wires: [{ ...wire, along: [{ link: 'ground', from: end, to: { exit: 'left' as const } }] }],
      };
      const { cautions, proposal, trial } = wiredLayout(setting, wiring, [], [site], 'for-good');
      return { cautions, parts: proposal.score.parts, lengthM: trial.lengthsM.ground ?? Number.NaN };
    };
    const [short, long] = [laid({ lengthM: 2, rim: [] }), laid({ lengthM: 0.3, rim: [] })];
    expect(long.lengthM).toBeGreaterThan(0.38);
    expect(long.cautions - short.cautions).toBe(1);
    expect(short.parts.wanted).toBe(0);
    expect(long.parts.wanted).toBeCloseTo(usualHouse.over * (long.lengthM - 0.3), 9);
  });
});

import { describe, expect, test } from 'vitest';
import {
  ampacityRow,
  ampacityRows,
  engineSpaceFactors,
  insulationColumn,
  insulationRatingsC,
  thinWireSize,
} from '../../../lib/model/tables/ampacity.ts';
import { awgAreaMm2 } from '../../../lib/model/tables/awg-sizes.ts';
import { publishedRows } from './published.ts';

describe('the ampacity table', () => {
  // 33 CFR 183.425, Table 5: every entry.
  test.each(publishedRows('ampacity-33cfr183-table5.csv'))(
    'has the regulation row of %s AWG',
    (awg, ...row) => {
      const own = ampacityRows.find((entry) => entry.awg === awg);
      expect(insulationRatingsC.map((rating) => own?.amperageA(rating))).toEqual(row.map(Number));
    },
  );

  test('has no other rows', () => {
    expect(ampacityRows).toHaveLength(publishedRows('ampacity-33cfr183-table5.csv').length);
  });

  // 33 CFR 183.425, Table 5, note 1; only the 105 C factor is confirmed.
  test.each(publishedRows('ampacity-engine-space-factor.csv'))(
    'has the engine-space factor at %s C with its mark',
    (rating, factor, confirmed) => {
      const column = insulationColumn(Number(rating));
      const own = column && engineSpaceFactors[column];
      expect(own && { factor: own.factor, sure: own.mark === undefined }).toEqual({
        factor: Number(factor),
        sure: confirmed === 'confirmed',
      });
    },
  );

  test('takes the AWG row at or below an area in mm2', () => {
    // Areas by ASTM B258: 6 AWG is 13.30 mm2, 4 AWG 21.15 mm2.
    expect(ampacityRow(16)?.awg).toBe('6');
    expect(ampacityRow(21.15)?.awg).toBe('4');
    expect(ampacityRow(21)?.awg).toBe('6');
    expect(ampacityRow(0.75)).toBeNull();
  });

  test('takes the insulation column at or below a rating', () => {
    expect(insulationColumn(70)).toBe(60);
    expect(insulationColumn(105)).toBe(105);
    expect(insulationColumn(59)).toBeNull();
  });

  test('caps the fuse of thin wire by size', () => {
    expect(thinWireSize(awgAreaMm2('20'))).toBe('20');
    expect(thinWireSize(awgAreaMm2('22'))).toBe('22');
    expect(thinWireSize(awgAreaMm2('24'))).toBe('24');
    expect(thinWireSize(0.3)).toBe('24');
    expect(thinWireSize(0.1)).toBeNull();
  });
});

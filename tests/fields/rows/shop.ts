import { byPeople, type Row } from '../row.ts';

/** Who the shop is, its house rules and its shelf. */
export const shopRows: readonly Row[] = [
  ['shop/rackleaf', 'another number', 2, /must be 1/],
  ['shop/name', 'a wrong word', 'Bench test', byPeople],
  ['shop/address/0', 'a figure wrong', '11 Bench Road', byPeople],
  ['shop/site-url', 'without its beginning', 'sheets.example', /write https:\/\/sheets\.example/],
  ['shop/units', 'a short form', 'mm', /millimetre/],
  ['shop/fraction', 'a fraction that no tape has', 12, /./],
  ['shop/paper', 'a capital letter', 'A4', /a4/],
  ['shop/larger-paper', 'a capital letter', 'A3', /a3/],
  ['shop/rules/drop-limit', 'a bare number', 4, /needs its unit/],
  ['shop/rules/drop-limit', 'the sign of percent left out', '4', /has no unit/],
  ['shop/times/drill-hole', 'a bare number', 2, /needs its unit/],
  ['shop/stock/fuse-large-100/pieces', 'a figure short', 0, 'fuse-not-in-stock'],
  ['shop/stock/fuse-large-100/pieces', 'a minus sign', -4, /below zero/],
  [
    'shop/stock/birch-18/off-cuts/sill-piece/width',
    'cm for mm',
    '900 cm',
    /larger than the whole/,
    { job: 'board' },
  ],
  [
    'shop/stock/birch-18/off-cuts/sill-piece/height',
    'ten times as high',
    '6000 mm',
    /larger than the whole/,
    { job: 'board' },
  ],
  ['shop/stock/birch-18/off-cuts/sill-piece/pieces', 'half a piece', 0.5, /whole number/, { job: 'board' }],
  ['shop/stock/wire-power-1-0-rd/reels/0', 'inches for feet', '60 in', 'stock-short'],
  [
    'shop/stock/wire-power-1-0-rd/off-cuts/c1',
    'a bare number',
    6,
    /needs its unit/,
    { scene: { 'shop/stock/wire-power-1-0-rd/off-cuts': { c1: '6 ft' } } },
  ],
  ['shop/stock/wire-power-1-0-rd/reels/0', 'a minus sign', '-60 ft', /below zero/],
];

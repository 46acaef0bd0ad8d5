import { byPeople, type Row } from '../row.ts';

const outline = 'board/boards/main/outline';
const cut = (written: object) => ({ scene: { [`${outline}/cuts`]: [written] } });
const corner = cut({ cut: 'corner', id: 'latch', corner: 'upper-right', dx: '40 mm', dy: '40 mm' });
const rounded = cut({ cut: 'corner', id: 'latch', corner: 'upper-right', radius: '10 mm' });
const notch = cut({
  cut: 'notch',
  id: 'turret',
  edge: 'top',
  from: 'left',
  offset: '470 mm',
  width: '30 mm',
  depth: '20 mm',
});
const step = cut({ cut: 'step', id: 'seam', corner: 'upper-right', dx: '40 mm', dy: '40 mm' });
const slot = cut({
  cut: 'slot',
  id: 'strap',
  from: 'upper-right',
  x: '60 mm',
  y: '100 mm',
  length: '50 mm',
  width: '10 mm',
  turn: '90 deg',
});
const hole = cut({
  cut: 'hole',
  id: 'drain',
  from: 'upper-right',
  x: '60 mm',
  y: '100 mm',
  diameter: '20 mm',
  purpose: 'wire',
});
const windowed = cut({
  cut: 'window',
  id: 'plug',
  from: 'upper-right',
  x: '40 mm',
  y: '100 mm',
  width: '50 mm',
  height: '40 mm',
  radius: '5 mm',
});
const arcs = cut({ cut: 'arc-corner', id: 'rounds', radius: '20 mm', corners: ['upper-right'] });
const rib = {
  scene: {
    'board/boards/main/ribs': {
      stiff: { edge: 'left', distance: '260 mm', height: '18 mm', face: 'rear', joint: 'screwed' },
    },
  },
};
const partRib = {
  scene: {
    'board/boards/main/ribs': {
      stiff: {
        edge: 'left',
        distance: '260 mm',
        start: '50 mm',
        length: '200 mm',
        width: '18 mm',
        height: '18 mm',
        sheet: 'birch-18',
      },
    },
  },
};
const skewRib = {
  scene: {
    'board/boards/main/ribs': {
      stiff: { from: ['200 mm', '100 mm'], to: ['300 mm', '300 mm'], height: '18 mm' },
    },
  },
};
const c = `${outline}/cuts/0`;
const r = 'board/boards/main/ribs/stiff';

/** The boards of a job: outline, cuts, fixings and ribs. */
export const boardRows: readonly Row[] = [
  ['board/boards/main/title', 'a wrong word', 'Boot board', byPeople],
  ['board/boards/main/sheet', 'a letter wrong', 'birch-81', /birch-81/],
  [
    'board/boards/main/screw',
    'a bolt for a screw',
    'bolt-m6-60',
    /no wood screw/,
    { scene: { 'board/boards/main/screw': 'wood-screw-8-16' } },
  ],
  ['board/boards/main/space', 'a letter short', 'wel', /wel/],
  ['board/boards/main/at/x', 'cm for mm', '15 cm', 'space-too-small'],
  ['board/boards/main/at/y', 'ten times as far', '150 mm', 'space-too-small'],
  [`${outline}/rectangle/width`, 'cm for mm', '520 cm', 'space-too-small'],
  [`${outline}/rectangle/height`, 'a tenth', '37 mm', 'item-outside-board'],
  [
    `${outline}/polygon/2/0`,
    'a figure short',
    '52 mm',
    'item-outside-board',
    {
      scene: {
        [outline]: {
          polygon: [
            ['0 mm', '0 mm'],
            ['520 mm', '0 mm'],
            ['520 mm', '370 mm'],
            ['0 mm', '370 mm'],
          ],
        },
      },
    },
  ],
  [`${outline}/edge-profile/kind`, 'a word of everyday', 'rounded', /round-over/],
  [`${outline}/edge-profile/size`, 'cm for mm', '30 cm', /above 0.05 m/],
  [`${outline}/grain`, 'a word of everyday', 'along', /level or upright/],
  ['board/boards/main/fixings/a/point', 'a figure wrong', 'p9', /p9/],
  ['board/boards/main/fixings/a/fixing', "the neighbour's fixing", 'wood-screw-8-16', 'fixing-misfits-point'],
  ['board/boards/main/fixings/a/spacer', 'ten times as high', '10 in', 'space-too-shallow'],
  [`${c}/cut`, 'a word of everyday', 'edge', /is not a cut/, corner],
  [`${c}/id`, 'a wrong word', 'hinge', byPeople, corner],
  [`${c}/corner`, 'a corner that a rectangle has not', 7, 'cut-without-place', corner],
  [`${c}/dx`, 'cm for mm', '90 cm', 'corner-cut-longer-than-edge', corner],
  [`${c}/dy`, 'zero', '0 mm', 'cut-without-size', corner],
  [`${c}/radius`, 'cm for mm', '90 cm', 'corner-radius-too-large', rounded],
  [`${c}/cut`, 'a word of everyday', 'recess', /is not a cut/, notch],
  [`${c}/id`, 'a wrong word', 'hinge', byPeople, notch],
  [`${c}/edge`, 'a word of everyday', 'front', /counts from 1/, notch],
  [`${c}/from`, 'an end that the edge has not', 'top', 'cut-without-place', notch],
  [`${c}/offset`, 'cm for mm', '47 m', 'notch-past-end-of-edge', notch],
  [`${c}/width`, 'ten times as wide', '300 mm', 'notch-past-end-of-edge', notch],
  [`${c}/depth`, 'cm for mm', '50 cm', 'cut-outside-board', notch],
  [`${c}/cut`, 'a word of everyday', 'stair', /is not a cut/, step],
  [`${c}/id`, 'a wrong word', 'hinge', byPeople, step],
  [`${c}/corner`, 'a corner that a rectangle has not', 7, 'cut-without-place', step],
  [`${c}/dx`, 'cm for mm', '90 cm', 'corner-cut-longer-than-edge', step],
  [`${c}/dy`, 'zero', '0 mm', 'cut-without-size', step],
  [`${c}/cut`, 'a word of everyday', 'long hole', /is not a cut/, slot],
  [`${c}/id`, 'a wrong word', 'hinge', byPeople, slot],
  [`${c}/from`, 'a word of everyday', 'left', /is not a corner/, slot],
  [`${c}/x`, 'a minus sign', '-60 mm', 'cut-outside-board', slot],
  [`${c}/y`, 'm for mm', '100 m', 'cut-outside-board', slot],
  [`${c}/length`, 'the point put in', '5 mm', 'slot-wider-than-long', slot],
  [`${c}/width`, 'zero', '0 mm', 'cut-without-size', slot],
  [`${c}/turn`, 'its unit left out', 90, /needs its unit/, slot],
  [`${c}/cut`, 'a word of everyday', 'bore', /is not a cut/, hole],
  [`${c}/id`, 'a wrong word', 'hinge', byPeople, hole],
  [`${c}/from`, 'a word of everyday', 'left', /is not a corner/, hole],
  [`${c}/x`, 'a minus sign', '-60 mm', 'cut-outside-board', hole],
  [`${c}/y`, 'm for mm', '100 m', 'cut-outside-board', hole],
  [`${c}/diameter`, 'cm for mm', '20 cm', 'cut-outside-board', hole],
  [`${c}/purpose`, 'a word of everyday', 'cable', /is not a purpose/, hole],
  [`${c}/cut`, 'a word of everyday', 'opening', /is not a cut/, windowed],
  [`${c}/id`, 'a wrong word', 'hinge', byPeople, windowed],
  [`${c}/from`, 'a word of everyday', 'left', /is not a corner/, windowed],
  [`${c}/x`, 'a minus sign', '-60 mm', 'cut-outside-board', windowed],
  [`${c}/y`, 'm for mm', '100 m', 'cut-outside-board', windowed],
  [`${c}/width`, 'cm for mm', '50 cm', 'cut-outside-board', windowed],
  [`${c}/height`, 'cm for mm', '40 cm', 'cut-outside-board', windowed],
  [`${c}/radius`, 'above half its width', '30 mm', 'corner-radius-too-large', windowed],
  [`${c}/cut`, 'a word of everyday', 'rounding', /is not a cut/, arcs],
  [`${c}/id`, 'a wrong word', 'hinge', byPeople, arcs],
  [`${c}/radius`, 'cm for mm', '90 cm', 'corner-radius-too-large', arcs],
  [`${c}/corners`, 'a corner that a rectangle has not', [7], 'cut-without-place', arcs],
  [`${r}/edge`, 'a word of everyday', 'front', /is not a side of the board/, rib],
  [`${r}/distance`, 'cm for mm', '260 cm', 'rib-off-board', rib],
  [`${r}/height`, 'cm for mm', '18 cm', 'rib-without-room', rib],
  [`${r}/face`, 'a word of everyday', 'back', /is not a face of a board/, rib],
  [`${r}/joint`, 'a word of everyday', 'nailed', /is not a way to fix a rib/, rib],
  [`${r}/start`, 'cm for mm', '50 cm', 'rib-off-board', partRib],
  [`${r}/length`, 'cm for mm', '200 cm', 'rib-off-board', partRib],
  [`${r}/width`, 'm for cm', '18 m', 'rib-off-board', partRib],
  [`${r}/sheet`, 'a letter wrong', 'birch-81', /birch-81/, partRib],
  [`${r}/from/0`, 'cm for mm', '200 cm', 'rib-off-board', skewRib],
  [`${r}/to/1`, 'cm for mm', '300 cm', 'fixings-too-weak', skewRib],
];

/** What was measured about places, and what must stay reachable. */
export const reachRows: readonly Row[] = [
  ['vehicle/spaces/well/bounds/left', 'a wall for open', 'wall', 'tool-room-before-wall', { job: 'board' }],
  ['vehicle/spaces/well/bounds/right', 'a word of everyday', 'trim', /wall or open/, { job: 'board' }],
  ['vehicle/spaces/well/bounds/top', 'a word of everyday', 'shelf', /wall or open/, { job: 'board' }],
  ['vehicle/spaces/well/bounds/bottom', 'a word of everyday', 'floor', /wall or open/, { job: 'board' }],
  [
    'vehicle/spaces/well/bounds/front',
    'a word of everyday',
    'hatch',
    /one of wall, open, lid/,
    { job: 'board' },
  ],
  ['vehicle/spaces/well/keep-reachable/jack/x', 'a tenth', '54 mm', 'area-covered', { job: 'board' }],
  [
    'vehicle/spaces/well/keep-reachable/jack/y',
    'cm for mm',
    '300 cm',
    'space-measures-differ',
    { job: 'board' },
  ],
  [
    'vehicle/spaces/well/keep-reachable/jack/width',
    'ten times as wide',
    '550 mm',
    'space-measures-differ',
    { job: 'board' },
  ],
  [
    'vehicle/spaces/well/keep-reachable/jack/height',
    'ten times as high',
    '600 mm',
    'space-measures-differ',
    { job: 'board' },
  ],
  ['vehicle/spaces/well/keep-reachable/jack/before', 'm for mm', '100 m', /above 2 m/, { job: 'board' }],
  [
    'vehicle/spaces/well/keep-reachable/jack/must',
    'a word for yes',
    'yes',
    /true or false/,
    { job: 'board' },
  ],
  ['vehicle/spaces/well/keep-reachable/jack/what', 'a wrong word', 'lid', byPeople, { job: 'board' }],
  ['vehicle/spaces/well/sound-points/p1/insert', 'a word of everyday', 'nut', /rivet-nut/, { job: 'board' }],
  ['vehicle/grounds/well/insert', 'a word of everyday', 'nut', /rivet-nut/],
  [
    'vehicle/places/boot/width',
    'a tenth',
    '60 mm',
    'place-too-small',
    { scene: { 'vehicle/places/boot/width': '1200 mm', 'vehicle/places/boot/height': '600 mm' } },
  ],
  [
    'vehicle/places/boot/height',
    'a tenth',
    '60 mm',
    'place-too-small',
    { scene: { 'vehicle/places/boot/width': '1200 mm', 'vehicle/places/boot/height': '600 mm' } },
  ],
  ['vehicle/charging-voltage', 'the point left out', '144 V', /above 36 V/],
  ['vehicle/fitted/battery/reserve-end', 'the whole for the rest', '120 %', /above 95 %/],
  ['banks/devices/second/reserve-end', 'the whole for the rest', '120 %', /above 95 %/],
  ['parts/parts/battery-agm-80/reserve-end', 'the whole for the rest', '120 %', /above 95 %/],
  ['board/devices/amp/held', 'a word of everyday', 'screws', /strap/],
  [
    'wired/links/coil/branch/after',
    'a minus sign',
    '-6 in',
    /not above zero/,
    { too: { 'wired/links/coil/branch/from': 'turn-on-amp', 'wired/links/coil/branch/leg': '6 in' } },
  ],
  [
    'wired/links/coil/branch/leg',
    'a minus sign',
    '-6 in',
    /not above zero/,
    { too: { 'wired/links/coil/branch/from': 'turn-on-amp', 'wired/links/coil/branch/after': '6 in' } },
  ],
  ['parts/parts/birch-18/crushing', 'GPa for MPa', '8 GPa', /above 1000000000 Pa/, { job: 'board' }],
  ['parts/parts/birch-18/crushing', 'kPa for MPa', '0.008 MPa', /below 100000 Pa/, { job: 'board' }],
  ['parts/parts/birch-18/shear-strength', 'GPa for MPa', '4 GPa', /above 1000000000 Pa/, { job: 'board' }],
  ['parts/parts/bolt-m6-60/bears-on', 'cm for mm', '12 cm', /above 0.08 m/, { job: 'board' }],
  ['parts/parts/bolt-m6-60/bears-on', 'a tenth', '1.2 mm', /its thread is M6/, { job: 'board' }],
  [
    'vehicle/places/boot/lies-over/spare/must',
    'a word for yes',
    'yes',
    /true or false/,
    { scene: { 'vehicle/places/boot/lies-over': { spare: { must: false, what: 'spare wheel' } } } },
  ],
  [
    'vehicle/places/boot/lies-over/spare/what',
    'a wrong word',
    'jack',
    byPeople,
    { scene: { 'vehicle/places/boot/lies-over': { spare: { must: false, what: 'spare wheel' } } } },
  ],
  [
    'wired/links/turn-on/label',
    'the label of another wire',
    'R2',
    'label-twice',
    { scene: { 'wired/links/coil/label': 'R2' } },
  ],
  ['wired/links/turn-on/colour', 'the colour of a feed', 'RD', /asks for RD/],
  ['wired/links/tail/length', 'zero', '0 in', /not above zero/],
];

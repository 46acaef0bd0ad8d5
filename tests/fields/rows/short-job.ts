import type { Row } from '../row.ts';

/** Keys that speak to the rules of proposing: in a job, and once for all jobs in the vehicle and the parts. */
export const shortJobRows: readonly Row[] = [
  ['short/devices/amp/driven-by', 'a letter short', 'radi', /radi/],
  ['short/devices/sub/driven-by', 'what it drives in turn', 'battery', /drives no speaker/],
  ['short/devices/sub/in/0', 'a letter short', 'bot', /bot/],
  ['short/devices/sub/channels/0', 'a channel that it has not', '7', /no channel 7/],
  ['short/devices/sub/plays', 'a corner without its words', '80 Hz', /not how a band is written/],
  ['short/devices/sub/plays', 'the upper corner first', '80 Hz to 20 Hz', /runs downwards/],
  ['short/devices/sub/signal', 'a word of everyday', 'back', /rear/],
  ['short/devices/sub/box', 'a letter short', 'enclosure-portd-45', /enclosure-portd-45/],
  ['short/devices/sub/box', 'the speaker itself', 'subwoofer-12-dual-4', /is no enclosure/],
  ['short/devices/amp/fed-by', 'a letter short', 'batery', /batery/],
  ['short/devices/amp/fed-by', 'what the battery feeds', 'radio', /is no battery/],
  [
    'short/devices/fan/cools',
    'a letter short',
    'wel',
    /wel/,
    { scene: { 'short/devices/fan': { part: 'fan-80', in: 'boot', cools: 'well' } } },
  ],
  ['short/devices/amp/cools', 'a fan for an amplifier', 'well', /an amplifier moves no air through a space/],
  ['short/devices/amp/ground', 'a letter short', 'wel', /wel/],
  ['short/boards/main/fed-by', 'a letter short', 'batery', /batery/],
  ['short/boards/main/ground', 'a letter short', 'wel', /wel/],
  ['short/boards/main/spacer', 'ten times as high', '10 in', /no bolt/],
  ['vehicle/places/boot/row', 'a word of everyday', 'back', /rear/, { job: 'short' }],
  ['vehicle/routes/ground/serves/0', 'a letter short', 'body.wel', /body\.wel/, { job: 'short' }],
  [
    'vehicle/fitted/radio/outputs/OUT5/carries',
    'a pair for one of its sides',
    'bass',
    /bass-left/,
    { job: 'short' },
  ],
  [
    'parts/parts/source-six-line/outputs/OUT5/carries',
    'a pair for one of its sides',
    'bass',
    /bass-left/,
    { job: 'short' },
  ],
];

import type { DrawnJob } from './made-up-shop.ts';

/**
 * Questions as a fabricator types them, and what has to be the first answer: one of the jobs that were drawn so, or a page.
 * They were written before anything was tuned to them.
 */
export interface Query {
  readonly typed: string;
  /** Any of the jobs for which this holds. */
  readonly job?: (job: DrawnJob) => boolean;
  /** Any of these pages. */
  readonly pages?: readonly string[];
}

const is = (vehicle: string) => (job: DrawnJob) => job.vehicle.startsWith(vehicle);
const part = (...ids: readonly string[]): Pick<Query, 'pages'> => ({
  pages: ids.map((id) => `/parts/${id}/`),
});
const isUnderSeat = ({ space }: DrawnJob) => /under the .*seat/.test(space);

export const queries: readonly Query[] = [
  // Sizes of wire
  { typed: '1/0 hatchback', job: (job) => is('hatchback')(job) && job.feedAwg === '1/0' },
  { typed: 'van 1/0 awg', job: (job) => is('van')(job) && job.feedAwg === '1/0' },
  { typed: '0 gauge pickup', job: (job) => is('pickup')(job) && job.feedAwg === '1/0' },
  { typed: 'one aught camper', job: (job) => is('camper')(job) && job.feedAwg === '1/0' },
  { typed: '4 gauge estate', job: (job) => is('estate')(job) && job.feedAwg === '4' },
  { typed: '4awg roadster', job: (job) => is('roadster')(job) && job.feedAwg === '4' },
  { typed: '8 ga limo', job: (job) => is('limousine')(job) && job.feedAwg === '8' },
  { typed: '1/0 power wire', ...part('wire-power-1-0-rd', 'wire-power-1-0-rd-200') },
  { typed: '8 ga ground wire', ...part('wire-ground-8-bk') },
  { typed: '10mm2 ferrule', ...part('ferrule-8') },
  // Fractions and sheets
  { typed: '3/4 mdf', ...part('fibreboard-19') },
  { typed: '3/4" ply saloon', job: (job) => is('saloon')(job) && job.sheet === 'birch-18' },
  { typed: '18mm birch minibus', job: (job) => is('minibus')(job) && job.sheet === 'birch-18' },
  { typed: '12 mm birch under seat', job: (job) => isUnderSeat(job) && job.sheet === 'birch-12' },
  { typed: 'polyethelene pickup', job: (job) => is('pickup')(job) && job.sheet === 'polyethylene-13' },
  { typed: '6 1/2 coax', ...part('coaxial-65') },
  { typed: '6.5" coaxial speaker', ...part('coaxial-65') },
  { typed: '5 1/4 coaxial', ...part('coaxial-525') },
  { typed: 'wood screw 1 1/4', ...part('wood-screw-8-32') },
  // Amplifiers, channels, processors
  { typed: 'five channel amp', ...part('amp-five') },
  {
    typed: '5 channel amp under seat',
    job: (job) => isUnderSeat(job) && job.amplifiers.includes('amp-five'),
  },
  {
    typed: '4-channel amp roadster',
    job: (job) => is('roadster')(job) && job.amplifiers.includes('amp-four'),
  },
  { typed: 'mono amp 1000w', ...part('amp-mono-1000') },
  { typed: '3 amps minibus', job: (job) => is('minibus')(job) && job.amplifiers.length === 3 },
  {
    typed: '7 channels van',
    job: (job) =>
      is('van')(job) &&
      /^(?:amp-six,amp-mono-400|amp-two,amp-four,amp-mono-1000)$/.test(job.amplifiers.join()),
  },
  { typed: 'dsp camper', job: (job) => is('camper')(job) && job.processor !== null },
  { typed: 'proccesor ten out', ...part('processor-ten') },
  {
    typed: 'amplifer estate side well',
    job: (job) => is('estate')(job) && job.space.startsWith('Left side well'),
  },
  // Speakers
  { typed: 'subwofer 12', ...part('subwoofer-12-dual-4') },
  { typed: 'subwoofers 10 inch two coils', ...part('subwoofer-10-dual-2') },
  { typed: '45 l ported enclosure', ...part('enclosure-ported-45') },
  { typed: '12" sub coupe', job: (job) => is('coupe')(job) && job.subwoofer === 'subwoofer-12-dual-4' },
  // Fuses
  { typed: '150a large bolt-in fuse', ...part('fuse-large-150') },
  { typed: '7.5 amp mini blade', ...part('fuse-mini-7-5') },
  { typed: 'maxi 60', ...part('fuse-maxi-60') },
  { typed: 'class t van', job: (job) => is('van')(job) && job.fuse.form === 'class-t' },
  {
    typed: 'maxi blade fuses limousine',
    job: (job) => is('limousine')(job) && job.fuse.form === 'maxi-blade',
  },
  // Lugs and the like
  { typed: 'ring lug 1/0 m8', ...part('lug-1-0-m8') },
  { typed: 'heat shrink 19mm', ...part('shrink-19') },
  { typed: 'agm battery 80ah', ...part('battery-agm-80') },
  // Vehicles, spaces, slips
  { typed: 'hatchbak under seat', job: (job) => is('hatchback')(job) && isUnderSeat(job) },
  { typed: 'sidewell saloon', job: (job) => is('saloon')(job) && job.space === 'Left side well' },
  { typed: 'spare wheel wel coupe', job: (job) => is('coupe')(job) && job.space === 'Spare wheel well' },
  { typed: 'panel van long', pages: ['/vehicles/van-long/'] },
  { typed: 'off roader 2024', job: (job) => is('off-roader')(job) && job.year === 2024 },
  {
    typed: 'P. T. 2023 van',
    job: (job) => is('van')(job) && job.fabricator === 'P. T.' && job.year === 2023,
  },
  { typed: 'van second battery', job: (job) => is('van')(job) && job.hasSecondBattery },
  // Labels, ids, notes
  { typed: 'G15 saloon', job: (job) => is('saloon')(job) && job.labels.G >= 15 },
  { typed: 'L12+ estate', job: (job) => is('estate')(job) && job.labels.L >= 12 },
  { typed: 'wheelchair ramp', job: ({ note }) => note?.startsWith('Wheelchair') ?? false },
];

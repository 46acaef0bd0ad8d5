import { describe, expect, it } from 'vitest';
import { orderOfWork } from '../../../lib/publish/sheets/order-of-work.ts';
import { type PublishedPhoto, photoPath } from '../../../lib/publish/site/published-photo.ts';
import { samplePlan } from '../sample/sample-plan.ts';
import { packetOf, readyPlan } from './ready-plan.ts';

const sample = readyPlan(samplePlan());
const [amplifier] = sample.items.filter(({ kind, origin }) => kind === 'amplifier' && origin === 'job');
/** Its first step puts the amplifier in. */
const plan = {
  ...sample,
  steps: sample.steps.map((step, at) => ({ ...step, installs: at === 0 ? [amplifier?.id ?? ''] : [] })),
};

const photo: PublishedPhoto = {
  id: 'front',
  path: photoPath('0'.repeat(64)),
  widthPx: 64,
  heightPx: 48,
  shows: 'The "front" <amplifier>',
  of: { kind: 'device', id: amplifier?.id ?? '' },
  on: ['packet', 'sheets'],
};
const jpeg = new Uint8Array([255, 216, 255, 217]);

describe('a photo in a packet', () => {
  it('stands in the file itself, with its size and what it shows', async () => {
    const html = await packetOf(plan, { photos: [photo], jpeg });
    expect(html).toContain(
      `<img src="data:image/jpeg;base64,${Buffer.from(jpeg).toString('base64')}" width="64" height="48" alt="The &quot;front&quot; &lt;amplifier&gt;">`,
    );
    expect(html).not.toContain('assets/photos');
  });

  it('stands beside the equipment that it is of, and else behind the pictures', async () => {
    const beside = await packetOf(plan, { photos: [photo], jpeg });
    expect(beside.indexOf('<img')).toBeLessThan(beside.indexOf('Where it is in the vehicle'));
    const apart = await packetOf(plan, { photos: [{ ...photo, of: { kind: 'step', id: 'x' } }], jpeg });
    expect(apart.indexOf('<img')).toBeGreaterThan(apart.indexOf('Where it is in the vehicle'));
    expect(apart.match(/<img/g)).toHaveLength(1);
  });

  it('of what holds a fuse stands with the table of the fuses', async () => {
    const [fuse] = plan.power.fuses;
    const of = { kind: 'device', id: fuse?.item ?? '' } as const;
    const html = await packetOf(plan, { photos: [{ ...photo, of }], jpeg });
    expect(html.indexOf('<img')).toBeGreaterThan(html.indexOf('put back the rating'));
    expect(html.indexOf('<img')).toBeLessThan(html.lastIndexOf('How it is set'));
    expect(html.match(/<img/g)).toHaveLength(1);
  });

  it('that is for the sheets alone is not there', async () => {
    expect(await packetOf(plan, { photos: [{ ...photo, on: ['sheets'] }], jpeg })).not.toContain('<img');
  });
});

/** The photos of the order of work: by step, and behind all of them. */
function onSheet(photos: readonly PublishedPhoto[]) {
  const sheet = orderOfWork.model(plan, photos);
  if (!sheet) throw new Error('the sample has no step');
  const steps = [...sheet.columns, ...(sheet.rest ? [sheet.rest] : [])].flatMap((column) => column.steps);
  return {
    steps: Object.fromEntries(
      steps.flatMap(({ id, photos: own }) => (own.length > 0 ? [[id, own.length]] : [])),
    ),
    behind: sheet.photos.length,
  };
}

describe('a photo on the sheets', () => {
  const [step] = plan.steps;
  it('stands beside its step, or behind all where there is none', () => {
    expect(onSheet([{ ...photo, of: { kind: 'step', id: step?.id ?? '' } }])).toEqual({
      steps: { [step?.id ?? '']: 1 },
      behind: 0,
    });
    expect(onSheet([{ ...photo, of: { kind: 'step', id: 'no-such-step' } }])).toEqual({
      steps: {},
      behind: 1,
    });
    expect(onSheet([{ ...photo, of: null }])).toEqual({ steps: {}, behind: 1 });
  });

  it('of a device stands beside the first step that puts it in', () => {
    expect(onSheet([photo])).toEqual({ steps: { [plan.steps[0]?.id ?? '']: 1 }, behind: 0 });
  });

  it('that is for the packet alone is not there', () => {
    expect(onSheet([{ ...photo, on: ['packet'] }])).toEqual({ steps: {}, behind: 0 });
  });
});

import { expect, test } from 'vitest';
import { instead, linksOf } from './links-of.ts';
import { shortText } from './short-shop.ts';

/** A short job with devices of its proposal and some of its supply links written, as it is completed. */
function writtenIn(job: string, devices: readonly string[], links: readonly string[]) {
  const whole = linksOf(shortText(job));
  const deviceLines = devices.map((id) => {
    const { part, in: place, on } = whole.job?.file.devices[id] ?? {};
    return `  ${id}: { part: ${part}, ${place === undefined ? `on: ${on}` : `in: ${place}`} }\n`;
  });
  const linkLines = links.map((id) => {
    const [from, to] = (whole.links[id] ?? '').split(' ');
    const length = id === 'battery-tail' ? ', length: 6 in' : '';
    return `  ${id}: { from: ${from}, to: ${to}${length} }\n`;
  });
  const text = instead(shortText(job), 'devices:\n', `devices:\n${deviceLines.join('')}`);
  const made = linksOf(instead(text, '\nboards:', `\nlinks:\n${linkLines.join('')}\nboards:`));
  return { whole, made };
}

const oneAmp = (...links: readonly string[]) => writtenIn('one-bass-amplifier', ['main-fuse'], links);
const twoAmps = (...links: readonly string[]) => writtenIn('estate-side-well', ['main-fuse', 'dist'], links);

test('a feed that is written leaves the lead from the battery to its fuse proposed', () => {
  const { whole, made } = oneAmp('feed-amp');
  expect(made.problems).toEqual([]);
  expect(made.links).toEqual(whole.links);
  expect(made.proposed('battery-tail')?.reason).toMatch(/what goes on from it is written/);
  expect(made.proposed('feed-amp')).toBeUndefined();
});

test('a lead to the fuse that is written leaves the feed behind it proposed, from that fuse', () => {
  const { whole, made } = oneAmp('battery-tail');
  expect(made.problems).toEqual([]);
  expect(made.links).toEqual(whole.links);
  expect(made.proposed('feed-amp')).toMatchObject({ rule: 'supply' });
});

test('with all of a way written nothing is added to it', () => {
  const { whole, made } = oneAmp('battery-tail', 'feed-amp');
  expect(made.links).toEqual(whole.links);
  expect(['battery-tail', 'feed-amp'].flatMap((id) => made.proposed(id) ?? [])).toEqual([]);
});

test('ways of a block that are written leave its feed proposed, sized for all behind it', () => {
  const { whole, made } = twoAmps('feed-amp-front', 'feed-amp-sub', 'feed-dsp');
  expect(made.problems).toEqual([]);
  const fromBattery = (links: Readonly<Record<string, string>>) =>
    Object.values(links)
      .filter((ends) => /main-fuse/.test(ends))
      .toSorted();
  expect(fromBattery(made.links)).toEqual(fromBattery(whole.links));
});

test('one way of a block that is written leaves those of the others and its feed proposed', () => {
  const { whole, made } = twoAmps('feed-amp-sub');
  expect(made.problems).toEqual([]);
  expect(new Set(Object.values(made.links).map((ends) => ends.replace(/OUT[\d|OUT]*/g, 'OUT')))).toEqual(
    new Set(Object.values(whole.links).map((ends) => ends.replace(/OUT[\d|OUT]*/g, 'OUT'))),
  );
});

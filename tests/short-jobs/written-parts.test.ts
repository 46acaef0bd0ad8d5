import { describe, expect, test } from 'vitest';
import { changed, linksOf } from './links-of.ts';

/** The estate with a part more that its job writes no link of. */
const estateWith = (device: string) => changed('estate-side-well', ['  level: {', `  ${device}\n  level: {`]);
const proposedDevices = (text: string): readonly string[] =>
  (linksOf(text).job?.proposals ?? []).flatMap(({ path: [first, id = ''], ...rest }) =>
    first === 'devices' && 'value' in rest && id !== '' ? [id] : [],
  );

describe('a block that the job has and does not link', () => {
  test('beside the battery feeds the board from there, and no second one is proposed', () => {
    const text = estateWith('block: { part: dist-fused-2-tap, in: battery-side }');
    const { links, problems } = linksOf(text);
    expect(problems).toEqual([]);
    expect(links.feed).toMatch(/ block\.IN$/);
    for (const device of ['amp-front', 'amp-sub', 'dsp'])
      expect(links[`feed-${device}`]).toMatch(new RegExp(`^block\\.\\S+ ${device}\\.B\\+$`));
    expect(proposedDevices(text).filter((id) => id.startsWith('dist'))).toEqual([]);
  });

  test('beside the battery feeds one device alone too', () => {
    const { links, problems } = linksOf(
      changed('under-seat-five', [
        '  front: {',
        '  block: { part: dist-fused-4, in: battery-side }\n  front: {',
      ]),
    );
    expect(problems).toEqual([]);
    expect(links.feed).toMatch(/ block\.IN$/);
    expect(links['feed-amp']).toMatch(/^block\.OUT.* amp\.B\+$/);
  });

  test('on the board goes before one in another place', () => {
    const { links } = linksOf(
      estateWith(
        'far: { part: dist-fused-2-tap, in: battery-side, title: Spare }\n  block: { part: dist-fused-2-tap, on: board }',
      ),
    );
    expect(links['feed-amp-front'] ?? '').not.toMatch(/^far\./);
  });

  test('whose ways are too small for what is to be fed is told, with the reason', () => {
    const { job, problems } = linksOf(estateWith('block: { part: dist-blade-4, in: battery-side }'));
    expect(job).toBeNull();
    expect(problems).toEqual([
      expect.stringMatching(
        /^nothing is linked to block: its free ways \(standard blade\) have no fuse, conductor and port for all of .*amp-sub \(\d.* A\).* together; write its links, take block out, or write its terminals under left-open: with the reason$/,
      ),
    ]);
  });

  test('with all terminals left open by hand is not asked about', () => {
    const text = estateWith('block: { part: dist-plain-2, in: battery-side }').replace(
      '\nboards:',
      '\nleft-open: { block.IN: spare, block.OUT1: spare, block.OUT2: spare }\n\nboards:',
    );
    expect(linksOf(text).problems).toEqual([]);
  });
});

describe('a part that the job has where nothing can use it', () => {
  test.each([
    [
      'holder: { part: holder-large-inline, in: dash }',
      /holder: the fuse of a battery stands beside it \(battery-side\), and this holder stands in dash/,
    ],
    ['bar: { part: ground-bar-4, in: dash }', /bar: no ground lead that is proposed ends in dash/],
    ['block: { part: dist-plain-2, in: battery-side }', /block: it has no fused ways/],
  ])('is told: %s', (device, says) => {
    const { problems } = linksOf(estateWith(device));
    expect(problems).toEqual([expect.stringMatching(says)]);
  });
});

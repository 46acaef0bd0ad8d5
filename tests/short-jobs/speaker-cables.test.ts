import { expect, test } from 'vitest';
import type { SourceFile } from '../../lib/model/content/source-file.ts';
import { changed, instead, linksOf } from './links-of.ts';
import { readShort, shop } from './short-shop.ts';
import { speakerLevelShop } from './speaker-level-shop.ts';

const pair = (awg: number, insulation = 80) =>
  `  pair-${awg}:
    kind: cable
    title: "Speaker wire, 2 x ${awg} AWG"
    form: multi-conductor
    conductors: { black: { size: ${awg} AWG, colour: BK }, red: { size: ${awg} AWG, colour: RD } }
    insulation: ${insulation} C
    for: [speaker]
    outside-diameter: 6 mm
`;

/** The demo shop with two-conductor speaker wire in its catalogue, and lengths of it on the shelf. */
function shopOf(parts: string, stock: string): readonly SourceFile[] {
  return shop.map((file) => {
    if (file.path.endsWith('parts/cable.yaml'))
      return { ...file, text: instead(file.text, 'parts:\n', `parts:\n${parts}`) };
    if (!file.path.endsWith('shop.yaml')) return file;
    return { ...file, text: instead(file.text, '\nstock:\n', `\nstock:\n${stock}`) };
  });
}

/** The speaker links of the short job of one five-channel amplifier, each with the part of its cable. */
function cabled(files: readonly SourceFile[], job = changed('under-seat-five')) {
  const { job: read, problems } = linksOf(job, files);
  expect(problems).toEqual([]);
  const { links = {}, cables = {} } = read?.file ?? {};
  return Object.fromEntries(
    Object.entries(links).flatMap(([id, { cable, conductors }]) =>
      /^to-(front|rear|sub)/.test(id)
        ? [[id, cable === undefined ? null : [cables[cable]?.part, ...(conductors ?? [])].join(' ')]]
        : [],
    ),
  );
}

const doors = ['to-front-left', 'to-front-right', 'to-rear-left', 'to-rear-right'];
const eachDoor = (cable: string | null) => Object.fromEntries(doors.map((id) => [id, cable]));

test('pairs to speakers each take a lead of two conductors from the shelf, black as the minus', () => {
  const all = cabled(
    shopOf(pair(16) + pair(12), '  pair-16: { reels: [150 ft] }\n  pair-12: { reels: [50 ft] }\n'),
  );
  // A bass lead into 4 ohm is 12 AWG (common practice, no source).
  expect(all).toEqual({ ...eachDoor('pair-16 red black'), 'to-sub': 'pair-12 red black' });
});

test('a bass lead that the shelf has too thin alone stays two single conductors', () => {
  const all = cabled(shopOf(pair(16), '  pair-16: { reels: [150 ft] }\n'));
  expect(all).toEqual({ ...eachDoor('pair-16 red black'), 'to-sub': null });
});

test('what the catalogue has and the shelf has not is not proposed', () => {
  expect(cabled(shopOf(pair(16), ''))).toEqual({ ...eachDoor(null), 'to-sub': null });
});

test('leads are cut from one piece each: once the reel is used up, the next pair is single conductors', () => {
  const all = cabled(shopOf(pair(16), '  pair-16: { reels: [30 ft] }\n'));
  const count = Object.values(all).filter((one) => one !== null).length;
  expect(count).toBeGreaterThan(0);
  expect(count).toBeLessThan(doors.length);
});

test('a cable whose insulation withstands no more than the cabin or a door has is not taken there', () => {
  const [cool, warm, hot] = [50, 60, 75].map((insulation) =>
    cabled(shopOf(pair(16, insulation), '  pair-16: { reels: [150 ft] }\n')),
  );
  // The cabin counts as 50 C, and a door in the sun as the roof, 70 C (common practice, no source).
  expect(cool).toMatchObject(eachDoor(null));
  expect(warm).toMatchObject({ 'to-front-left': null, 'to-rear-left': 'pair-16 red black' });
  expect(hot).toMatchObject(eachDoor('pair-16 red black'));
});

test('a lead is as thick as its loss asks for: the thinner reel is passed over where it loses more than the house allows', () => {
  const files = shopOf(
    pair(18) + pair(16),
    '  pair-18: { reels: [150 ft] }\n  pair-16: { reels: [150 ft] }\n',
  );
  const strict = files.map((file) =>
    file.path.endsWith('shop.yaml')
      ? { ...file, text: instead(file.text, '\nrules:\n', '\nrules:\n  speaker-loss: 0.3 dB\n') }
      : file,
  );
  const used = (from: readonly SourceFile[]) => new Set(Object.values(cabled(from)));
  expect(used(files)).toContain('pair-18 red black');
  expect(used(strict)).toContain('pair-16 red black');
});

test('what is written stays: a link of the job keeps its single conductors', () => {
  const job = `${changed('under-seat-five')}
links:
  to-rear-left: { from: amp.CH3, to: rear-left.C1, size: 14 AWG }
`;
  const all = cabled(shopOf(pair(16), '  pair-16: { reels: [150 ft] }\n'), job);
  expect(all['to-rear-left']).toBeNull();
  expect(all['to-front-left']).toBe('pair-16 red black');
});

test('a link that the job writes and says no conductor of lies in the cable that a proposed one would', () => {
  const files = shopOf(pair(16), '  pair-16: { reels: [150 ft] }\n');
  const job = `${changed('under-seat-five')}
links:
  rear: { from: amp.CH3, to: rear-left.C1 }
  front-a: { from: amp.CH1+, to: front-left.C1+ }
  front-b: { from: amp.CH1-, to: front-left.C1- }
`;
  const { job: read, problems, links } = linksOf(job, files);
  expect(problems).toEqual([]);
  const laid = (id: string) => read?.file.links[id]?.conductors;
  const cableOf = (id: string) => read?.file.links[id]?.cable ?? '';
  expect(laid('rear')).toEqual(['red', 'black']);
  // Each alone is one conductor; together they are one lead.
  expect([laid('front-a'), laid('front-b')]).toEqual([['red'], ['black']]);
  expect(cableOf('front-a')).toBe(cableOf('front-b'));
  expect(cableOf('front-a')).not.toBe(cableOf('rear'));
  expect(read?.file.cables[cableOf('rear')]?.part).toBe('pair-16');
  // What was written stays as it is but for that, and the cable is told as proposed.
  expect(links.rear).toBe('amp.CH3 rear-left.C1');
  expect(read?.proposals.filter(({ path }) => path[1] === 'rear').map(({ path }) => path.join('.'))).toEqual([
    'links.rear.cable',
    'links.rear.conductors',
  ]);
});

test('a later revision leaves a written link in the cable that it was built with, whatever the shelf has by then', () => {
  const files = shopOf(pair(16), '  pair-16: { reels: [150 ft] }\n');
  const job = `${changed('under-seat-five')}
links:
  rear: { from: amp.CH3, to: rear-left.C1 }
`;
  const first = linksOf(job, files).job;
  const built = {
    ...{ revision: 'A', items: {}, places: {}, boards: {}, wires: {} },
    proposals: first?.proposals ?? [],
  };
  const empty = shopOf(pair(16), '');
  const later = (text: string) =>
    readShort(instead(text, '\ntitle: ', '\nrevision: B\ntitle: '), { labels: {}, built: [built] }, empty).job
      ?.file;
  const cableOf = (file: ReturnType<typeof later>) => file?.cables[file.links.rear?.cable ?? '']?.part;
  expect(cableOf(later(job))).toBe('pair-16');
  expect(cableOf(later(instead(job, 'rear-left.C1 }', 'rear-left.C1, size: 16 AWG }')))).toBeUndefined();
});

test('a written plus without its minus stays a single conductor', () => {
  const files = shopOf(pair(16), '  pair-16: { reels: [150 ft] }\n');
  const job = `${changed('under-seat-five')}
links:
  plus: { from: amp.CH1+, to: front-left.C1+ }
  minus: { from: amp.CH1-, to: front-left.C1-, colour: BK }
`;
  const { job: read } = linksOf(job, files);
  expect(read?.file.links.plus?.cable).toBeUndefined();
  expect(read?.file.links.minus?.cable).toBeUndefined();
});

/** The same with nothing of single speaker wire on the shelf. */
const withoutSingles = (files: readonly SourceFile[]) =>
  files.map((file) =>
    file.path.endsWith('shop.yaml')
      ? { ...file, text: file.text.replaceAll(/^ {2}wire-speaker-.*reels.*\n/gm, '') }
      : file,
  );

test('the jumper of two coils is a lead of two conductors only where the shelf has no single ones', () => {
  const files = shopOf(
    pair(16) + pair(12),
    '  pair-16: { reels: [150 ft] }\n  pair-12: { reels: [50 ft] }\n',
  );
  const jumper = (from: readonly SourceFile[]) => {
    const { job, problems } = linksOf(changed('under-seat-five', ['-10-single-4', '-12-dual-4']), from);
    expect(problems).toEqual([]);
    const [id = ''] = Object.keys(job?.file.links ?? {}).filter((name) => /jumper/.test(name));
    const cable = job?.file.links[id]?.cable;
    expect(id).not.toBe('');
    return cable === undefined ? null : job?.file.cables[cable]?.part;
  };
  expect(jumper(files)).toBeNull();
  expect(jumper(withoutSingles(files))).toBe('pair-12');
});

test('the pairs of a source lie in the cable that is on the shelf, the turn-on beside them where it has no conductor for it', () => {
  const names = ['white', 'grey', 'green', 'violet'].flatMap((one) => [one, `${one}-black`]);
  const four = `  four-pairs:
    kind: cable
    title: "Signal cable, 4 pairs, 20 AWG"
    form: twisted-pair
    conductors: { ${names.map((name, n) => `${name}: { size: 20 AWG, colour: ${['WH', 'WH/BK', 'GY', 'GY/BK', 'GN', 'GN/BK', 'VT', 'VT/BK'][n]} }`).join(', ')} }
    insulation: 80 C
    for: [signal]
    outside-diameter: 9 mm
`;
  const cables = (nine: string, more: string) => {
    const files = speakerLevelShop().map((file) => {
      if (file.path.endsWith('parts/cable.yaml'))
        return { ...file, text: instead(file.text, 'parts:\n', `parts:\n${four}`) };
      if (!file.path.endsWith('shop.yaml')) return file;
      const text = instead(file.text, '  cable-nine-18: { reels: [200 ft, 14 ft] }\n', nine);
      return { ...file, text: instead(text, '\nstock:\n', `\nstock:\n${more}`) };
    });
    const { job, problems } = linksOf(changed('under-seat-five'), files);
    expect(problems).toEqual([]);
    const turnOn = Object.entries(job?.file.links ?? {}).find(([id]) => id.startsWith('turn-on'));
    return {
      part: job?.file.cables['source-cable']?.part,
      turnOn: turnOn?.[1].cable ?? null,
    };
  };
  const nine = '  cable-nine-18: { reels: [200 ft, 14 ft] }\n';
  const shelf = '  four-pairs: { reels: [60 ft] }\n';
  expect(cables(nine, shelf)).toEqual({ part: 'cable-nine-18', turnOn: 'source-cable' });
  expect(cables('', shelf)).toEqual({ part: 'four-pairs', turnOn: null });
  // Too short on the shelf, and none there at all: what the catalogue has, as before.
  expect(cables('', '  four-pairs: { reels: [3 ft] }\n').part).toBe('cable-nine-18');
  expect(cables('', '').part).toBe('cable-nine-18');
});

test('speaker-level pairs beside supply wires are twisted where the shelf has a piece for each, and not elsewhere', () => {
  const signal = (side: string, stock: string) => {
    const files = speakerLevelShop().map((file) => {
      if (file.path.endsWith('hatchback.yaml'))
        return {
          ...file,
          text: instead(
            file.text,
            `    side: middle\n    ends: [source-unit]`,
            `    side: ${side}\n    ends: [source-unit]`,
          ),
        };
      if (!file.path.endsWith('content/shop.yaml')) return file;
      return { ...file, text: instead(file.text, '  cable-twisted-pair-20: { reels: [150 ft] }', stock) };
    });
    const { job, problems } = linksOf(changed('under-seat-five'), files);
    expect(problems).toEqual([]);
    const { cables = {}, links = {} } = job?.file ?? {};
    const laid = Object.entries(links).filter(
      ([id]) => id.startsWith('in-front') || id.startsWith('in-rear'),
    );
    const reasons = (job?.proposals ?? [])
      .map(({ reason }) => reason)
      .filter((one) => /twisted pair/.test(one));
    return { parts: laid.map(([, { cable }]) => cables[cable ?? '']?.part), reasons };
  };
  const reel = '  cable-twisted-pair-20: { reels: [150 ft] }';
  const four = (part: string) => [part, part, part, part];
  const beside = signal('left', reel);
  expect(beside.parts).toEqual(four('cable-twisted-pair-20'));
  expect(beside.reasons[0]).toMatch(/lies beside the supply of .*a twist keeps its noise out/);
  expect(signal('right', reel)).toEqual({ parts: four('cable-nine-18'), reasons: [] });
  expect(signal('left', '  cable-twisted-pair-20: { reels: [12 ft] }').parts).toEqual(four('cable-nine-18'));
});

import { describe, expect, test } from 'vitest';
import { changed, linksOf } from './links-of.ts';
import { readShort, shop, shortJobs, shortText } from './short-shop.ts';

/** A short job with something written otherwise, and what is then asked: where, in which words, with which remedy. */
interface Asked {
  readonly name: string;
  readonly job: string;
  readonly change: readonly [from: string, to: string];
  readonly at: string;
  readonly says: RegExp;
  readonly toDo: RegExp;
}

const asked: readonly Asked[] = [
  {
    name: 'two amplifiers could drive a group',
    job: 'estate-side-well',
    change: ['in: [left-pillar, right-pillar], driven-by: amp-front', 'in: [left-pillar, right-pillar]'],
    at: '/devices/tweeter',
    says: /^tweeter could be driven by amp-front or amp-sub$/,
    toDo: /^write driven-by: with one of them$/,
  },
  {
    name: 'six speakers on four channels',
    job: 'open-boat',
    change: ['  stern:', '  cabin: { part: coaxial-65, in: [port-bow, starboard-bow] }\n  stern:'],
    at: '/devices/stern',
    says: /amp has 4 channels, and bow, cabin and stern are 6 speakers/,
    toDo: /channels: to put two on one/,
  },
  {
    name: 'six speakers on four channels, where their parts come with a crossover of the catalogue',
    job: 'open-boat',
    change: [
      '  stern:',
      '  tops: { part: tweeter-25, in: [port-bow, starboard-bow] }\n  lows: { part: midbass-65, in: [port-bow, starboard-bow] }\n  stern:',
    ],
    at: '/devices/stern',
    says: /are 8 speakers/,
    toDo: /xover: \{ part: .*, in: \[the places of .*driven-by: xover at tops and lows; or drive a group/,
  },
  {
    name: 'a place that no route serves',
    job: 'van-three-way',
    change: ['in: battery-side }', 'in: dash }'],
    at: '/devices/isolator',
    says: /^no way of van leads from battery-side to dash, nor do several that meet$/,
    toDo: /write it under routes: of van, such as battery-side-to-dash: \{ .*ends: \[battery-side, dash\], passes: \[.* \d+ (in|mm)\] \}/,
  },
  {
    name: 'two ground points',
    job: 'camper-wardrobe',
    change: ['    ground: floor-rear-left\n', ''],
    at: '/boards/board',
    says: /^board could go to ground at floor-rear-left or floor-front-left$/,
    toDo: /^write ground: with one of them$/,
  },
  {
    name: 'speaker outputs into an amplifier of line level',
    job: 'camper-wardrobe',
    change: ['part: amp-small-two', 'part: amp-two'],
    at: '/devices/amp-front',
    says: /source-unit gives speaker outputs and amp-front takes line level only/,
    toDo: /add a processor or a converter with speaker-level inputs/,
  },
  {
    name: 'two places on one side',
    job: 'under-seat-five',
    change: ['in: [left-door, right-door]', 'in: [left-door, left-rear]'],
    at: '/devices/front/in',
    says: /^front: left-door and left-rear are both on the left$/,
    toDo: /^write two devices with names of their own$/,
  },
  {
    name: 'a tweeter whose band no crossover of the amplifier makes',
    job: 'open-boat',
    change: ['bow: { part: coaxial-65', 'bow: { part: tweeter-25'],
    at: '/devices/bow',
    says: /^bow plays from 3000 Hz, and amp can set 50 Hz to 500 Hz$/,
    toDo: /add a processor/,
  },
  {
    name: 'places without a row, and no processor',
    job: 'under-seat-five',
    change: ['in: [left-door, right-door]', 'in: [cargo-floor]'],
    at: '/devices/front',
    says: /^front: its places have no row, and there is no processor$/,
    toDo: /^write row: front at cargo-floor, or row: rear, under places: in content\/vehicles\/\S+\.yaml; or signal: front at front, or signal: rear$/,
  },
  {
    name: 'a lithium battery beside a flooded one',
    job: 'van-three-way',
    change: ['part: battery-agm-60', 'part: battery-lithium-test'],
    at: '/devices/second-battery',
    says: /^second-battery is lithium and starter-battery absorbed glass mat$/,
    toDo: /^name a charger between them$/,
  },
  {
    name: 'a board without a place, whose fixings can not be known',
    job: 'one-bass-amplifier',
    change: ['    at: { x: 1 in, y: 1 in }\n', ''],
    at: '/boards/board',
    says: /has no place in its space/,
    toDo: /write at:/,
  },
  {
    name: 'a subwoofer of 2 ohm at an amplifier for 4 ohm',
    job: 'one-bass-amplifier',
    change: ['amp: { part: amp-mono-400', 'amp: { part: amp-mono-4-ohm'],
    at: '/devices/sub',
    says: /^sub can't be wired for amp: with like power in all coils they give 2 or 8 ohm, and 16 ohm is its least$/,
    toDo: /use an amplifier for that load/,
  },
  {
    name: 'no turn-on output',
    job: 'open-boat',
    change: [
      'amp: { part: amp-four, on: board }',
      'amp: { part: amp-four, on: board, driven-by: radio }\n  radio: { part: source-mute, in: battery-box }',
    ],
    at: '/devices/amp',
    says: /^nothing switches amp on: radio has no turn-on output$/,
    toDo: /left-open: \{ amp\.REM: .*links: \{ turn-on-amp: \{ from: AMPLIFIER\.REM-OUT, to: amp\.REM \} \}.*goes off with the ignition, through a fuse/,
  },
];

test.each(asked)('asked: $name', ({ job, change, at, says, toDo }) => {
  const { job: read, problems } = readShort(changed(job, change));
  expect(read).toBeNull();
  const own = problems.filter(({ message }) => says.test(message));
  expect(own, problems.map(({ message }) => message).join('\n')).not.toEqual([]);
  expect(own[0]?.where.path).toBe(at);
  expect(own[0]?.remedy).toMatch(toDo);
});

// A source without a turn-on output, an amplifier that turns itself on, and a fan of 0.15 A on its board.
describe('what no source switches on', () => {
  const mute = changed('open-boat', [
    'amp: { part: amp-four, on: board }',
    'amp: { part: amp-four, on: board, driven-by: radio }\n  fan: { part: fan-80, on: board }\n  radio: { part: source-mute, in: battery-box }\n  main-fuse: { part: holder-large-inline, in: battery-box }\n  radio-fuse: { part: holder-mini-blade, in: battery-box }',
  ]);
  const [rem, gain] = ['      REM: { role: turn-on-in, panel: right, at: 2 in', '      GAIN-12: '];
  const selfOn = (giving: string) =>
    linksOf(
      mute,
      shop.map((file) => {
        if (!file.path.endsWith('parts/amplifiers.yaml')) return file;
        const [before = '', after = ''] = file.text.split('\n  amp-four:\n');
        const own = after
          .replace(rem, `      REM-OUT: { role: turn-on-out, panel: right, current: ${giving} }\n${rem}`)
          .replace(
            gain,
            `      TURN-ON: { what: turn-on-mode, panel: face, positions: [AUTO, REM], automatic: [AUTO] }\n${gain}`,
          );
        return { ...file, text: `${before}\n  amp-four:\n${own}` };
      }),
    );

  test('turns itself on where its part tells it, and turns on what its output has current for', () => {
    const { job, links, problems } = selfOn('150 mA');
    expect(problems).toEqual([]);
    expect(job?.file['left-open']['amp.REM']).toMatch(/amp turns itself on by TURN-ON at AUTO/);
    expect(links['turn-on-fan']).toBe('amp.REM-OUT fan.+');
  });

  test('is asked for where the output gives less', () => {
    const { job, problems } = selfOn('140 mA');
    expect(job).toBeNull();
    expect(problems.join('\n')).toMatch(
      /nothing switches fan on: .*links: \{ turn-on-fan: \{ from: amp\.REM-OUT, to: fan\.\+ \} \}/,
    );
  });
});

test('what is written governs: a link stays as it is, and the rest is proposed round it', () => {
  const written = shortText('under-seat-five').replace(
    '\nboards:',
    '\nlinks:\n  door: { from: amp.CH3, to: front-left.C1, length: 12 ft }\n\nboards:',
  );
  const { job, problems } = readShort(written);
  expect(problems.map(({ message }) => message)).toEqual([]);
  expect(job?.file.links.door).toMatchObject({ from: 'amp.CH3', to: 'front-left.C1' });
  expect(Object.keys(job?.file.links ?? {})).not.toContain('to-front-left');
  // Three channels are left for three speakers, in the order of the part.
  const ends = Object.fromEntries(Object.entries(job?.file.links ?? {}).map(([id, { from }]) => [id, from]));
  expect(ends).toMatchObject({
    'to-front-right': 'amp.CH1',
    'to-rear-left': 'amp.CH2',
    'to-rear-right': 'amp.CH4',
  });
});

test('an error of one rule leaves what other rules propose', () => {
  const { problems } = readShort(
    shortText('estate-side-well')
      .replace('    ground: side-well-left\n', '')
      .replace(', driven-by: amp-sub', ''),
  );
  expect(problems.length).toBeGreaterThanOrEqual(1);
});

/** Each place that a job names, with where it stands in the text. */
function placesIn(text: string) {
  return [...text.matchAll(/\bin: (?:\[([^\]]*)\]|([a-z-]+))/g)].flatMap(
    ({ 0: whole, 1: list, 2: one = '', index }) =>
      [...(list ?? one).matchAll(/[a-z-]+/g)].map((name) => ({
        name: name[0],
        at: index + whole.indexOf(list ?? one) + name.index,
      })),
  );
}

test.each(shortJobs)('a place of %s that the vehicle has not is one error, where it is written', (id) => {
  const text = shortText(id);
  const places = placesIn(text);
  expect(places.length).toBeGreaterThan(0);
  for (const { name, at } of places) {
    const { job, problems } = readShort(`${text.slice(0, at)}${name}x${text.slice(at + name.length)}`);
    expect(job).toBeNull();
    expect(problems.map(({ message }) => message)).toEqual([
      expect.stringMatching(new RegExp(`^there is no place of \\S+ "${name}x"$`)),
    ]);
    const before = text.slice(0, at).split('\n');
    expect(problems[0]?.where).toMatchObject({
      line: before.length,
      column: (before.at(-1)?.length ?? 0) + 1,
    });
  }
});

test('two places that the vehicle has not are two errors, and what is wrong beside them is told too', () => {
  const text = shortText('under-seat-five')
    .replace('[left-door, right-door]', '[left-doox, nowhere]')
    .replace('part: coaxial-525', 'part: coaxial-526');
  const { problems } = readShort(text);
  expect(problems.map(({ message }) => message)).toEqual([
    'there is no place of hatchback "left-doox"',
    'there is no place of hatchback "nowhere"',
    'there is no part "coaxial-526"',
  ]);
});

test.each([
  ['in: nowhere', /^there is no place of hatchback "nowhere"$/],
  ['on: boarx', /^there is no board "boarx"$/],
])(
  'an amplifier that stands nowhere, %s, is one error: neither ways nor a ground point are asked for',
  (where, says) => {
    const { problems } = readShort(
      shortText('under-seat-five').replace('amp-five, on: board', `amp-five, ${where}`),
    );
    expect(problems.map(({ message }) => message)).toEqual([expect.stringMatching(says)]);
  },
);

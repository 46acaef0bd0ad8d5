import { describe, expect, test } from 'vitest';
import { changed, linksOf as linksIn, shopWith } from './links-of.ts';
import { shop } from './short-shop.ts';

const isolator = '  isolator: { part: isolating-relay-200, in: battery-side }\n';
const charger = '  charger: { part: charger-12-30, in: battery-tray }\n';
const signal = '\nleft-open:\n  charger.REM: its maker lets it sense the charging voltage\n\nboards:';

/** Batteries whose short circuits a small fuse interrupts: no larger one is made within what the charger's maker sets. */
const flooded = shopWith('van.yaml', 'part: battery-agm-80', 'part: battery-flooded-70');
const second = ['part: battery-agm-60', 'part: battery-flooded-60'] as const;
/** The catalogue without fuses of Class T below 80 A. */
const withoutSmallClassT = shop.map(({ path, text }) => ({
  path,
  text: path.endsWith('parts/fuses.yaml')
    ? text.replaceAll(/^ +fuse-class-t-\d\d:(?! .*80 A).*\n/gm, '')
    : text,
}));
const linksOf = (text: string) => linksIn(text, flooded);

const charged = changed('van-three-way', [isolator, charger], second, ['\nboards:', signal]);

describe('a charger between two batteries', () => {
  test('is fed over a fuse beside the one, and charges the other over a fuse beside it', () => {
    const { links, problems, proposed } = linksOf(charged);
    expect(problems).toEqual([]);
    expect(links).toMatchObject({
      'tail-starter-battery': 'starter-battery.POS fuse-starter-battery.IN',
      'feed-charger': 'fuse-starter-battery.OUT charger.IN+',
      'charge-second-battery': 'charger.OUT+ fuse-second-battery.OUT',
      'tail-second-battery': 'second-battery.POS fuse-second-battery.IN',
      'ground-charger': 'charger.GND body.floor-left',
    });
    expect(links['battery-link']).toBeUndefined();
    expect(proposed('feed-charger')).toMatchObject({ rule: 'supply', mark: 'cp' });
    expect(proposed('charge-second-battery')?.reason).toMatch(/a source as well/);
  });

  test('each of its fuses stands beside its battery', () => {
    const { job } = linksOf(charged);
    const seatOf = (id: string) => job?.file.devices[id]?.in;
    expect(seatOf('fuse-starter-battery')).toBe('battery-side');
    expect(seatOf('fuse-second-battery')).toBe('battery-tray');
  });

  test('is told by nobody that the engine runs: that is asked', () => {
    const { job, problems } = linksOf(changed('van-three-way', [isolator, charger], second));
    expect(job).toBeNull();
    expect(problems).toEqual([
      expect.stringMatching(
        /^nothing tells charger that the engine runs; write a link to charger\.REM from a switched and fused feed/,
      ),
    ]);
  });

  test('that starts by the charging voltage may stay without that signal, with the reason', () => {
    const own = flooded.map((one) =>
      one.path.endsWith('parts/chargers.yaml')
        ? {
            ...one,
            text: one.text.replace(
              '    kind: charger\n',
              '    kind: charger\n    starts-by: charging-voltage\n',
            ),
          }
        : one,
    );
    const { job, problems } = linksIn(changed('van-three-way', [isolator, charger], second), own);
    expect(problems).toEqual([]);
    expect(job?.file['left-open']['charger.REM']).toBe(
      'it starts by the charging voltage that it sees itself',
    );
  });

  test('is linked as it is written, and nothing is proposed beside it', () => {
    const feed = '\nlinks:\n  in: { from: starter-battery.POS, to: charger.IN+, length: 12 in }\nboards:';
    const { job, problems } = linksOf(
      changed('van-three-way', [isolator, charger], second, ['\nboards:', feed]),
    );
    expect(job).toBeNull();
    expect(problems).toEqual([
      'charger stands between starter-battery and second-battery, and its links do not join them; write the rest of its links, or none of them',
    ]);
  });

  test('is fed by a holder that stands beside the battery and has no links', () => {
    const holder = `${charger}  link-fuse: { part: holder-large-inline, in: battery-side }\n`;
    const { links, job } = linksOf(
      changed('van-three-way', [isolator, holder], second, ['\nboards:', signal]),
    );
    expect(links['feed-charger']).toBe('link-fuse.OUT charger.IN+');
    expect(Object.keys(job?.file.devices ?? {})).not.toContain('fuse-starter-battery');
  });

  test('is not fused by what does not interrupt the short circuit of its batteries', () => {
    const text = changed('van-three-way', [isolator, charger], ['\nboards:', signal]);
    const { job, problems } = linksIn(text, withoutSmallClassT);
    expect(job).toBeNull();
    // One of Class T is made for what its maker sets.
    expect(linksIn(text).job?.file.devices['fuse-starter-battery']?.part).toBe('holder-class-t');
    // By hand: 36.9 A x 1.25 = 46.1 A.
    expect(problems[0]).toMatch(
      /no fuse holder of the catalogue suffices at starter-battery for 36\.9 A at 13\.8 V: asked for is a fuse of 46\.1 A to 60 A that interrupts 3600 A/,
    );
    expect(problems[0]).toMatch(
      /maxi blade: the 50 A fuse interrupts 1000 A; small bolt-in: the 50 A fuse interrupts 2000 A/,
    );
    expect(problems[0]).toMatch(/Class T: fuses of 80 to 300 A, on the shelf none/);
    expect(problems[0]).toMatch(
      /devices: \{ fuse-starter-battery: \{ part: holder-maxi, in: battery-side \} \}$/,
    );
  });
});

import { describe, expect, test } from 'vitest';
import type { Job } from '../../../lib/model/content/resolved-job.ts';
import type { ConductorRole } from '../../../lib/model/vocabulary.ts';
import type { SizedConductor } from '../../../lib/plan/power/sizing/conductor-sizing.ts';
import { candidatesFor } from '../../../lib/plan/wiring/cable-candidates.ts';
import { conductorRole, terminalRole } from '../../../lib/plan/wiring/conductor-role.ts';
import { refusal } from '../../../lib/plan/wiring/end-remarks.ts';
import { colourPairs } from '../../../lib/plan/wiring/pair-colours.ts';
import { speakerConductors, speakerSigns } from '../../../lib/plan/wiring/speaker-conductors.ts';
import { inJob } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { byId, jobOf } from '../plan-small-shop.ts';
import { inParts } from '../shop-changes.ts';
import { small } from './small-wiring.ts';

const shop = (...changes: readonly Change[]) => {
  const job = jobOf(smallShop(...changes));
  const devices = new Map(job.devices.map((device) => [device.id, device]));
  return { job, devices, link: (id: string) => byId(job.links, id) };
};

describe('what a conductor carries', () => {
  test('follows from the terminals at its ends', () => {
    const { devices, job } = shop();
    expect(
      Object.fromEntries(job.links.map((link) => [link.id, conductorRole(devices, link)])),
    ).toMatchObject({
      ...{ tail: 'power', feed: 'power', ground: 'ground', 'turn-on': 'turn-on', signal: 'signal' },
      ...{ 'speaker.+': 'speaker', 'speaker.-': 'speaker' },
    });
    expect(terminalRole(devices, { device: 'amp', terminal: 'REM' })).toBe('turn-on-in');
    expect(() => terminalRole(devices, { device: 'amp', terminal: 'NONE' })).toThrow('amp.NONE');
  });
});

describe('the reels that a link may be cut from', () => {
  const reels = (role: ConductorRole, ...changes: readonly Change[]) => {
    const { job, link } = shop(...changes);
    return candidatesFor(job, link('feed'), role).map(({ part }) => part);
  };
  const asking = (more: string) => inJob('to: amp.B+ }', `to: amp.B+, ${more} }`);

  test('are those made for what it carries, of the size and the colour that the job asks for', () => {
    expect(reels('power')).toEqual(['red-4', 'red-8']);
    expect(reels('ground')).toEqual(['black-4', 'black-8']);
    expect(reels('power', asking('size: 8 AWG'))).toEqual(['red-8']);
    expect(reels('power', asking('colour: BK'))).toEqual([]);
  });

  test('are the one that the job names, whatever that is for; and the size alone where no reel has it', () => {
    expect(reels('power', asking('wire: black-8'))).toEqual(['black-8']);
    expect(reels('power', asking('size: 2 AWG'))).toEqual(['']);
  });
});

describe('the sign of a speaker conductor', () => {
  const signs = (job: Job) => speakerSigns(job, new Map(job.links.map(({ id }) => [id, 'speaker' as const])));
  /** The woofer has two coils, each of its conductors a link of its own. */
  const coils = (links: string) =>
    shop(
      inParts(
        'coils: { C1: { positive: C1+, negative: C1-, nominal: 4 ohm } }',
        'coils: { C1: { positive: C1+, negative: C1-, nominal: 4 ohm }, C2: { positive: C2+, negative: C2-, nominal: 4 ohm } }',
      ),
      inParts(
        'C1-: { role: coil-negative } }',
        'C1-: { role: coil-negative }, C2+: { role: coil-positive }, C2-: { role: coil-negative } }',
      ),
      inJob('  speaker: { from: amp.CH1, to: sub.C1, length: 3 ft }\n', links),
    ).job;
  const series =
    '  out: { from: amp.CH1+, to: sub.C1+, length: 3 ft }\n  between: { from: sub.C1-, to: sub.C2+, length: 6 in }\n  back: { from: sub.C2-, to: amp.CH1-, length: 3 ft }\n';

  test('is that of the amplifier, whichever way round the coil is joined and the link is written', () => {
    const crossed = coils(
      '  one: { from: amp.CH1+, to: sub.C1-, length: 3 ft }\n  other: { from: sub.C1+, to: amp.CH1-, length: 3 ft }\n',
    );
    expect([...signs(crossed)].filter(([id]) => ['one', 'other'].includes(id))).toEqual([
      ['one', '+'],
      ['other', '-'],
    ]);
  });

  test('is none from the minus of one coil to the plus of the next, and that of both where they agree', () => {
    const own = [...signs(coils(series))].filter(([id]) => ['out', 'between', 'back'].includes(id));
    expect(own).toEqual([
      ['out', '+'],
      ['back', '-'],
    ]);
    const beside = coils(
      '  speaker: { from: amp.CH1, to: sub.C1, length: 3 ft }\n  bridge: { from: sub.C1-, to: sub.C2-, length: 6 in }\n',
    );
    expect(signs(beside).get('bridge')).toBe('-');
  });

  test('makes pairs: what one link writes, what ends at one coil, the only plus and minus between two devices', () => {
    const pairsOf = (job: Job) => {
      const roles = new Map<string, ConductorRole>(
        job.links.map((link) => [
          link.id,
          /out|back|between|one|two|speaker|bridge/.test(link.id) ? 'speaker' : 'power',
        ]),
      );
      return speakerConductors(job, speakerSigns(job, roles));
    };
    expect(pairsOf(shop().job)).toEqual([{ positive: 'speaker.+', negative: 'speaker.-' }]);
    expect(pairsOf(coils(series))).toEqual([{ positive: 'out', negative: 'back' }]);
    const both = [1, 2].map(
      (n) =>
        `  one-${n}: { from: amp.CH1+, to: sub.C${n}+, length: 3 ft }\n  two-${n}: { from: amp.CH1-, to: sub.C${n}-, length: 3 ft }\n`,
    );
    expect(pairsOf(coils(both.join('')))).toEqual([
      { positive: 'one-1', negative: 'two-1' },
      { positive: 'one-2', negative: 'two-2' },
    ]);
    // Two plus and one minus between two devices: nobody knows which of them belong together.
    const odd = `${both[0]}  one-3: { from: amp.CH1+, to: sub.C1+, length: 3 ft }\n`;
    expect(pairsOf(coils(odd))).toEqual([]);
  });
});

describe('the colours of a pair', () => {
  const coloured = (change: (own: SizedConductor) => object) => {
    const { job, settled } = small();
    const all = new Map(
      [...settled.all].map(([id, own]) => {
        const bare = id === 'speaker.-' ? { ...own, cable: { ...own.cable, part: 'white-12' } } : own;
        return [id, id.startsWith('speaker') ? { ...bare, ...change(bare) } : own];
      }),
    );
    const found = colourPairs(job, all);
    return ['speaker.+', 'speaker.-'].map((id) => found.get(id)?.cable.part);
  };

  test('are chosen of what the job leaves open', () => {
    expect(coloured(() => ({}))).toEqual(['white-12', 'striped-12']);
  });

  test('stay as they are where no reel is for their use, or the pair came with the vehicle', () => {
    expect(coloured(() => ({ role: 'signal' }))).toEqual(['white-12', 'white-12']);
    expect(coloured(({ link }) => ({ link: { ...link, given: null } }))).toEqual(['white-12', 'white-12']);
  });
});

test('a port that refuses is told with what would do instead, or that another is wanted', () => {
  const refused = (alternatives: readonly string[]) =>
    refusal([], 'amp.B+', { prep: 'refused', reason: 'too thick', alternatives: [...alternatives] }, 'inch')
      .remedy;
  expect(refused(['a reducer', 'a thinner one'])).toBe('a reducer; or a thinner one');
  expect(refused([])).toBe('use another terminal');
});

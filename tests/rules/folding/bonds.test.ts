import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../lib/model/finding.ts';
import {
  type Bond,
  behindOpenEnd,
  conductorOfFuse,
  eachNamesTheOther,
  feedPassedBy,
  figureOfNetwork,
  groundBehindOpenEnd,
  isWired,
  otherEndOfLink,
  outputOfDevice,
  runOfFuse,
  runOfWire,
  sameDevice,
  sameReel,
  sameTerminal,
  stricterLimit,
  webOf,
  wireOfSubject,
} from '../../../lib/rules/folding/bonds.ts';
import type { Case } from '../../../lib/rules/rule.ts';
import { about, aboutContent, aboutPlan, entry } from '../case.ts';
import { fuse, wire } from '../changes.ts';
import { aFinding } from './a-finding.ts';

type More = Partial<Finding>;
const cause = (related: readonly string[], more: More = {}) =>
  aFinding('terminal-unaccounted', related, more);

/** Whether a bond holds in a case between what is about the ones and what is about the others. */
const holds =
  (bond: Bond, made: Case = about()) =>
  (ofCause: readonly string[], ofFollower: readonly string[], more: More = {}, moreOfCause: More = {}) =>
    bond(cause(ofCause, moreOfCause), cause(ofFollower, more), webOf(made, []));

describe('two findings are about one terminal', () => {
  test('by its name, or by a wire that ends there', () => {
    const bond = holds(sameTerminal);
    expect(bond(['amp-feed'], ['amp.B+'])).toBe(true);
    expect(bond(['amp-feed'], ['block.OUT1'])).toBe(true);
    expect(bond(['amp-feed'], ['dsp.B+'])).toBe(false);
    expect(bond(['amp-feed'], ['main'])).toBe(false);
  });

  test('but not for a point of the body, where many are grounded', () => {
    const bond = holds(
      sameTerminal,
      aboutContent(({ job }) => {
        entry(job.links, 'radio-ground').to = 'body.cargo';
      }),
    );
    expect(bond(['radio-ground'], ['board-ground'])).toBe(false);
    expect(bond(['radio-ground'], ['radio.GND'])).toBe(true);
  });
});

test('a wire hangs on a finding that names it, or a terminal at one of its ends', () => {
  const bond = holds(wireOfSubject);
  expect(bond(['amp.REM'], ['amp-rem'])).toBe(true);
  expect(bond(['amp.CH1+'], ['speaker-1'])).toBe(true);
  expect(bond(['amp-rem'], ['amp-rem'])).toBe(true);
  expect(bond(['dsp.REM-IN'], ['amp-rem'])).toBe(false);
});

test('an open speaker output, of either polarity, hangs on a channel of its amplifier', () => {
  const bond = holds(outputOfDevice);
  expect(bond(['amp.1'], ['amp.CH1+'])).toBe(true);
  expect(bond(['amp.1'], ['amp.CH1-'])).toBe(true);
  expect(bond(['amp.1'], ['amp.B+'])).toBe(false);
  expect(bond(['dsp.1'], ['amp.CH1-'])).toBe(false);
});

test('a run hangs on the fuse that protects one of its wires, and on no other', () => {
  const bond = holds(runOfFuse);
  expect(bond(['main-fuse'], ['left'])).toBe(true);
  expect(bond(['block.OUT1'], ['left'])).toBe(false);
  expect(bond(['main-fuse'], ['right'])).toBe(false);
});

test('a run hangs on a wire in it, where the device that is told of stands at an end of that wire', () => {
  const bond = holds(runOfWire);
  expect(bond(['main'], ['block', 'left'])).toBe(true);
  expect(bond(['main'], ['main-fuse', 'left'])).toBe(true);
  expect(bond(['main'], ['amp', 'left'])).toBe(false);
  expect(bond(['main'], ['block', 'right'])).toBe(false);
});

describe('a figure of the network', () => {
  const bond = holds(
    figureOfNetwork,
    aboutPlan((plan) => {
      plan.measurements = [
        {
          ...{
            id: 'amp.voltage.idle',
            what: 'amp: voltage',
            predicted: 12.6,
            unit: 'V',
            least: 12,
            greatest: 13,
          },
          ...{ when: 'load', asBuilt: 11, state: 'differs', explanation: null },
        },
      ];
    }),
  );
  const volts = { limit: 12, unit: 'V' };

  test('is one of current or voltage with a limit, of a device, of what the cause is about, or as it was read', () => {
    expect(bond(['battery'], ['amp'], volts)).toBe(true);
    expect(bond(['battery'], ['amp'], { limit: 12, unit: 'A' })).toBe(true);
    expect(bond(['battery'], ['board-ground', 'battery'], volts)).toBe(true);
    expect(bond(['battery'], ['amp.voltage.idle'], { ...volts, value: 11 })).toBe(true);
  });

  test('is none of another unit, without a limit, of a mere terminal, or never read', () => {
    expect(bond(['battery'], ['amp'], { limit: 12, unit: 'm' })).toBe(false);
    expect(bond(['battery'], ['amp'], { unit: 'V' })).toBe(false);
    expect(bond(['battery'], ['board-ground'], volts)).toBe(false);
    expect(bond(['battery'], ['amp.voltage.idle'], volts)).toBe(false);
    expect(bond(['battery'], [], volts)).toBe(false);
  });
});

test('wires hang together by the reel that both are cut from', () => {
  const bond = holds(
    sameReel,
    aboutPlan((plan) => {
      wire(plan, 'amp-feed').part = 'red-8';
      wire(plan, 'main').part = 'red-8';
      wire(plan, 'dsp-feed').part = 'red-16';
    }),
  );
  expect(bond(['amp-feed'], ['main'])).toBe(true);
  expect(bond(['red-8'], ['main'])).toBe(true);
  expect(bond(['amp-feed'], ['dsp-feed'])).toBe(false);
  // Two findings about one wire without a reel share no reel.
  expect(bond(['feed'], ['feed'])).toBe(false);
});

describe('a conductor hangs on the fuse that decides it', () => {
  const bond = holds(
    conductorOfFuse,
    aboutPlan((plan) => {
      fuse(plan, 'main-fuse').loads = ['amp', 'dsp', 'radio'];
      fuse(plan, 'block.OUT1').loads = ['amp'];
      fuse(plan, 'block.OUT2').loads = ['dsp'];
    }),
  );

  test('behind it', () => {
    expect(bond(['block.OUT1'], ['amp-feed'])).toBe(true);
    expect(bond(['block.OUT2'], ['amp-feed'])).toBe(false);
    // It begins at the main fuse's strip, but has a fuse of its own.
    expect(bond(['main-fuse'], ['amp-feed'])).toBe(false);
  });

  test('before it, where nothing else protects it', () => {
    expect(bond(['main-fuse'], ['feed'])).toBe(true);
    expect(bond(['block.OUT1'], ['feed'])).toBe(false);
  });

  test('and the ground of its load, by the fuse that feeds fewest', () => {
    expect(bond(['block.OUT1'], ['amp-ground'])).toBe(true);
    expect(bond(['main-fuse'], ['amp-ground'])).toBe(false);
    // A turn-on lead ends at the same device, and no fuse of its feed decides it.
    expect(bond(['block.OUT2'], ['amp-rem'])).toBe(false);
  });

  test('and none that is not there', () => {
    expect(bond(['nothing'], ['amp-feed'])).toBe(false);
    expect(bond(['block.OUT1'], ['nothing'])).toBe(false);
  });
});

test('the stricter of two limits of one thing carries the other, at the same limit too', () => {
  const bond = (limit: number, others: More, subject = 'main-fuse') =>
    holds(stricterLimit)(['main-fuse'], [subject], { unit: 'A', ...others }, { limit, unit: 'A' });
  expect(bond(60, { limit: 80 })).toBe(true);
  expect(bond(80, { limit: 80 })).toBe(true);
  expect(bond(81, { limit: 80 })).toBe(false);
  expect(bond(60, { limit: 80, unit: 'V' })).toBe(false);
  expect(bond(60, { limit: 80 }, 'block.OUT1')).toBe(false);
  expect(bond(60, {})).toBe(false);
});

describe('what lies behind an open end', () => {
  test('are the devices that no source reaches but over it', () => {
    const open = holds(
      behindOpenEnd,
      aboutContent(({ job }) => {
        delete job.links.feed;
      }),
    );
    expect(open(['main-fuse.IN'], ['amp'])).toBe(true);
    expect(open(['main-fuse.IN'], ['radio'])).toBe(true);
    expect(open(['main-fuse.IN'], ['block.OUT2'])).toBe(true);
    expect(open(['main-fuse.IN'], ['sub'])).toBe(false);
    expect(open(['amp.REM'], ['amp'])).toBe(false);
    expect(holds(behindOpenEnd)(['main-fuse.IN'], ['amp'])).toBe(false);
  });

  test('are the devices that are grounded at the strip whose own way to ground is open', () => {
    const bond = holds(
      groundBehindOpenEnd,
      aboutContent(({ job }) => {
        delete job.links['board-ground'];
      }),
    );
    expect(bond(['ground.G0'], ['amp'])).toBe(true);
    expect(bond(['ground.G0'], ['dsp'])).toBe(true);
    expect(bond(['ground.G0'], ['radio'])).toBe(false);
    expect(bond(['amp.GND'], ['amp'])).toBe(false);
  });
});

test('two findings are about one device by its name, a terminal, or a wire that ends there', () => {
  const bond = holds(sameDevice);
  expect(bond(['amp-feed'], ['amp'])).toBe(true);
  expect(bond(['amp-feed'], ['block.OUT3'])).toBe(true);
  expect(bond(['amp.GND'], ['amp'])).toBe(true);
  expect(bond(['amp-feed'], ['dsp'])).toBe(false);
  // Everything is grounded to the body.
  expect(bond(['board-ground'], ['radio-ground'])).toBe(false);
});

test('each names the other, or the bond does not hold', () => {
  const bond = holds(eachNamesTheOther);
  expect(bond(['a', 'main'], ['main', 'a'])).toBe(true);
  expect(bond(['a', 'main'], ['main', 'b'])).toBe(false);
  expect(bond(['b', 'c'], ['main', 'b'])).toBe(false);
});

test('a terminal is wired where some wire ends at it', () => {
  const bond = holds(
    isWired,
    aboutContent(({ job }) => {
      delete job.links['amp-rem'];
    }),
  );
  expect(bond(['dsp'], ['amp.B+'])).toBe(true);
  expect(bond(['dsp'], ['amp.REM'])).toBe(false);
});

describe('the two ends of one missing link', () => {
  const made = about();
  const open = (...terminals: readonly string[]) => terminals.map((terminal) => cause([terminal]));
  const holdsAmong = (ofCause: Finding, follower: string, findings: readonly Finding[]) =>
    otherEndOfLink(ofCause, cause([follower]), webOf(made, findings));

  test('are one that wants and one that gives, where no more are open that give', () => {
    const [input] = open('amp.IN1');
    if (!input) throw new Error('There is one.');
    expect(holdsAmong(input, 'dsp.OUT1', open('amp.IN1', 'dsp.OUT1'))).toBe(true);
    expect(holdsAmong(input, 'dsp.OUT1', open('amp.IN1', 'amp.IN2', 'dsp.OUT1', 'dsp.OUT2'))).toBe(true);
    expect(holdsAmong(input, 'dsp.OUT1', open('amp.IN1', 'dsp.OUT1', 'dsp.OUT2'))).toBe(false);
    // An open supply gives nothing that a signal input wants.
    expect(holdsAmong(input, 'block.OUT1', open('amp.IN1', 'block.OUT1'))).toBe(false);
    expect(holdsAmong(input, 'dsp.B+', open('amp.IN1', 'dsp.B+'))).toBe(false);
  });

  test('are a device that wants something and the one open end that gives it', () => {
    const unfed = aFinding('device-without-supply', ['amp']);
    expect(holdsAmong(unfed, 'block.OUT1', [unfed, ...open('block.OUT1')])).toBe(true);
    expect(holdsAmong(unfed, 'block.OUT1', [unfed, ...open('block.OUT1', 'block.OUT2')])).toBe(false);
    expect(holdsAmong(unfed, 'dsp.IN', [unfed, ...open('dsp.IN')])).toBe(false);
  });
});

test('a feed passes by the one way out that is open', () => {
  const made = about();
  const holdsAmong = (wire: string, follower: string, ...open: readonly string[]) =>
    feedPassedBy(
      cause([wire]),
      cause([follower]),
      webOf(
        made,
        open.map((terminal) => cause([terminal])),
      ),
    );
  expect(holdsAmong('amp-feed', 'block.OUT3', 'block.OUT3')).toBe(true);
  expect(holdsAmong('amp-feed', 'block.OUT3', 'block.OUT3', 'block.OUT2')).toBe(false);
  expect(holdsAmong('amp-feed', 'amp.REM', 'amp.REM', 'block.OUT3')).toBe(false);
  // A lead from fuse to strip feeds no device.
  expect(holdsAmong('main', 'block.OUT3', 'block.OUT3')).toBe(false);
});

import type { Case } from '../../../../lib/rules/rule.ts';
import { about, aboutPlan } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

/** A charger among the devices, one of whose signals stands so. */
function charger(
  terminal: 'REM' | 'SENSE',
  state: 'open' | 'connected' | 'unaccounted',
  startsBy?: 'turn-on' | 'charging-voltage',
): Case {
  return about({
    content: ({ parts, job }) => {
      const body = { size: { width: '100 mm', depth: '80 mm', height: '40 mm' }, mass: '1 kg' } as const;
      parts.charger = {
        kind: 'charger',
        title: 'Charger',
        ...body,
        terminals: {
          'IN+': { role: 'supply-positive' },
          GND: { role: 'supply-negative' },
          'OUT+': { role: 'source-positive' },
          REM: { role: 'turn-on-in' },
          SENSE: { role: 'sense' },
        },
        ...(startsBy && { 'starts-by': startsBy }),
        input: { fuse: '50 A', efficiency: '90 %' },
        output: { voltage: '14.4 V', current: '30 A', fuse: '40 A' },
      };
      job.devices.charger = { part: 'charger', in: 'boot' };
    },
    plan: (plan) => {
      plan.terminals = [
        ...plan.terminals.filter(({ item }) => item !== 'charger'),
        { item: 'charger', terminal, wires: [], state, ...(state === 'open' && { reason: 'not used' }) },
      ];
    },
  });
}

export const chargerSignalsCases = {
  // Common practice, no source: a charger waits for the signal that the engine runs, and regulates at the sensed post.
  'charger-signal-open': {
    fires: [
      {
        name: 'the terminal that tells that the engine runs',
        about: () => charger('REM', 'open'),
        level: 'caution',
        subject: 'charger.REM',
        path: '/devices/charger',
        says: /^charger.REM is left open: nothing tells charger that the engine runs/,
        toDo: /live while the engine runs; where it starts by the charging voltage, write starts-by: charging-voltage/,
      },
      {
        name: 'one that its maker lets start by that terminal alone',
        about: () => charger('REM', 'open', 'turn-on'),
        level: 'caution',
        subject: 'charger.REM',
      },
      {
        name: 'the lead that senses the battery',
        about: () => charger('SENSE', 'open', 'charging-voltage'),
        level: 'caution',
        subject: 'charger.SENSE',
        says: /the battery gets less by the drop of its lead/,
        toDo: /to the positive post of the battery that it charges/,
      },
    ],
    quiet: [
      {
        name: 'one that starts by the charging voltage',
        about: () => charger('REM', 'open', 'charging-voltage'),
      },
      { name: 'one that is linked', about: () => charger('REM', 'connected') },
      { name: 'one that is told as not accounted for', about: () => charger('REM', 'unaccounted') },
      { name: 'a turn-on terminal of another device', about: () => aboutPlan(() => {}) },
    ],
  },
} satisfies RuleCases;

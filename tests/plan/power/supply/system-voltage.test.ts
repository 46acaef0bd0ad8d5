import { describe, expect, test } from 'vitest';
import { highestVoltageV } from '../../../../lib/plan/power/highest-voltage.ts';
import { setPointV } from '../../../../lib/plan/power/regulator-voltage.ts';
import { systemShare } from '../../../../lib/plan/power/sizing-voltage.ts';
import { sizingVoltageV } from '../../../../lib/power/network/sizing-voltage.ts';
import { byId, partIn } from '../../../rules/case.ts';
import type { Written } from '../../../rules/content.ts';
import { charged } from '../two-batteries.ts';
import { alternator, supply, value } from './written-supply.ts';

describe('the voltage of a system', () => {
  const highest = (change?: (content: Written) => void) => highestVoltageV(supply(change).job);
  const sizing = (change?: (content: Written) => void) => sizingVoltageV(supply(change).job);

  test('at its highest is what a sound charging system shows, or what its alternator holds where that is more', () => {
    const most = value('check-in-charging-most');
    expect(highest()).toBe(most);
    expect(highest((content) => (alternator(content)['set-point'] = `${most + 0.4} V`))).toBeCloseTo(
      most + 0.4,
      9,
    );
    expect(highest((content) => (alternator(content)['set-point'] = '13 V'))).toBe(most);
  });

  test('at its highest is the high end of a voltage that varies, though one alternator of two alone does', () => {
    const varies = (content: Written) => {
      alternator(content)['variable-voltage'] = true;
      content.parts.steady = { ...alternator(content), 'variable-voltage': false };
      content.vehicle.fitted.second = { part: 'steady', zone: 'engine-bay' };
      content.vehicle.links = {
        ...content.vehicle.links,
        'charge-2': { from: 'second.B+', to: 'battery.POS', size: '4 AWG', length: '1 m' },
        'block-2': { from: 'second.CASE', to: 'body.engine', size: '4 AWG', length: '300 mm' },
      };
    };
    expect(highest(varies)).toBe(Math.max(value('check-in-charging-most'), value('voltage-variable-high')));
    expect(sizing(varies)).toBe(value('voltage-variable'));
  });

  test('that sizes are chosen at is never above what the alternator is set to, or was measured', () => {
    expect(sizing()).toBe(value('voltage-sizing'));
    expect(sizing((content) => (alternator(content)['set-point'] = '13.2 V'))).toBe(13.2);
    expect(sizing((content) => (alternator(content)['set-point'] = '15 V'))).toBe(value('voltage-sizing'));
    expect(sizing(({ vehicle }) => (vehicle['charging-voltage'] = '13 V'))).toBe(13);
  });

  test('is in the proportion of its island: half behind a charger of 12 V in a vehicle of 24 V', () => {
    const { job, paths } = supply((content) => {
      charged(content);
      content.vehicle['system-voltage'] = '24 V';
      content.parts['agm-24'] = { ...partIn(content, 'agm', 'battery'), voltage: '24 V' };
      Object.assign(content.vehicle.fitted, {
        battery: { part: 'agm-24', zone: 'engine-bay', side: 'left' },
      });
    });
    expect(systemShare(job, paths.islands, 'battery.POS')).toBe(1);
    expect(systemShare(job, paths.islands, 'second.POS')).toBe(0.5);
    expect(systemShare(job, paths.islands, 'nowhere')).toBe(1);
  });

  test('as its regulator holds it, weak and strong', () => {
    const held = (change: (content: Written) => void, end?: 'weak' | 'strong') => {
      const { job } = supply(change);
      const { spec } = byId(job.devices, 'alternator');
      return spec?.kind === 'alternator' ? setPointV(job, spec, end) : Number.NaN;
    };
    const told = (content: Written) => (alternator(content)['set-point'] = '14.2 V');
    expect([held(() => {}), held(told)]).toEqual([value('voltage-sizing'), 14.2]);
    expect(held(told, 'weak')).toBe(value('voltage-sizing'));
    expect(held(told, 'strong')).toBe(value('voltage-rated'));
    const varies = (content: Written) => (alternator(content)['variable-voltage'] = true);
    expect(held(varies, 'weak')).toBe(value('voltage-variable-low'));
    expect(held(varies, 'strong')).toBe(value('voltage-variable-high'));
    expect(held(varies)).toBe(value('voltage-variable'));
    expect(held(({ vehicle }) => (vehicle['charging-voltage'] = '13.9 V'), 'weak')).toBe(13.9);
  });
});

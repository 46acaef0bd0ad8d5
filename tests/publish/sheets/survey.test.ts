import { describe, expect, it } from 'vitest';
import { survey } from '../../../lib/publish/sheets/survey.ts';
import { planned } from '../../plan/planned.ts';
import { entry } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';

/** All that the survey sheet of the small job says. */
function printed(change: (content: Written) => void = () => {}): string {
  return JSON.stringify(survey.model(planned(change).plan));
}

describe('the survey sheet prints what a tape or an eye alone can tell', () => {
  it('each pass of a way with its length, and the sharp edges among them', () => {
    const sheet = printed(({ vehicle }) => {
      const [, sill] = entry(vehicle.routes, 'left-sill').passes;
      if (sill) Object.assign(sill, { edge: true, length: '2.5 m' });
    });
    expect(sheet).toMatch(/Left sill, on the left/);
    expect(sheet).toMatch(/1\. engine-bay"/);
    expect(sheet).toMatch(/2\. sill, over a sharp edge/);
    expect(sheet).toMatch(/From end to end/);
  });

  it('the distance of each speaker, and a blank beside one that nobody measured', () => {
    const sheet = printed(({ vehicle }) => {
      for (const place of Object.values(vehicle.places ?? {})) delete place.distance;
    });
    expect(sheet).toMatch(/not measured/);
  });

  it('the side of what the vehicle came with and of the ground points that are used', () => {
    const on = (side: 'left' | 'right') =>
      printed(({ vehicle }) => {
        entry(vehicle.fitted, 'battery').side = side;
        entry(vehicle.grounds, 'cargo').side = side;
      });
    expect(on('left')).toMatch(/Ground point cargo/);
    expect(on('left')).not.toMatch(/Ground point engine/);
    expect(on('left')).not.toBe(on('right'));
  });

  it('a side that nobody told as open', () => {
    const sheet = (battery: Record<string, string>) =>
      printed(({ vehicle }) => {
        for (const one of [...Object.values(vehicle.fitted), ...Object.values(vehicle.grounds)])
          one.side = 'left';
        const { side: _, ...others } = entry(vehicle.fitted, 'battery');
        vehicle.fitted.battery = { ...others, ...battery };
      });
    expect(sheet({ side: 'middle' })).not.toMatch(/open: left/);
    expect(sheet({}).match(/open: left, middle or right/g)).toHaveLength(1);
  });

  it('what a battery reads at rest, between its two limits', () => {
    expect(printed()).toMatch(/12\.4\d* to 13[.\d]* V/);
  });
});

import { describe, expect, it } from 'vitest';
import type { BuildPlan, PlanMeasurement } from '../../../lib/model/plan/index.ts';
import { handOverOf } from '../../../lib/publish/packet/hand-over.ts';
import { handOverLacks } from '../../../lib/publish/packet/packet-lacks.ts';
import { renderPage } from '../../../lib/publish/page/render-page.ts';
import { sitePages } from '../../../lib/publish/site/site-pages.ts';
import { openTemplates } from '../../../lib/publish/site/templates.ts';
import { samplePlan } from '../sample/sample-plan.ts';
import { sampleJob, sampleSite } from '../sample/sample-site.ts';

const line: PlanMeasurement = {
  id: 'amp-front.voltage.rest',
  what: 'amp-front: supply voltage',
  predicted: 12.6,
  unit: 'V',
  least: 12.3,
  greatest: 12.9,
  when: 'power',
  asBuilt: 12.55,
  state: 'agrees',
  explanation: null,
};

/** A plan that may be handed over: released, nothing stops it, its record read and right. */
function readyPlan(change: Partial<BuildPlan> = {}): BuildPlan {
  const plan = samplePlan({ findings: [], measurements: [line], ...change });
  const [first] = plan.items;
  if (!first) throw new Error('the sample has no item');
  const holder = { ...first, id: 'main-fuse', kind: 'fuse-holder', title: 'Fuse holder', board: null };
  return { ...plan, items: [...plan.items, { ...holder, seatTitle: 'Beside the battery' }] };
}

function pageOf(plan: BuildPlan, audience: 'customer' | 'shop' = 'customer'): string {
  const pages = sitePages({ site: sampleSite([{ ...sampleJob(plan), revisions: [] }]), audience });
  const page = pages.find(({ address }) => address === '/jobs/sample-job/');
  if (!page) throw new Error('the sample has no page of its job');
  return renderPage(page, openTemplates({ strict: true }), () => []);
}

/** The section of the packet alone, without tags. */
function packetText(html: string): string {
  const section = /<section[^>]* id="packet"[\s\S]*?<\/section>/.exec(html)?.[0] ?? '';
  return section.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');
}

const draft = readyPlan({ job: { ...samplePlan().job, status: 'draft' } });
const [finding] = samplePlan().findings;
if (!finding) throw new Error('the sample has no finding');
const stopped = readyPlan({ findings: [{ ...finding, level: 'stop' }] });
const outside = readyPlan({ measurements: [{ ...line, asBuilt: 11.9, state: 'differs' }] });
const { asBuilt: _, ...unread } = line;
const missing = readyPlan({ measurements: [line, { ...unread, id: 'battery-ripple', state: 'open' }] });

describe('a packet', () => {
  it.each([
    ['draft', draft, 'The job is still a draft.', []],
    ['stopped', stopped, 'A fault that stops the job is still to be mended.', []],
    ['out-of-limit', outside, '1 reading lies outside the limits.', ['amp-front.voltage.rest']],
    ['not-read', missing, '1 reading of the record is still to be taken.', ['battery-ripple']],
  ])('is refused, and its page says why: %s', (why, plan, sentence, lines) => {
    expect(handOverLacks(plan)).toEqual([{ why, lines }]);
    for (const audience of ['customer', 'shop'] as const) {
      const text = packetText(pageOf(plan, audience));
      expect(text).toContain('This packet is not made.');
      expect(text).toContain(sentence);
      expect(text).not.toContain('Main fuse');
      expect(text).not.toContain('Signed');
    }
  });

  it('that is refused tells the customer no name of the bench, and no value', () => {
    for (const plan of [draft, stopped, outside, missing]) {
      const text = packetText(pageOf(plan));
      for (const word of ['amp-front', 'battery-ripple', '11.9', finding.message])
        expect(text).not.toContain(word);
    }
  });

  it('tells every reason at once', () => {
    const plan = { ...outside, job: draft.job, findings: stopped.findings };
    expect(handOverLacks(plan).map(({ why }) => why)).toEqual(['draft', 'stopped', 'out-of-limit']);
  });

  it('is made once nothing is in the way, cautions and notes aside', () => {
    const caution = readyPlan({ findings: [{ ...finding, level: 'caution' }] });
    for (const plan of [readyPlan(), caution]) {
      expect(handOverLacks(plan)).toEqual([]);
      expect(packetText(pageOf(plan))).not.toContain('not made');
    }
  });

  it('does not wait for a line that has no limit: it is noted for the vehicle file', () => {
    const noted = {
      ...unread,
      id: 'radio.FL.highest',
      unit: 'Hz',
      least: null,
      greatest: null,
      predicted: null,
    };
    expect(handOverLacks(readyPlan({ measurements: [line, { ...noted, state: 'open' }] }))).toEqual([]);
  });

  it('holds the rating, form and place of each main fuse beside the words that tell to put it back', () => {
    const plan = readyPlan();
    const mains = plan.power.fuses.filter(({ source }) => source !== null);
    const told = handOverOf(plan, {}).mainFuses;
    expect(told).toHaveLength(mains.length);
    expect(told.length).toBeGreaterThan(0);
    const text = packetText(pageOf(plan));
    expect(text).toContain('put the rating back that stands here');
    for (const [at, { name, rating, place }] of told.entries()) {
      expect(rating).toBe(`${mains[at]?.ratingA} A`);
      expect(text).toContain(`${name} ${rating}`);
      expect(text).toContain(place);
    }
  });

  it('holds the serial numbers that the job writes, and room for the others; the bench sees none', () => {
    const plan = readyPlan();
    const [amplifier] = plan.items.filter(({ kind, origin }) => kind === 'amplifier' && origin === 'job');
    const serials = { [amplifier?.id ?? '']: 'QX-0042' };
    const pages = (audience: 'bench' | 'customer' | 'shop') =>
      sitePages({ site: sampleSite([{ ...sampleJob(plan), serials, revisions: [] }]), audience })
        .map((page) => renderPage(page, openTemplates({ strict: true }), () => []))
        .join();
    for (const audience of ['customer', 'shop'] as const)
      expect(packetText(pages(audience)), audience).toMatch(
        new RegExp(`${amplifier?.title}: ${amplifier?.partTitle} QX-0042`),
      );
    expect(pages('bench')).not.toContain('QX-0042');
    expect(packetText(pageOf(plan))).not.toContain('QX-0042');
  });

  it('without a fuse at a source says nothing of one', () => {
    const plan = readyPlan();
    const fuses = plan.power.fuses.map((fuse) => ({ ...fuse, source: null }));
    const text = packetText(pageOf({ ...plan, power: { ...plan.power, fuses } }));
    expect(text).not.toMatch(/main fuse/i);
  });

  it('names the day of the second visit by the house rule of its plan', () => {
    const rule = { ...samplePlan().rules[0], name: 'retorque-days', value: 14, unit: '' };
    const { rules } = samplePlan();
    const own = readyPlan({ rules: rules.map((one) => ({ ...one, ...rule })) });
    expect(packetText(pageOf(own))).toContain('Re-torque visit at 14 days');
    expect(packetText(pageOf(readyPlan()))).toContain('Re-torque visit at 30 days');
  });
});

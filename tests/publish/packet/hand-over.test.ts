import { describe, expect, it } from 'vitest';
import type { BuildPlan, PlanMeasurement } from '../../../lib/model/plan/index.ts';
import { handOverLacks } from '../../../lib/publish/packet/packet-lacks.ts';
import { renderPage } from '../../../lib/publish/page/render-page.ts';
import { sitePages } from '../../../lib/publish/site/site-pages.ts';
import { openTemplates } from '../../../lib/publish/site/templates.ts';
import { samplePlan } from '../sample/sample-plan.ts';
import { sampleJob, sampleSite, secrets } from '../sample/sample-site.ts';
import { packetOf, readyPlan, wordsOf } from './ready-plan.ts';

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
function ready(change: Partial<BuildPlan> = {}): BuildPlan {
  return { ...readyPlan(samplePlan({ measurements: [line] })), ...change };
}

const draft = ready({ job: { ...samplePlan().job, status: 'draft' } });
const [finding] = samplePlan().findings;
if (!finding) throw new Error('the sample has no finding');
const stopped = ready({ findings: [{ ...finding, level: 'stop' }] });
const outside = ready({ measurements: [{ ...line, asBuilt: 11.9, state: 'differs' }] });
const { asBuilt: _, ...unread } = line;
const missing = ready({ measurements: [line, { ...unread, id: 'battery-ripple', state: 'open' }] });

/** The sheet of hand-over on the page of the job. */
function sheetText(plan: BuildPlan): string {
  const pages = sitePages({
    site: sampleSite([{ ...sampleJob(plan), revisions: [] }]),
    audience: 'bench',
  });
  const page = pages.find(({ address }) => address === '/jobs/sample-job/');
  if (!page) throw new Error('the sample has no page of its job');
  const html = renderPage(page, openTemplates({ strict: true }), () => []);
  return /<section[^>]* id="packet"[\s\S]*?<\/section>/.exec(html)?.[0] ?? '';
}

const refusals = [
  ['draft', draft, 'The job is still a draft.', []],
  ['stopped', stopped, 'A fault that stops the job is still to be mended.', []],
  ['out-of-limit', outside, '1 reading lies outside the limits.', ['amp-front.voltage.rest']],
  ['not-read', missing, '1 reading of the record is still to be taken.', ['battery-ripple']],
] as const;

describe('a packet', () => {
  it.each(refusals)('is refused, and says why: %s', async (why, plan, sentence, lines) => {
    expect(handOverLacks(plan)).toEqual([{ why, lines }]);
    const words = wordsOf(await packetOf(plan));
    expect(words).toContain('This packet is not made.');
    expect(words).toContain(sentence);
    for (const word of ['The fuses', 'Signed', 'Warranty', secrets.name, secrets.plate])
      expect(words).not.toContain(word);
    // The bench is told which line of the record it is about, its owner is not.
    for (const id of lines) {
      expect(words).not.toContain(id);
      expect(sheetText(plan)).toContain(id);
    }
    expect(sheetText(plan)).toContain(sentence);
  });

  it('that waits for more lines than are told in one breath leads to the record instead', () => {
    const open = (count: number) =>
      Array.from({ length: count }, (_, at) => ({ ...unread, id: `line-${at}`, state: 'open' as const }));
    expect(sheetText(ready({ measurements: open(6) }))).toContain('line-5');
    const many = sheetText(ready({ measurements: open(7) }));
    expect(many).toContain('7 readings of the record are still to be taken.');
    expect(many).toContain('href="#commissioning"');
    expect(many).not.toContain('line-');
  });

  it('that is refused tells no value of the bench', async () => {
    for (const plan of [draft, stopped, outside, missing]) {
      const words = wordsOf(await packetOf(plan));
      for (const word of ['11.9', finding.message]) expect(words).not.toContain(word);
    }
  });

  it('tells every reason at once', () => {
    const plan = { ...outside, job: draft.job, findings: stopped.findings };
    expect(handOverLacks(plan).map(({ why }) => why)).toEqual(['draft', 'stopped', 'out-of-limit']);
  });

  it('is made once nothing is in the way, cautions and notes aside, and the job leads to it', async () => {
    const caution = ready({ findings: [{ ...finding, level: 'caution' }] });
    for (const plan of [ready(), caution]) {
      expect(handOverLacks(plan)).toEqual([]);
      expect(wordsOf(await packetOf(plan))).not.toContain('not made');
      expect(sheetText(plan)).toContain('href="../../jobs/sample-job/packet/index.html"');
    }
  });

  it('does not wait for a line that has no limit: it is noted for the vehicle file', () => {
    const noted = { ...unread, id: 'radio.FL.highest', least: null, greatest: null, predicted: null };
    expect(handOverLacks(ready({ measurements: [line, { ...noted, state: 'open' }] }))).toEqual([]);
  });

  it('names whose it is, and holds no price, contact, VIN or place of the key; on the bench nobody is named', async () => {
    const { name, plate, ...others } = secrets;
    const words = wordsOf(await packetOf(ready()));
    for (const told of [name, plate]) expect(words).toContain(told);
    for (const told of Object.values(others)) expect(words).not.toContain(told);
    const bench = await packetOf(ready(), { audience: 'bench', serials: { 'amp-front': 'QX-0042' } });
    for (const told of [...Object.values(secrets), 'QX-0042']) expect(bench).not.toContain(told);
  });

  it('keeps the warranty and the terms of the day it was planned, and those of today where that plan has none', async () => {
    const plan = ready();
    const shop = { warranty: ['Twelve months.'], terms: ['Paid on collection.'] };
    const today = wordsOf(await packetOf(plan, { shop }));
    for (const told of [...shop.warranty, ...shop.terms]) expect(today).toContain(told);
    const frozen = { ...plan, shop: { ...plan.shop, warranty: ['Thirty months.'], terms: [] } };
    const kept = wordsOf(await packetOf(frozen, { shop }));
    expect(kept).toContain('Thirty months.');
    for (const gone of [...shop.warranty, ...shop.terms]) expect(kept).not.toContain(gone);
  });

  it('holds the serial numbers that the job writes', async () => {
    const [amplifier] = ready().items.filter(({ kind, origin }) => kind === 'amplifier' && origin === 'job');
    const serials = { [amplifier?.id ?? '']: 'QX-0042' };
    expect(wordsOf(await packetOf(ready(), { serials }))).toContain(`${amplifier?.partTitle} QX-0042`);
  });

  it('has the terms of the shop in its own words, and says where it has none', async () => {
    const own = {
      telephone: '555 0177',
      warranty: ['Twelve months on our work.'],
      terms: ['Cash.'],
      care: ['Wipe.'],
    };
    const words = wordsOf(await packetOf(ready(), { shop: own }));
    for (const told of ['555 0177', 'Twelve months on our work.', 'Cash.', 'Wipe.'])
      expect(words).toContain(told);
    expect(words).not.toContain('has written no');
    const without = wordsOf(await packetOf(ready()));
    expect(without).toContain('The shop has written no warranty here.');
    expect(without).toContain('The shop has written no terms here.');
  });

  it('tells what the job writes for its owner, and escapes it', async () => {
    const handOver = {
      'functions-changed': ['The clock <b>is</b> set anew.'],
      'highest-volume': '28 of 40',
    };
    const html = await packetOf(ready(), { handOver });
    expect(html).toContain('The clock &lt;b&gt;is&lt;/b&gt; set anew.');
    expect(wordsOf(html)).toContain('Highest setting of the volume 28 of 40');
  });

  it('names the day of the second visit by the house rule of its plan', async () => {
    const { rules } = samplePlan();
    const own = ready({
      rules: rules.map((one) => ({ ...one, name: 'retorque-days', value: 14, unit: '' })),
    });
    expect(wordsOf(await packetOf(own))).toContain('After 14 days: power joints');
    expect(wordsOf(await packetOf(ready()))).toContain('After 30 days: power joints');
  });
});

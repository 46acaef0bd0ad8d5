import { describe, expect, it } from 'vitest';
import { browserPlaces } from '../../../lib/export/print/find-browser.ts';
import { withFixedBytes } from '../../../lib/export/print/fixed-bytes.ts';

describe('browserPlaces', () => {
  it('looks at the browser that is named before all others', () => {
    const places = browserPlaces({
      platform: 'linux',
      env: { RACKLEAF_BROWSER: '/x/browser', PATH: '/y' },
      home: '/h',
    });
    expect(places[0]).toBe('/x/browser');
    expect(places).toContain('/y/chromium');
    expect(places).toContain('/usr/bin/google-chrome');
    expect(places).toContain('/y/microsoft-edge');
  });

  it('knows the usual places of other systems', () => {
    const mac = browserPlaces({ platform: 'darwin', env: {}, home: '/Users/a' });
    expect(mac).toContain('/Applications/Google Chrome.app/Contents/MacOS/Google Chrome');
    const windows = browserPlaces({
      platform: 'win32',
      env: { PROGRAMFILES: 'C:\\Program Files' },
      home: 'C:\\a',
    });
    expect(windows).toContain('C:\\Program Files\\Microsoft\\Edge\\Application\\msedge.exe');
  });
});

describe('withFixedBytes', () => {
  const bytes = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'latin1'));
  const made = (date: string, first: number, id: string): Uint8Array =>
    bytes(
      `<</CreationDate (D:${date}+00'00')/ModDate (D:${date}+00'00')>> (node${String(first).padStart(8, '0')}) (node${String(first + 7).padStart(8, '0')}) (node${String(first).padStart(8, '0')}) /ID [<${id}><${id}>]`,
    );

  it('makes the same bytes of two runs, of the same length', () => {
    const one = made('20260314101112', 260, 'AB12');
    const other = made('20260922131415', 270, 'CD34');
    expect(withFixedBytes(one, '2026-03-14')).toEqual(withFixedBytes(other, '2026-03-14'));
    expect(withFixedBytes(one, '2026-03-14')).toHaveLength(one.length);
  });

  it('keeps names of nodes that differ apart', () => {
    const text = Buffer.from(withFixedBytes(made('20260314101112', 260, 'AB'), '2026-03-14')).toString(
      'latin1',
    );
    expect(text.match(/node\d+/g)).toEqual(['node00000001', 'node00000002', 'node00000001']);
    expect(text).toContain('D:20260314000000');
  });
});

import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { ShopFolder } from './shop-folder.ts';

let shop: ShopFolder;
beforeEach(() => {
  shop = new ShopFolder();
});
afterEach(() => shop.remove());

const shopPath = 'content/shop.yaml';
const imported = (table: string, ...more: string[]) => {
  shop.write('table.csv', table);
  return shop.run('import', 'table.csv', ...more);
};

describe('import of stock', () => {
  test('of what was exported changes nothing', async () => {
    const before = shop.read(shopPath);
    expect((await shop.run('export', '--stock', '--to', 'out')).out).toBe('out/stock.csv');
    const { status, out, told } = await shop.run('import', 'out/stock.csv', '--write');
    expect({ status, out, told }).toEqual({ status: 0, out: '', told: 'nothing changes' });
    expect(shop.read(shopPath)).toBe(before);
  });

  test('is shown first and written when it is asked for, with comments and order left alone', async () => {
    const before = shop.read(shopPath);
    const table = 'part,pieces,reels\nlarge-60,5,\nred-4,,"30 ft; 8 ft"\nbolt-a,40,\n';
    const shown = await imported(table);
    expect(shown.out.split('\n')).toEqual([
      '  large-60: 2 -> 5',
      '  red-4: [30 ft] -> [30 ft, 8 ft]',
      '+ bolt-a: 40',
    ]);
    expect(shop.read(shopPath)).toBe(before);
    expect((await imported(table, '--write')).status).toBe(0);
    expect(shop.read(shopPath)).toBe(
      `${before
        .replace('large-60: { pieces: 2 }', 'large-60: { pieces: 5 }')
        .replace('red-4: { reels: [30 ft] }', 'red-4: { reels: [30 ft, 8 ft] }')
        .trimEnd()}\n  bolt-a: { pieces: 40 }\n`,
    );
  });

  test.each([
    ['semicolons, with a mark of the encoding', '\uFEFFPart;Reels\r\nred-4;"15,5 m; 2,25 m"\r\n'],
    ['tabs', 'part\treels\nred-4\t15,5 m; 2,25 m\n'],
    ['commas', 'part,reels\nred-4,"15.5 m; 2.25 m"\n'],
  ])('takes fields parted by %s', async (_, table) => {
    const { status, out } = await imported(table);
    expect(status).toBe(0);
    expect(out).toBe('  red-4: [30 ft] -> [15.5 m, 2.25 m]');
  });

  test('tells each row that was not understood at its place, and takes the others', async () => {
    const table = [
      'part;pieces;reels',
      'large-6O;4;',
      'large-60;4,5;',
      '',
      'red-4;;"30 ft; 8"',
      'red-8;3;',
      'large-80;7;',
      'large-80;8;',
    ].join('\n');
    const { status, out, told } = await imported(table, '--write');
    expect(status).toBe(2);
    expect(out).toBe('  large-80: 2 -> 7');
    const errors = told.split('\n').filter((line) => line.startsWith('table.csv'));
    expect(errors).toEqual([
      expect.stringMatching(/^table\.csv:2:1: error: there is no part "large-6O"/),
      expect.stringMatching(/^table\.csv:3:10: error: pieces of large-60 needs a whole number/),
      expect.stringMatching(/^table\.csv:5:8: error: a reel of red-4: "8" has no unit/),
      expect.stringMatching(/^table\.csv:6:7: error: "red-8" \(wire\) is kept on the reel/),
      expect.stringMatching(/^table\.csv:8:1: error: large-80 stands in a row above already/),
    ]);
    expect(told).toContain('did you mean "large-60"?');
    expect(shop.read(shopPath)).toContain('large-80: { pieces: 7 }');
  });

  test.each([
    ['stock: {}', 'stock: { bolt-a: { pieces: 40 } }'],
    [
      'stock: { large-60: { pieces: 2 } } # counted',
      'stock: { large-60: { pieces: 2 }, bolt-a: { pieces: 40 } } # counted',
    ],
    [
      'stock:\n    large-60: { pieces: 2 } # counted',
      'stock:\n    large-60: { pieces: 2 } # counted\n    bolt-a: { pieces: 40 }',
    ],
    [
      'stock: {\n  large-60: { pieces: 2 }, # counted\n  }',
      'stock: {\n  large-60: { pieces: 2 }, bolt-a: { pieces: 40 }, # counted\n  }',
    ],
    [
      'stock:\r\n  large-60: { pieces: 2 }\r',
      'stock:\r\n  large-60: { pieces: 2 }\r\n  bolt-a: { pieces: 40 }\r',
    ],
    ['# none', '# none\nstock:\n  bolt-a: { pieces: 40 }'],
    ['# none\r', '# none\r\nstock:\r\n  bolt-a: { pieces: 40 }\r'],
  ])('adds a part to %j', async (stock, expected) => {
    shop.write(shopPath, `rackleaf: 1\nname: Test bench\n${stock}\n`);
    expect((await imported('part,pieces\nbolt-a,40\n', '--write')).status).toBe(0);
    expect(shop.read(shopPath)).toBe(`rackleaf: 1\nname: Test bench\n${expected}\n`);
    expect((await imported('part,pieces\nbolt-a,40\n')).told).toBe('nothing changes');
  });

  describe('with prices and off-cuts', () => {
    beforeEach(() => shop.change(shopPath, 'name: Test bench\n', 'name: Test bench\ncurrency: EUR\n'));

    test('are written beside what stands there, and come out again as they went in', async () => {
      const before = shop.read(shopPath);
      const table =
        'part;off-cuts;price;per;currency\nred-4;c1: 1,5 m;1,85;ft;EUR\nlarge-60;;1234,5;100;\nbolt-a;;0,04;each;EUR\n';
      const { status, out } = await imported(table, '--write');
      expect(status).toBe(0);
      expect(out.split('\n')).toEqual([
        '+ red-4, off-cuts: { c1: 1.5 m }',
        '+ red-4, price: 1.85 per ft',
        '+ large-60, price: 1234.5 per 100',
        '+ bolt-a, price: 0.04 each',
      ]);
      expect(shop.read(shopPath)).toBe(
        `${before.replace('red-4: { reels: [30 ft] }', 'red-4: { reels: [30 ft], off-cuts: { c1: 1.5 m } }')}prices:\n  red-4: 1.85 per ft\n  large-60: 1234.5 per 100\n  bolt-a: 0.04 each\n`,
      );
      await shop.run('export', '--stock', '--to', 'out');
      expect(shop.read('out/stock.csv')).toContain('red-4,wire,,9.144 m,c1: 1.5 m,1.85,ft,EUR\r\n');
      expect(shop.read('out/stock.csv')).toContain('bolt-a,fixing,,,,0.04,each,EUR\r\n');
      expect((await shop.run('import', 'out/stock.csv')).told).toBe('nothing changes');
    });

    // As suppliers and spreadsheets of several countries write them.
    test.each([
      [
        'part,price,per\nlarge-60,$1.85,each\n',
        /^table\.csv:2:10: error: .*"\$1\.85" has a sign of currency: write the number alone/,
      ],
      ['part,price,per\nlarge-60,"1,85",each\n', /^table\.csv:2:10: error: .*decimal comma: write 1\.85/],
      ['part,price,per\nlarge-60,"1,250.00",each\n', /^table\.csv:2:10: error: .*read in two ways/],
      ['part;price;per\nlarge-60;1.250;each\n', /^table\.csv:2:10: error: .*read in two ways/],
      ['part;price;per\nlarge-60;1.250,00;each\n', /^table\.csv:2:10: error: .*read in two ways/],
      ['part;price;per\nlarge-60;1 250,00;each\n', /^table\.csv:2:10: error: .*"1 250,00"/],
      ['part,price,per\nlarge-60,1.85,\n', /^table\.csv:2:10: error: .*does not say what it is for/],
      [
        'part,price,per\nlarge-60,1.85,ft\n',
        /^table\.csv:2:15: error: .*by the piece \(fuse\), and priced by its length/,
      ],
      [
        'part,price,per\nred-4,1.85,each\n',
        /^table\.csv:2:12: error: .*on the reel \(wire\), and priced by the piece/,
      ],
      ['part,price,per\nred-4,1.85,yd\n', /^table\.csv:2:12: error: .*"per yd", which is not understood/],
      [
        'part,price,per,currency\nlarge-60,1.85,each,USD\n',
        /^table\.csv:2:20: error: .*priced in USD, and the shop reckons in EUR/,
      ],
      ['part,pieces,per\nlarge-60,2,each\n', /^table\.csv:2:12: error: .*has no price/],
      [
        'part,pieces,Prise\nlarge-60,2,1\n',
        /^table\.csv:1:13: error: the column "Prise" is not read\n.*did you mean "price"\?/,
      ],
      [
        'part,pieces,Shelf no.\nlarge-60,2,1\n',
        /^table\.csv:1:13: error: the column "Shelf no\." is not read\n.*the columns are part, kind/,
      ],
      ['part,pieces,pieces\nlarge-60,2,3\n', /^table\.csv:1:13: error: the column pieces stands twice/],
      [
        'part,price,per\nlarge-60,2,each\nlarge-60,3,each\n',
        /table\.csv:3:1: error: large-60 stands in a row above already, line 2/,
      ],
      ['part,pieces,price\nlarge-60,,\n', /^table\.csv:2:1: error: nothing is said of large-60/],
      ['part,off-cuts\nlarge-60,c1: 2 ft\n', /^table\.csv:2:10: error: .*by the piece, and has no off-cuts/],
      ['part,off-cuts\nred-4,c1: 2\n', /^table\.csv:2:7: error: .*"2" has no unit/],
      ['part,off-cuts\nred-4,c1: 2 ft; c1: 3 ft\n', /^table\.csv:2:7: error: .*c1 stands twice/],
      ['part,off-cuts\nred-4,2 ft\n', /^table\.csv:2:7: error: .*"2 ft" is no name/],
    ])('%j is told with line, column and what to write', async (table, says) => {
      const { status, told } = await imported(table);
      expect(status).toBe(2);
      expect(told).toMatch(says);
    });

    test('a table in UTF-16 is told as that', async () => {
      const { status, told } = await imported(Buffer.from('\uFEFFpart,price\n', 'utf16le').toString('utf8'));
      expect(status).toBe(2);
      expect(told).toMatch(/^table\.csv:1:1: error: the file is saved in UTF-16/);
    });
  });

  test('of a price is refused as long as the shop has no currency', async () => {
    const { status, told } = await imported('part,price,per\nlarge-60,2,each\n');
    expect(status).toBe(2);
    expect(told).toMatch(/the shop file does not say its currency\n.*currency: EUR/);
  });

  test('writes nothing into a shop file that has errors', async () => {
    shop.change(shopPath, 'large-60: { pieces: 2 }', 'large-60: { reels: [2 ft] }');
    const { status, told } = await imported('part,pieces\nlarge-60,3\n', '--write');
    expect(status).toBe(2);
    expect(told).toContain('content/shop.yaml has errors: mend them first');
  });

  test.each([
    ['name,count\nx,1\n', /names the columns: part, and any of pieces, reels, off-cuts, price/],
    ['part,pieces\n"large-60,4\n', /can not be read/],
  ])('refuses %j', async (table, reason) => {
    const { status, told } = await imported(table);
    expect(status).toBe(2);
    expect(told).toMatch(reason);
  });

  test('a table that is not there is told', async () => {
    const { status, told } = await shop.run('import', 'nowhere.csv');
    expect(status).toBe(2);
    expect(told).toContain('there is no file nowhere.csv');
  });
});

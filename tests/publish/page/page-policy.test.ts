import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { withPolicy } from '../../../lib/publish/page/page-policy.ts';

const page = (head: string, body: string): string =>
  `<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n${head}</head>\n<body>${body}</body>\n</html>`;
const plain = { runsSearch: false };
const policyOf = (html: string): string => /Policy" content="([^"]*)"/.exec(html)?.[1] ?? '';
const digest = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

describe('the policy of a page', () => {
  it('allows its styles by their digest (CSP 3, 6.7.3.3) and no others', () => {
    const html = withPolicy(
      page('<style>\n@page { size: A4; }\n</style>\n<style>\np { margin: 0 }\n</style>\n', ''),
      plain,
    );
    const styles = [...html.matchAll(/<style>([\s\S]*?)<\/style>/g)].map(([, text = '']) => text);
    expect(styles).toEqual(['\n@page { size: A4; }\np { margin: 0 }\n']);
    expect(policyOf(html)).toContain(`style-src 'self' file: ${digest(styles[0] ?? '')};`);
    expect(policyOf(html)).toContain("script-src 'self' file:;");
  });

  it('moves each style attribute into the head once', () => {
    const html = withPolicy(
      page('', '<i style="--w:1">a</i><i style="--w:2">b</i><b style="--w:1">c</b><u style="">d</u>'),
      plain,
    );
    expect(html).toContain('<i data-style="1">a</i><i data-style="2">b</i><b data-style="1">c</b><u>d</u>');
    expect(html).toContain('<style>\n[data-style="1"]{--w:1}\n[data-style="2"]{--w:2}\n</style>\n</head>');
  });

  it('allows WebAssembly to the page that searches, and a script in it by its digest', () => {
    const html = withPolicy(page('', '<script>go()</script>'), { runsSearch: true });
    expect(policyOf(html)).toContain(`script-src 'self' file: ${digest('go()')} 'wasm-unsafe-eval';`);
    expect(html).not.toContain('<style>');
  });

  it('is refused to what is no page, and to a style that HTML would have to read first', () => {
    expect(() => withPolicy('<p>text</p>', plain)).toThrow('no head');
    expect(() => withPolicy(page('', '<i style="content:&quot;&quot;">a</i>'), plain)).toThrow('entity');
  });
});

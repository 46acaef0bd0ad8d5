/** Where the browser listens for changes. */
export const changesPath = '/changes';

/** Reloads the page when the server says that something changed. */
export const liveReload = `<script>new EventSource(${JSON.stringify(changesPath)}).addEventListener("change", () => location.reload());</script>`;

function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

/** The problems of the input, above the last good page. */
export function problemBanner(problems: readonly string[]): string {
  const list = problems.map((problem) => `<pre>${escaped(problem)}</pre>`).join('\n');
  return [
    '<section class="problems" role="alert" aria-label="Problems in the input">',
    '<p><strong>The input has problems. What stands below was made before them.</strong></p>',
    list,
    '</section>',
  ].join('\n');
}

/** A page of its own, for when no good one has been made yet. */
export function problemPage(problems: readonly string[]): string {
  const list = problems.map((problem) => `<pre>${escaped(problem)}</pre>`).join('\n');
  return `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><title>Nothing to show</title><link rel="stylesheet" href="/assets/styles.css"></head>
<body class="plain"><main><h1>Nothing to show</h1>
<section class="problems" role="alert" aria-label="Problems">
${list}
</section></main>
${liveReload}
</body>
</html>
`;
}

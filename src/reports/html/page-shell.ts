import { createHash } from 'node:crypto';
import { shown } from './markup.ts';

export type PageKind = 'report' | 'press card';

/** How every page of a kind begins, by which a page of an earlier run is known. */
export function pageHead(kind: PageKind): string {
  return `<!doctype html>\n<!-- blankcheck ${kind} -->\n`;
}

/**
 * A page that stands alone: nothing is fetched, and nothing in it can run, since its policy allows its own style and
 * pictures within it, and no script at all. @see Content Security Policy Level 3, 6.1; 2.3.1 (hashes)
 */
export function renderPage(
  kind: PageKind,
  { title, style, body }: { readonly title: string; readonly style: string; readonly body: string },
): string {
  const hash = createHash('sha256').update(style).digest('base64');
  const policy = `default-src 'none'; img-src data:; style-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'`;
  return `${pageHead(kind)}<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="generator" content="blankcheck">
<title>${shown(title)}</title>
<style>${style}</style>
</head>
<body>
${body}
</body>
</html>
`;
}

import { escapeXml } from '../../figures/escape.ts';

/** What an archive's front page names. */
export interface FrontFacts {
  readonly document: string;
  readonly mark: string;
  readonly title: string;
  readonly status: string;
  readonly issued: string;
  /** `orchard-cart/rev-b` */
  readonly revision: string;
  readonly pdf: string;
  readonly files: readonly string[];
}

/** The first page of an archived packet: what lies in the folder, in plain HTML that needs nothing else. */
export function frontOf({ document, mark, title, status, issued, revision, pdf, files }: FrontFacts): string {
  const t = escapeXml;
  const link = (path: string, words: string) => `<a href="${t(encodeURI(path))}">${t(words)}</a>`;
  const items = [
    `${link(`${revision}/index.html`, 'The packet on screen')}, a page a chapter`,
    `${link(`${revision}/${pdf}`, 'The printed packet')}, PDF`,
    `${link(`${revision}/packet.html`, 'The whole packet as one page')}, from which it was printed`,
    ...files.map((file) => link(`${revision}/${file}`, file)),
  ];
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${t(document)} revision ${t(mark)}, archived packet</title>
<style>body{max-width:36em;margin:3em auto;padding:0 1em;font:1.1em/1.5 serif}li{margin:.3em 0}</style>
</head>
<body>
<h1>${t(title)}</h1>
<p>${t(document)} revision ${t(mark)}, ${t(status)}, issued ${t(issued)}.</p>
<p>This folder holds the design review packet of this one revision. Other boards and revisions are not in it.
README.txt, two folders up, says how to verify it and how to make it again.</p>
<ul>
${items.map((item) => `<li>${item}</li>`).join('\n')}
</ul>
</body>
</html>
`;
}

import type { MadeOf } from './made-of.ts';

/** How an archive is called, and what it is of. */
export interface ArchiveNames {
  /** Of the archive and its folder, without ending: `OC-210-B`. */
  readonly name: string;
  readonly document: string;
  readonly mark: string;
  readonly title: string;
  readonly status: string;
  readonly issued: string;
  readonly made: MadeOf;
}

/** README.txt of an archive: what is in it, how to verify it, how to make it again. For a reader who has nothing else. */
export function readme({ name, document, mark, title, status, issued, made }: ArchiveNames): string {
  const heading = `${document} revision ${mark}: ${title}`;
  const revision = `data/site/${made.board}/${made.revision}`;
  const epoch = made.source_date_epoch === undefined ? '' : `\n  SOURCE_DATE_EPOCH   ${made.source_date_epoch}`;
  return `${heading}
${'='.repeat([...heading].length)}

Design review packet, ${status}, issued ${issued}. This folder is a bag after RFC 8493
("The BagIt File Packaging Format"). It needs no network and no program of its own.

What is in it
  data/site/index.html     open it with a double click: the packet on screen
  ${revision}/${name}.pdf
                           the printed packet; results.json and tables lie beside it
  data/inputs/             what it was calculated from: the specification, and the
                           methods and derating policy that it names
  data/superseded/         the specification that it was compared with, if any
  data/tool/tool.json      what made it
  data/tool/sbom.cdx.json  every package that took part (CycloneDX)

To verify it with coreutils alone, in this folder
  sha256sum --strict -c manifest-sha256.txt
  sha256sum --strict -c tagmanifest-sha256.txt
The same with sha512sum and the manifests named after it. The digest of the inputs
stands on the cover, and its beginning at the foot of every page. This prints it:
  cd data/inputs
  find . -type f -printf '%P\\n' | LC_ALL=C sort | xargs -d '\\n' sha256sum | sha256sum
Here it is ${made.inputs_sha256}.

To make it again and compare every byte
  With Copperplate as below in a folder of its own, and the zip file of this folder:
  npm ci
  npm run verify -- path/to/${name}.zip

Made with
  Copperplate         ${made.tool}
  its source          SHA-256 ${made.code_sha256}
  package-lock.json   SHA-256 ${made.lock_sha256}
  Node                ${made.node}
  printing browser    ${made.browser}
  simulated boards    ${made.trials ?? 'as many as the digits need'}, seed ${made.seed}
  paper               ${made.paper}${epoch}

The figures are calculations from the specification. They are no safety approval and
no test report.
`;
}

import type { Block, Row, Table } from '../block.ts';
import { joined, name, strong } from '../inline.ts';
import type { Chapter } from '../packet.ts';
import type { Review } from '../review.ts';
import { tableFiles } from '../tables/index.ts';
import type { Text } from '../text.ts';
import { grouped } from '../words.ts';
import { chapter } from './chapter.ts';
import { sans, serif } from './columns.ts';

/** How to tell whether this is the packet that was signed, and how to make it again. */
export function colophon({ board, findings }: Review): Chapter {
  const folder = `designs/${board.name}/${board.revision}`;
  const design = `${board.name}/${board.revision}`;
  const rows: [string, Text][] = [
    ['Inputs', [...inputFiles(board, folder), ', the methods and the derating policy that it names']],
    ['Digest of the inputs, SHA-256', [name(findings.inputs_sha256.replaceAll(/(.{8})(?=.)/g, '$1 '))]],
    ['Tool', [`Copperplate ${findings.tool}`]],
    ['Simulated boards', [`${grouped(findings.trials)}, seed ${findings.seed}`]],
    ['Issued', [board.identity.issued]],
    [
      'All numbers at full precision',
      [
        name('results.json'),
        ', described by ',
        name('results.schema.json'),
        '; as tables: ',
        ...joined(
          tableFiles.map((file): Text => [name(file)]),
          ', ',
        ),
        '. Every other table of this packet stands beside them as printed.',
      ],
    ],
  ];
  const table: Table = {
    kind: 'table',
    id: 'origin',
    number: '17.1',
    caption: [
      'What this packet was made of. Every number in it follows from these lines alone: the same inputs give the same pages.',
    ],
    columns: [serif('What'), sans('Is')],
    groups: [{ rows: rows.map(([what, is]): Row => ({ cells: [[what], is] })) }],
    wide: true,
  };
  return chapter('colophon', [
    table,
    ...steps(design, findings.seed, findings.trials),
    { kind: 'paragraph', text: [limits] },
  ]);
}

/** What stands in the folder of the revision. */
const inputFiles = ({ bench, notes }: Review['board'], folder: string): Text =>
  joined(
    ['spec.yaml', ...(bench.length ? ['bench.csv'] : []), ...(notes?.length ? ['notes.mdx'] : [])].map(
      (file): Text => [name(`${folder}/${file}`)],
    ),
    ', ',
  );

function steps(design: string, seed: number, trials: number): Block[] {
  const run = `--seed ${seed} --trials ${trials} ${design}`;
  return [
    {
      kind: 'paragraph',
      text: [
        strong('To rebuild. '),
        'With the tool of this version beside the designs: ',
        name('npm ci'),
        ', then ',
        name(`npm run packet -- ${run}`),
        '.',
      ],
    },
    {
      kind: 'paragraph',
      text: [
        strong('To verify. '),
        name(`npm run check -- --json ${run}`),
        ' prints the numbers; ',
        name('inputs_sha256'),
        ' in them must be the digest above, and the digest at the foot of every page its beginning. The archive beside this packet holds all that it was made of; its README says how to check it without this tool, and ',
        name('npm run verify -- archive.zip'),
        ' makes it again and compares every byte.',
      ],
    },
  ];
}

const limits =
  'The figures in this packet are calculations from the specification. They are no safety approval and no test report.';

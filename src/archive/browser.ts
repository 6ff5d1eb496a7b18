import { type Browser, chromium } from 'playwright-core';
import { type FoundBrowser, siteStays } from './find-browser.ts';
import { writeFontconfig } from './fontconfig.ts';
import { unpackFallbackFont } from './shipped-chromium.ts';

/** A running browser, its version, and what a user should know about how it runs. */
export interface OpenBrowser {
  readonly browser: Browser;
  /** `153.0.8010.0` */
  readonly version: string;
  readonly remarks: readonly string[];
}

/** The browser that was found does not start. The message says what it said and what to do. */
export class BrowserError extends Error {
  override readonly name = 'BrowserError';
}

interface Start {
  readonly sandbox: boolean;
  readonly libraries?: string;
}

/**
 * Starts the browser for printing: no network, no system fonts on Linux, no hinting (glyph positions would depend on
 * the screen), fixed time zone and language. The sandbox is kept unless the user is root, for whom Chromium has none.
 * @param cache  folder for the unpacked fallback font and the font configuration
 * @throws BrowserError
 */
export async function openBrowser(found: FoundBrowser, cache: string): Promise<OpenBrowser> {
  const env = await environment(cache).catch((error: Error) => {
    throw new BrowserError(
      `The folder ${cache} of the printing browser could not be filled: ${error.message}. ${siteStays}`,
    );
  });
  const remarks = found.remark === undefined ? [] : [found.remark];
  let start: Start = { sandbox: process.getuid?.() !== 0 };
  for (;;) {
    try {
      const browser = await launch(found.program, env, start);
      return { browser, version: browser.version(), remarks };
    } catch (error) {
      const said = error instanceof Error ? error.message : String(error);
      const next = afterFailure(start, said, found.libraries);
      if (next === undefined) throw new BrowserError(explain(found, said));
      if (start.sandbox && !next.sandbox) remarks.push(noSandbox);
      start = next;
    }
  }
}

// Printing our own pages with scripts switched off and no network needs the sandbox least of all, so a system that
// forbids it (Ubuntu from 23.10 on restricts it to programs it knows) still gets its PDF.
const noSandbox =
  "This system does not let Chromium build its sandbox; it ran without. The pages are the project's own, scripts and network are off.";

/** What to change after a start that failed; nothing when there is nothing left to try. */
export function afterFailure(start: Start, said: string, libraries: string | undefined): Start | undefined {
  if (/error while loading shared libraries/.test(said) && libraries !== undefined && start.libraries === undefined) {
    return { ...start, libraries };
  }
  if (start.sandbox && /sandbox/i.test(said.replaceAll(/--[\w-]*sandbox[\w-]*/g, '')))
    return { ...start, sandbox: false };
  return undefined;
}

function explain(found: FoundBrowser, said: string): string {
  const remedy =
    found.from === 'shipped'
      ? `If its file is damaged, delete the folder of ${found.program}; it is unpacked again. Or set COPPERPLATE_BROWSER to another Chrome, Edge or Chromium.`
      : 'Set COPPERPLATE_BROWSER to another Chrome, Edge or Chromium.';
  return `${found.name} does not start: ${gist(said)}. ${remedy} ${siteStays}`;
}

/** The line that says most: what the program itself printed as an error, else the first. */
function gist(said: string): string {
  const lines = said
    .replaceAll(colours, '')
    .replace('browserType.launch: ', '')
    .split('\n')
    .map((line) => line.replace(/^.*\[err\]\s*/, '').trim());
  const line = lines.find((text) => /^\S*:? ?error|cannot|FATAL/i.test(text)) ?? lines[0]!;
  return line.slice(0, 300).replace(/\.$/, '');
}
const colours = new RegExp(`${String.fromCharCode(27)}\\[[\\d;]*m`, 'g');

function launch(program: string, env: Record<string, string>, start: Start): Promise<Browser> {
  return chromium.launch({
    executablePath: program,
    chromiumSandbox: start.sandbox,
    timeout: 60_000,
    args: ['--font-render-hinting=none'],
    env: { ...env, ...(start.libraries !== undefined && { LD_LIBRARY_PATH: start.libraries }) },
  });
}

async function environment(cache: string): Promise<Record<string, string>> {
  const inherited = Object.entries(process.env).filter(
    (entry): entry is [string, string] => entry[1] !== undefined && !/^(FONTCONFIG_|LC_|LANGUAGE$)/.test(entry[0]),
  );
  const env: Record<string, string> = { ...Object.fromEntries(inherited), TZ: 'UTC', LANG: 'C.UTF-8' };
  if (process.platform === 'linux') {
    env.FONTCONFIG_FILE = await writeFontconfig(cache, await unpackFallbackFont(cache));
  }
  return env;
}

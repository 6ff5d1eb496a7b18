import { access, constants } from 'node:fs/promises';
import { browserPlaces, howToInstall, type System } from './installed-browsers.ts';
import { shippedRunsOn, unpackChromium } from './shipped-chromium.ts';

/** A browser to print with. */
export interface FoundBrowser {
  readonly program: string;
  /** As shown to people: `shipped Chromium`, `Chrome`. */
  readonly name: string;
  readonly from: 'COPPERPLATE_BROWSER' | 'shipped' | 'installed';
  /** Folder of shared libraries that it may miss. */
  readonly libraries?: string;
  /** Why it is not the shipped one, when that was expected. */
  readonly remark?: string;
}
/** No browser: what to install, in words for the terminal. The site needs none. */
export interface NoBrowser {
  readonly missing: string;
}

/** The running system; tests hand in others. */
export interface Machine extends System {
  readonly arch: string;
  /** Folder for unpacked programs; made when needed. */
  readonly cache: string;
}

/** What a missing browser does not touch; the last sentence of each message about it. */
export const siteStays = 'The site is built without it; only the PDFs and the archives are missing.';
const orName = 'Or set COPPERPLATE_BROWSER to the path of a Chrome, Edge or Chromium. Then run the command again.';

/**
 * Finds a Chromium to print with, in this order: the program that COPPERPLATE_BROWSER names; the one that comes with
 * the install, on 64-bit x86 Linux (the same program gives the same bytes); an installed Chrome, Edge or Chromium.
 * A COPPERPLATE_BROWSER that names nothing that runs is reported, not passed over.
 */
export async function findBrowser(machine: Machine): Promise<FoundBrowser | NoBrowser> {
  const named = machine.env.COPPERPLATE_BROWSER;
  if (named !== undefined && named !== '') {
    if (await runs(named)) return { program: named, name: named, from: 'COPPERPLATE_BROWSER' };
    return {
      missing: `COPPERPLATE_BROWSER names ${named}, which is not a program that can be run. Correct or unset it. ${siteStays}`,
    };
  }
  const shipped = await findShipped(machine);
  if ('program' in shipped) return shipped;
  const places = browserPlaces(machine);
  for (const { name, path } of places) {
    if (await runs(path)) {
      return { program: path, name, from: 'installed', ...(shipped.broken && { remark: shipped.why }) };
    }
  }
  return {
    missing: `No browser to print with. ${shipped.why} No Chrome, Edge or Chromium is installed where they usually are. ${howToInstall(machine.platform)} ${orName} ${siteStays}`,
  };
}

async function findShipped(machine: Machine): Promise<FoundBrowser | { why: string; broken: boolean }> {
  if (!shippedRunsOn(machine.platform, machine.arch)) {
    const here = `${machine.platform} ${machine.arch}`;
    return { why: `The Chromium that comes with the install runs on linux x64 only; this is ${here}.`, broken: false };
  }
  try {
    return { ...(await unpackChromium(machine.cache)), name: 'shipped Chromium', from: 'shipped' };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return {
      why: `The Chromium that comes with the install could not be unpacked into ${machine.cache}: ${reason}.`,
      broken: true,
    };
  }
}

async function runs(path: string): Promise<boolean> {
  return access(path, constants.X_OK).then(
    () => true,
    () => false,
  );
}

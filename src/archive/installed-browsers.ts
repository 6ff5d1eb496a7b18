import { posix, win32 } from 'node:path';

/** What decides where a browser may be installed. */
export interface System {
  readonly platform: string;
  readonly env: Readonly<Record<string, string | undefined>>;
}
export interface Place {
  readonly name: string;
  readonly path: string;
}

/**
 * Where Chrome, Edge and Chromium are usually installed, in the order in which they are tried: Chrome, then Edge, then
 * Chromium; of each, first the whole machine's, then the user's own.
 * @example browserPlaces({ platform: 'linux', env: { PATH: '/usr/bin' } })[0]
 * // { name: 'Chrome', path: '/usr/bin/google-chrome-stable' }
 */
export function browserPlaces({ platform, env }: System): Place[] {
  if (platform === 'win32') return onWindows(env);
  if (platform === 'darwin') return onMac(env);
  return onLinux(env);
}

function onWindows(env: System['env']): Place[] {
  const roots = [env.ProgramFiles, env['ProgramFiles(x86)'], env.LOCALAPPDATA].filter((root) => root !== undefined);
  const programs: Place[] = [
    { name: 'Chrome', path: 'Google\\Chrome\\Application\\chrome.exe' },
    { name: 'Edge', path: 'Microsoft\\Edge\\Application\\msedge.exe' },
    { name: 'Chromium', path: 'Chromium\\Application\\chrome.exe' },
  ];
  return programs.flatMap(({ name, path }) => roots.map((root) => ({ name, path: win32.join(root, path) })));
}

function onMac(env: System['env']): Place[] {
  const roots = ['/Applications', ...(env.HOME === undefined ? [] : [posix.join(env.HOME, 'Applications')])];
  const programs: Place[] = [
    { name: 'Chrome', path: 'Google Chrome.app/Contents/MacOS/Google Chrome' },
    { name: 'Edge', path: 'Microsoft Edge.app/Contents/MacOS/Microsoft Edge' },
    { name: 'Chromium', path: 'Chromium.app/Contents/MacOS/Chromium' },
  ];
  return programs.flatMap(({ name, path }) => roots.map((root) => ({ name, path: posix.join(root, path) })));
}

function onLinux(env: System['env']): Place[] {
  const folders = (env.PATH ?? '').split(':').filter((folder) => folder.startsWith('/'));
  const commands: [name: string, command: string][] = [
    ['Chrome', 'google-chrome-stable'],
    ['Chrome', 'google-chrome'],
    ['Edge', 'microsoft-edge-stable'],
    ['Edge', 'microsoft-edge'],
    ['Chromium', 'chromium'],
    ['Chromium', 'chromium-browser'],
  ];
  return commands.flatMap(([name, command]) =>
    [...new Set([...folders, '/usr/bin', '/usr/local/bin', '/snap/bin'])].map((folder) => ({
      name,
      path: posix.join(folder, command),
    })),
  );
}

/** How to get a browser on a system that has none, in one sentence. */
export function howToInstall(platform: string): string {
  switch (platform) {
    case 'win32':
      return 'Install Chrome with "winget install Google.Chrome".';
    case 'darwin':
      return 'Install Chrome with "brew install --cask google-chrome" or from https://www.google.com/chrome.';
    default:
      return 'Install Chromium with "sudo apt install chromium" (Debian, Ubuntu) or "sudo dnf install chromium" (Fedora).';
  }
}

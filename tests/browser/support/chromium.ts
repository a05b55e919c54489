import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { promisify } from 'node:util';
import { type Browser, chromium } from 'playwright-core';

const run = promisify(execFile);

const SYSTEM_BROWSERS = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome-stable',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

/** Keeps a headless browser from calling home on a closed network, and lets it run as root in a container. */
export const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export function launch(executablePath: string): Promise<Browser> {
  return chromium.launch({ executablePath, args: FLAGS, timeout: 60_000 });
}

/** The same with a graphics processor, which is computed where the machine has none. */
export function launchWithGraphics(executablePath: string): Promise<Browser> {
  const args = FLAGS.filter((flag) => flag !== '--disable-gpu');
  args.push('--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader');
  return chromium.launch({ executablePath, args, timeout: 60_000 });
}

async function starts(path: string | undefined): Promise<boolean> {
  if (!path || !existsSync(path)) return false;
  try {
    await (await launch(path)).close();
    return true;
  } catch {
    return false;
  }
}

async function quietly(command: string, args: string[], timeoutMs: number): Promise<boolean> {
  try {
    await run(command, args, {
      timeout: timeoutMs,
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
    return true;
  } catch {
    return false;
  }
}

async function installed(): Promise<string | null> {
  for (const path of [...SYSTEM_BROWSERS, chromium.executablePath()]) if (await starts(path)) return path;
  return null;
}

/**
 * A Chromium that really starts: CHROME_PATH, then one the system has, then one fetched by playwright, then Debian's
 * own package where this process may install it.
 */
export async function findChromium(): Promise<string> {
  const named = process.env.CHROME_PATH;
  if (named) {
    if (await starts(named)) return named;
    throw new Error(
      `CHROME_PATH names ${named}, but no Chromium starts from there: point it at a Chromium or unset it.`,
    );
  }
  const present = await installed();
  if (present) return present;
  await quietly('npx', ['playwright-core', 'install', 'chromium'], 180_000);
  const fetched = await installed();
  if (fetched) return fetched;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    await quietly('apt-get', ['update'], 180_000);
    await quietly('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], 600_000);
    const packaged = await installed();
    if (packaged) return packaged;
  }
  throw new Error(
    'The browser tests need a Chromium and none was found or could be installed: install Chromium, or set CHROME_PATH to one, and run the tests again.',
  );
}

// Finds a Chromium for the browser tests; on Debian as root it installs one.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { run } from './lib.mjs';

const places = {
  linux: ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome', '/snap/bin/chromium'],
  darwin: [
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  ],
  win32: [
    `${process.env.PROGRAMFILES}\\Chromium\\Application\\chrome.exe`,
    `${process.env.PROGRAMFILES}\\Google\\Chrome\\Application\\chrome.exe`,
    `${process.env.LOCALAPPDATA}\\Chromium\\Application\\chrome.exe`,
  ],
};

export function findBrowser() {
  return [process.env.CHROMIUM, ...(places[process.platform] ?? [])].find((p) => p && existsSync(p));
}

/** { path } of a Chromium, or { missing } with the one line that says what to install. */
export async function ensureBrowser() {
  const found = findBrowser();
  if (found) return { path: found };
  if (canUseApt()) {
    console.log('\nInstalling Chromium for the browser tests (Debian package) …');
    try {
      const apt = (...args) => run('apt-get', ['-o', 'DPkg::Lock::Timeout=300', '-qq', ...args]);
      await apt('update');
      await apt('install', '-y', '--no-install-recommends', 'chromium');
    } catch (error) {
      console.error(error.message);
    }
    const now = findBrowser();
    if (now) return { path: now };
  }
  return {
    missing:
      'The browser tests need Chromium: install it (Debian: apt-get install chromium) or set CHROMIUM to its program file.',
  };
}

function canUseApt() {
  return process.getuid?.() === 0 && spawnSync('apt-get', ['--version'], { stdio: 'ignore' }).status === 0;
}

import { spawn } from 'node:child_process';

/** The system's own ways to show an address, the usual one first. */
const ways: Partial<Record<NodeJS.Platform, readonly (readonly string[])[]>> = {
  darwin: [['open']],
  win32: [['rundll32', 'url.dll,FileProtocolHandler']],
};
const elsewhere = [['xdg-open'], ['gio', 'open'], ['sensible-browser']];

/** A way that has not failed by then is the browser itself, which goes on as long as the person likes. */
const goesOnAfterMs = 5_000;

/** Shows an address in the person's own browser; false where the system has none or says that it failed. */
export async function showInBrowser(url: string, platform: NodeJS.Platform): Promise<boolean> {
  for (const [program = '', ...args] of ways[platform] ?? elsewhere)
    if (await began(program, [...args, url])) return true;
  return false;
}

function began(program: string, args: readonly string[]): Promise<boolean> {
  return new Promise((resolve) => {
    const child = spawn(program, args, { stdio: 'ignore', detached: true });
    const goesOn = setTimeout(() => resolve(true), goesOnAfterMs);
    const ended = (well: boolean) => {
      clearTimeout(goesOn);
      resolve(well);
    };
    child.once('error', () => ended(false));
    child.once('exit', (code) => ended(code === 0));
    child.unref();
  });
}

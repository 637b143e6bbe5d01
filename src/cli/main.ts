import { homedir } from 'node:os';
import { runCommand } from './run.js';
import { showInBrowser } from './show-in-browser.js';

/**
 * Resolves at the first sign to stop. A second one ends the program at once, for a person who will not wait; what was
 * said to be saved is on the disk by then.
 */
function stopped(): Promise<void> {
  return new Promise((resolve) => {
    let asked = false;
    const ask = () => {
      if (asked) process.exit(1);
      asked = true;
      resolve();
    };
    process.on('SIGINT', ask);
    process.on('SIGTERM', ask);
  });
}

// A reader that has enough (`wristpin work | head`) closes the pipe; that is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

process.exitCode = await runCommand(process.argv.slice(2), {
  env: process.env,
  platform: process.platform,
  home: homedir(),
  now: () => new Date(),
  out: (line) => process.stdout.write(`${line}\n`),
  err: (line) => process.stderr.write(`${line}\n`),
  stop: stopped,
  show: (url) => showInBrowser(url, process.platform),
});

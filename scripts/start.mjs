// `npm start`: installs and builds if needed, then opens the application on loopback and prints its address.
import { ensureBuilt, ensureInstalled } from './ensure.mjs';
import { at, fail } from './lib.mjs';

try {
  await ensureInstalled();
  await ensureBuilt();
  process.argv = [process.argv[0], at('bin', 'wristpin.js'), 'serve', ...process.argv.slice(2)];
  await import('../bin/wristpin.js');
} catch (error) {
  fail(error);
}

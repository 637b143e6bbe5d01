#!/usr/bin/env node
import { existsSync } from 'node:fs';

const program = new URL('../dist/cli/main.js', import.meta.url);
if (existsSync(program)) await import(program.href);
else {
  console.error(
    'wristpin: it is not built yet. Run “npm start” once, or “npm run build”, in Wristpin’s folder.',
  );
  process.exitCode = 1;
}

// `npm run mutate -- ROOM …`: changes the room's code in a thousand small ways and says which of them no test saw.
//   npm run mutate -- gauge                     the whole room
//   npm run mutate -- gauge decide.ts           only src/gauge/decide.ts
// What an earlier run found out about unchanged code and tests is kept and not asked again.
// The reports lie in test-results/mutate/ROOM: report.html to read, survivors.txt to work through.
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { compileCatalog } from './catalog.mjs';
import { ensureInstalled } from './ensure.mjs';
import { at, fail, run } from './lib.mjs';

/** The rooms whose score is kept at 85 % or more; any other room can be asked for as well. */
const kept = ['quantity', 'fasten', 'gauge', 'infer', 'job'];

/** One line a mutant that lived: where, what kind, what stood there and what stood there instead. */
function survivors(room) {
  const report = JSON.parse(readFileSync(at('test-results', 'mutate', room, 'report.json'), 'utf8'));
  return Object.entries(report.files).flatMap(([file, { source, mutants }]) => {
    const lines = source.split('\n');
    return mutants
      .filter(({ status }) => status === 'Survived' || status === 'NoCoverage')
      .map(({ location: { start, end }, mutatorName, replacement, status }) => {
        const first = lines[start.line - 1];
        const was = start.line === end.line ? first.slice(start.column - 1, end.column - 1) : first.trim();
        const now = replacement.replaceAll(/\s+/g, ' ').slice(0, 80);
        return `${file}:${start.line}:${start.column} ${status} ${mutatorName}: ${was} → ${now}`;
      });
  });
}

async function mutate(room, files) {
  if (!existsSync(at('src', room)))
    throw new Error(`No room is called “${room}”. There are: ${readdirSync(at('src')).join(', ')}`);
  console.log(`\n── ${room}`);
  mkdirSync(at('test-results', 'mutate', room), { recursive: true });
  const only = files.length ? ['--mutate', files.map((file) => `src/${room}/${file}`).join(',')] : [];
  const stryker = at('node_modules', '@stryker-mutator', 'core', 'bin', 'stryker.js');
  const env = { ...process.env, MUTATE_ROOM: room };
  try {
    await run(process.execPath, [stryker, 'run', at('stryker.config.mjs'), ...only], { env });
  } finally {
    const list = survivors(room);
    writeFileSync(at('test-results', 'mutate', room, 'survivors.txt'), `${list.join('\n')}\n`);
    console.log(`${list.length} survivors, listed in test-results/mutate/${room}/survivors.txt`);
  }
}

try {
  await ensureInstalled();
  await compileCatalog();
  const [room, ...files] = process.argv.slice(2);
  for (const each of room ? [room] : kept) await mutate(each, files);
} catch (error) {
  fail(error);
}

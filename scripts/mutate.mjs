// `npm run mutate -- ROOM …`: changes the room's code in a thousand small ways and says which of them no test saw.
//   npm run mutate -- gauge                     the whole room
//   npm run mutate -- gauge decide.ts           only src/gauge/decide.ts
//   npm run mutate -- gauge --sample 250        250 of the room's changes, drawn by a fixed seed, and how sure that is
// What an earlier run found out about unchanged code and tests is kept and not asked again.
// The reports lie in test-results/mutate/ROOM: report.html to read, survivors.txt to work through.
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { compileCatalog } from './catalog.mjs';
import { ensureInstalled } from './ensure.mjs';
import { at, fail, run } from './lib.mjs';

/** The rooms whose score is kept at 85 % or more; any other room can be asked for as well. */
const asked = 0.85;
const kept = ['quantity', 'fasten', 'gauge', 'infer', 'job'];

const placeOf = (room, file) => at('test-results', 'mutate', room, file);
const reportOf = (room) => JSON.parse(readFileSync(placeOf(room, 'report.json'), 'utf8')).files;
const lived = ({ status }) => status === 'Survived' || status === 'NoCoverage';
const died = ({ status }) => status === 'Killed' || status === 'Timeout';

/** One line a mutant that lived: where, what kind, what stood there and what stood there instead. */
function survivors(files) {
  return Object.entries(files).flatMap(([file, { source, mutants }]) => {
    const lines = source.split('\n');
    return mutants.filter(lived).map(({ location: { start, end }, mutatorName, replacement, status }) => {
      const first = lines[start.line - 1];
      const was = start.line === end.line ? first.slice(start.column - 1, end.column - 1) : first.trim();
      const now = replacement.replaceAll(/\s+/g, ' ').slice(0, 80);
      return `${file}:${start.line}:${start.column} ${status} ${mutatorName}: ${was} → ${now}`;
    });
  });
}

/**
 * The share that was seen, with the 95 % interval of a sample (Wilson’s score interval); a whole room has none. Short
 * of what is asked is a sample whose whole interval lies below.
 */
function score(files, sample) {
  const mutants = Object.values(files).flatMap((file) => file.mutants);
  const seen = mutants.filter(died).length;
  const all = seen + mutants.filter(lived).length;
  const percent = (p) => `${(100 * p).toFixed(1)} %`;
  const whole = `${seen} of ${all} seen, ${percent(seen / all)}`;
  if (!sample) return whole;
  const of = all + mutants.filter(({ statusReason }) => statusReason === 'not drawn').length;
  const [p, z] = [seen / all, 1.96];
  const middle = (p + z ** 2 / (2 * all)) / (1 + z ** 2 / all);
  const half = (z / (1 + z ** 2 / all)) * Math.sqrt((p * (1 - p)) / all + z ** 2 / (4 * all ** 2));
  if (middle + half < asked) process.exitCode = 1;
  return `${whole} (drawn from ${of}; 95 % interval ${percent(middle - half)} to ${percent(middle + half)})`;
}

async function mutate(room, files, sample) {
  if (!existsSync(at('src', room)))
    throw new Error(`No room is called “${room}”. There are: ${readdirSync(at('src')).join(', ')}`);
  console.log(`\n── ${room}`);
  mkdirSync(at('test-results', 'mutate', room), { recursive: true });
  rmSync(placeOf(room, 'report.json'), { force: true });
  const only = files.map((file) => `src/${room}/${file}`);
  const env = { ...process.env, MUTATE_ROOM: room, ...(sample ? { MUTATE_SAMPLE: String(sample) } : {}) };
  try {
    await run(process.execPath, [at('scripts', 'mutate-room.mjs'), ...only], { env });
  } finally {
    if (existsSync(placeOf(room, 'report.json'))) tell(room, sample);
  }
}

function tell(room, sample) {
  const report = reportOf(room);
  const list = survivors(report);
  writeFileSync(placeOf(room, 'survivors.txt'), `${list.join('\n')}\n`);
  console.log(`${room}: ${score(report, sample)}`);
  console.log(`${list.length} survivors, listed in test-results/mutate/${room}/survivors.txt`);
}

/** What was asked: the room and its files, and how many mutants are enough. */
function call() {
  const { values, positionals } = parseArgs({
    options: { sample: { type: 'string' } },
    allowPositionals: true,
  });
  const sample = values.sample === undefined ? undefined : Number(values.sample);
  if (sample !== undefined && !(Number.isInteger(sample) && sample >= 10))
    throw new Error(`--sample wants a whole number of mutants, 10 or more, and got “${values.sample}”.`);
  return { sample, positionals };
}

try {
  const {
    sample,
    positionals: [room, ...files],
  } = call();
  await ensureInstalled();
  await compileCatalog();
  for (const each of room ? [room] : kept) await mutate(each, files, sample);
} catch (error) {
  fail(error);
}

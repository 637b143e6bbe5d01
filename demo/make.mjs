// Writes the invented jobs and their drawn pictures and made sounds: node demo/make.mjs [FOLDER]
// Build first (npm run build). Running it again changes nothing; what it writes is committed.
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { writeDemo } from './source/write.mjs';

const built = (room) => new URL(`../dist/${room}/index.js`, import.meta.url);
const rooms = ['catalog', 'listen', 'job'];

if (!rooms.every((room) => existsSync(built(room)))) {
  console.error('The rooms are not built yet. Run npm run build, then this again.');
  process.exit(1);
}
const [catalog, listen, job] = await Promise.all(rooms.map((room) => import(built(room).href)));
const folder = process.argv[2] ?? fileURLToPath(new URL('.', import.meta.url));
const { jobs, pictures, changed } = await writeDemo({ folder, rooms: { ...catalog, ...listen, ...job } });
console.log(`${jobs} invented jobs, ${pictures} pictures in ${folder}: ${changed} files changed.`);

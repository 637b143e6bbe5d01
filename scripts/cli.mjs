// Bundles the command: what a call does not use is not loaded, and what it uses lies in a few files.
import { build } from 'vite';
import { at } from './lib.mjs';

/** Libraries of a hundred files each, of which a few are used: reading them one by one is most of a start. */
const manyFiles = ['zod', 'kysely', 'hono', '@hono/node-server', 'yaml', 'uuidv7'];

/** The command, and the threads on which its server reads what comes from outside. */
const programs = {
  main: at('src', 'cli', 'main.ts'),
  reader: at('src', 'shopkeep', 'reading', 'reader.worker.ts'),
};

/** The program's own files have no effect but through what they give: one that gives nothing used is left out. */
const leavesOut = (id) => id.startsWith(at('src')) && !Object.values(programs).includes(id);

export async function bundleCli(outDir) {
  await build({
    configFile: false,
    root: at(),
    logLevel: 'error',
    ssr: { noExternal: manyFiles },
    build: {
      ssr: true,
      outDir,
      emptyOutDir: true,
      target: 'node20',
      minify: false,
      rolldownOptions: {
        input: programs,
        treeshake: { moduleSideEffects: (id) => !leavesOut(id) },
        output: { chunkFileNames: 'chunks/[name]-[hash].js' },
      },
    },
  });
}

// Bundles the command: what a call does not use is not loaded, and what it uses lies in a few files.
import { build } from 'vite';
import { bundled } from './bundled.mjs';
import { at } from './lib.mjs';

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
    ssr: { noExternal: bundled },
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

// The page's content policy allows no code compiled at run time, so the schema library (zod) must interpret. It reads
// this before the first schema is made, and modules give no such order across bundled chunks: hence a classic script.
globalThis.__zod_globalConfig = { jitless: true };

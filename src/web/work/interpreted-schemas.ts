// Imported first by every worker: the content policy allows no code compiled at run time, in a worker as on the page,
// so the schema library must interpret. The page itself has public/interpreted-schemas.js for it.
(globalThis as { __zod_globalConfig?: { jitless: boolean } }).__zod_globalConfig = { jitless: true };

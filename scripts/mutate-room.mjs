// One run of Stryker over the room that MUTATE_ROOM names, ended when it is done: its own command waits on for ever.
import { Stryker } from '@stryker-mutator/core';
import { at } from './lib.mjs';

const only = process.argv.slice(2);
await new Stryker({
  configFile: at('stryker.config.mjs'),
  ...(only.length ? { mutate: only } : {}),
})
  .runMutationTest()
  // it has said why
  .catch(() => process.exit(1));
process.exit();

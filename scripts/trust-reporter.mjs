// Tells `npm run trust` of each campaign that has passed, as soon as it has.
import { relative, sep } from 'node:path';
import { root } from './lib.mjs';
import { notePassed } from './trust-state.mjs';

export default class TrustReporter {
  onTestModuleEnd(module) {
    const file = relative(root, module.moduleId).split(sep).join('/');
    if (module.state() === 'passed') notePassed(file, process.env.WRISTPIN_TRUST_STATE);
  }
}

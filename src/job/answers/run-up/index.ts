export { acceptanceOf } from './acceptance.js';
export { heardOf, loadOn } from './heard.js';
export { type Hearing, hearing } from './hearing.js';
export { type RunUpItem, type RunUpLimit, runUpOf } from './run-up.js';

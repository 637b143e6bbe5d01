import { packaged } from '../shopkeep/index.js';

export const version = (): string => packaged().version;

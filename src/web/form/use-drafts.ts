import { useSyncExternalStore } from 'react';
import { type Drafts, drafts } from './drafts.js';

/** What is begun on this device and not written down. */
export const useDrafts = (): Drafts => useSyncExternalStore(drafts.subscribe, drafts.all);

import type { Store } from '../store/index.js';
import type { Network } from './door.js';

/** What the application is made of; nothing inside reaches for a clock, a folder or a database by itself. */
export interface Parts {
  readonly store: Store;
  readonly storeKind: 'sqlite' | 'postgres';
  /** tells this store from another one without saying where it lies */
  readonly place: string;
  /** folder of the built pages */
  readonly webRoot: string;
  /** folder of the invented jobs */
  readonly demo: string;
  /** folder of the printed record's type faces */
  readonly fonts: string;
  /** the built program of the threads that read what comes from outside, see `shopkeep/reading` */
  readonly reader: () => string | Promise<string>;
  readonly version: string;
  /** where it is open to the shop's network; to this computer alone when left out */
  readonly network?: Network;
  readonly clock: () => Date;
  /** where an error goes that the person is only told the outline of */
  readonly log: (line: string) => void;
}

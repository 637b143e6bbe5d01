import { localTime } from '../../job/index.js';

/** The day by the wall clock of this device: "2026-11-25". */
export const today = (): string => localTime(new Date()).slice(0, 10);

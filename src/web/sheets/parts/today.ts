import { localTime } from '../../../job/index.js';

/** The wall clock of this device: "2026-11-25T09:43". */
const wallClock = (): string => localTime(new Date()).slice(0, 16);

export const today = (): string => wallClock().slice(0, 10);

import { worksheets } from '../../src/driven/worksheets.js';
import { worksheetsOfRoom } from '../support/room-worksheets.js';

worksheetsOfRoom(worksheets);

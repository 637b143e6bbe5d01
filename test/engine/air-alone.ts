import { gasOf, type WorkingGas } from '../../src/engine/firing/gas.js';
import { airGasConstant } from '../../src/engine/orifice.js';
import { dryAir } from '../../src/engine/species.js';

const gas = gasOf(dryAir, airGasConstant);

/** Air before and after: the air-standard cycle, which the books have worked out. */
export const airAlone: WorkingGas = { unburned: gas, burned: gas };

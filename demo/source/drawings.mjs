import { bowlWithVarnish } from './pictures/bowl.mjs';
import { gasketStack } from './pictures/gasket-stack.mjs';
import { governorSpring } from './pictures/governor.mjs';
import { headTorqued, headWithCarbon } from './pictures/head.mjs';
import { headGaskets } from './pictures/head-gaskets.mjs';
import { mowerSide } from './pictures/mower.mjs';
import { platePlace } from './pictures/plate.mjs';
import { pumpBack } from './pictures/pump-back.mjs';
import { pumpFront } from './pictures/pump-front.mjs';
import { pumpLeft, pumpRight } from './pictures/pump-sides.mjs';
import { exhaustValve } from './pictures/valve.mjs';
import { headOrder } from './pump/head-joint.mjs';

/** Every picture of the invented jobs by its name, drawn when asked. */
export const drawings = {
  front: () => pumpFront(),
  left: pumpLeft,
  back: pumpBack,
  right: pumpRight,
  plate: platePlace,
  bowl: bowlWithVarnish,
  governor: governorSpring,
  gaskets: gasketStack,
  carbon: headWithCarbon,
  valve: () => exhaustValve(),
  lapped: () => exhaustValve({ lapped: true }),
  'head-gaskets': headGaskets,
  torqued: () => headTorqued(headOrder),
  clean: () => pumpFront({ clean: true }),
  mower: mowerSide,
};

/** The standing first looks of the trade: spark, squeeze, fuel, air. */
export const tradeOrder = [
  'spark-across-gap',
  'slow-pull',
  'backward-rebound',
  'compression-dry',
  'tank-fuel-in-a-jar',
  'bowl-sample',
  'fuel-flow',
  'air-cleaner-look',
  'light-into-fins',
  'control-sweep',
];

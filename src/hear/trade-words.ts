/**
 * Words of the bench that the recognizer's list does not hold, as they sound: ARPAbet, put together of the same list's
 * "spring", "crank", "strain", "pump", "burr", "groove" and "wobble".
 */
export const tradeWords: readonly (readonly [word: string, sound: string])[] = [
  ['springy', 'S P R IH NG IY'],
  ['crankcase', 'K R AE NG K K EY S'],
  ['strainer', 'S T R EY N ER'],
  ["pump's", 'P AH M P S'],
  ['burrs', 'B ER Z'],
  ['grooved', 'G R UW V D'],
  ['wobbles', 'W AA B AH L Z'],
];

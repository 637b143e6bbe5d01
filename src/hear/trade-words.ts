/** In the form of the recognizer's own list: a word, and how it sounds in ARPAbet. */
const lines = `
springy S P R IH NG IY
crankcase K R AE NG K K EY S
strainer S T R EY N ER
pump's P AH M P S
burrs B ER Z
grooved G R UW V D
wobbles W AA B AH L Z
`;

/** Words of the bench that the list does not hold, put together of its "spring", "crank", "strain", "pump", "burr", "groove". */
export const tradeWords: readonly (readonly [word: string, sound: string])[] = lines
  .trim()
  .split('\n')
  .map((line) => {
    const at = line.indexOf(' ');
    return [line.slice(0, at), line.slice(at + 1)];
  });
